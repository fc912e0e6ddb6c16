/** What the keys of a closure demand of each other, how its file is read, and what is said of each key. */
import { describe, expect, it } from 'vitest'
import { checkScenario, editScenario, quantityAt, readPath, shownUnit } from '../../../sim/index.ts'
import { CAP_PRESETS } from '../../../sim/others.ts'
import { CAP_RULES } from '../../../sim/scenario/cap-rules.ts'
import { JOBS } from '../../../sim/scenario/schema/index.ts'
import { isChoice, isQuantity, leavesIn, type Node } from '../../scenario/schema-walk.ts'
import { capOf } from './support.ts'

const CASES: [path: string, value: unknown, fault: string, allowed: RegExp][] = [
  ['closure.lead', 0.2, 'closure.threadFriction', /^less than what jams the thread: /],
  ['window.torque', { least: 2, most: 1 }, 'window.torque', /^at least the least torque of 2 N·m$/],
  ['closure.stripTorque', 0.04, 'closure.stripTorque', /^none, or more than the run-down torque of 0.05 N·m$/],
  ['approach.creepSpeed', 30, 'approach.creepSpeed', /^at most the approach speed of 20 rad\/s$/],
]

const base = () => capOf({ approach: { creepFrom: 1 }, closure: { threadFriction: 0.6, stripTorque: 5 } })

describe('rules of a closure', () => {
  it.each(CASES)('refuse %s of %j', (path, value, place, allowed) => {
    const checked = editScenario(base(), [{ path, value }])
    const [fault] = checked.ok ? [] : checked.faults
    expect(fault?.path).toBe(place)
    expect(fault?.allowed).toMatch(allowed)
  })

  it('are all shown above', () => {
    const fired = new Set<number>()
    for (const [path, value] of CASES) {
      const copy = structuredClone(base()) as unknown as Record<string, unknown>
      const keys = path.split('.')
      const last = keys.pop()!
      ;(keys.reduce((at, key) => at[key] as Record<string, unknown>, copy) as Record<string, unknown>)[last] = value
      CAP_RULES.forEach((rule, n) => {
        if (rule.check(copy as never).length > 0) fired.add(n)
      })
    }
    expect(fired.size).toBe(CAP_RULES.length)
  })

  it('take no move of an arm, and no jaw', () => {
    const moved = checkScenario({ job: 'cap', arm: { moves: [{}] } })
    expect(moved.ok ? [] : moved.faults).toEqual([
      { path: 'arm.moves', given: 'a list of 1', allowed: 'a list of at most 0 entries' },
    ])
    const jawed = checkScenario({ job: 'cap', jaws: {} })
    expect(jawed.ok ? '' : jawed.faults[0]?.path).toBe('jaws')
  })

  it('let the chuck go at any time of the run', () => {
    expect(checkScenario({ job: 'cap', events: { release: { time: 0.1 } } }).ok).toBe(true)
  })
})

describe('keys of a closure', () => {
  const leaves = leavesIn(JOBS.cap.spindle as unknown as Node)
  const quantities = leaves.flatMap(({ path, schema }) => (isQuantity(schema) ? [{ path, schema }] : []))
  const own = quantities.filter(({ path }) => !/^(drive|run|events|spread|requirements|actuator\.motor)\b/.test(path))

  it('have a title, a symbol, units and one sentence each, in no two places the same', () => {
    expect(own.length).toBeGreaterThan(70)
    for (const { path, schema } of own) {
      expect(schema.title, path).toMatch(/^[A-Z]/)
      expect(schema.symbol, path).toMatch(/^\S+$/)
      expect(schema.description, path).toMatch(/^[A-Z].{28,}[^.]\.$/)
      expect(schema.description.split(/[.?] (?=[A-Z])/).length, path).toBe(1)
    }
    const notes = own.map(({ schema }) => schema.description)
    expect(notes.filter((note, n) => notes.indexOf(note) !== n)).toEqual([])
    for (const { path, schema } of leaves)
      if (isChoice(schema)) expect(schema.description, path).toMatch(/^[A-Z].{28,}\.$/)
  })

  it('name units that can be converted, none of them metric in US units, with short figures at the ends of what is usual', () => {
    for (const { path, schema } of own) {
      const { usual, minimum, maximum, default: preset } = schema
      expect(usual, path).toBeDefined()
      expect(usual![0], path).toBeLessThan(usual![1])
      expect(usual![0], path).toBeGreaterThanOrEqual(minimum)
      expect(usual![1], path).toBeLessThanOrEqual(maximum)
      const found = [preset, ...CAP_PRESETS.map(({ scenario }) => readPath(scenario, path))]
      for (const value of found)
        if (typeof value === 'number') {
          expect(value, path).toBeGreaterThanOrEqual(usual![0])
          expect(value, path).toBeLessThanOrEqual(usual![1])
        }
      for (const system of ['si', 'us'] as const) {
        const { symbol, toShown } = shownUnit(schema, system)
        if (system === 'us') expect(symbol, path).not.toMatch(/(^|[^\p{L}])([mkµ]?N|[mkµ]?m|k?g|°C|K)(?![\p{L}])/u)
        for (const end of usual!) {
          const shown = Math.abs(toShown(end))
          if (shown !== 0) expect(shown >= 1e-5 && shown < 1e6, `${path} ${shown} ${symbol}`).toBe(true)
        }
      }
    }
  })

  it('show an angle in degrees or turns, a speed in turns a minute, a torque in lbf·in where US units are wanted', () => {
    const shown = (path: string, system: 'si' | 'us') =>
      shownUnit(quantityAt({ job: 'cap', actuator: { kind: 'spindle' } }, path)!, system).symbol
    expect(shown('chuck.startAngle', 'si')).toBe('°')
    expect(shown('closure.engagement', 'si')).toBe('rev')
    expect(shown('approach.speed', 'us')).toBe('rev/min')
    expect(shown('window.torque.least', 'si')).toBe('N·m')
    expect(shown('window.torque.least', 'us')).toBe('lbf·in')
  })
})
