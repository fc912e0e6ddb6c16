/** What the keys of a web demand of each other, and how its file is read. */
import { describe, expect, it } from 'vitest'
import { checkScenario, editScenario, quantityAt, type Scenario } from '../../../sim/index.ts'
import { WEB_PRESETS } from '../../../sim/others.ts'
import { varying } from '../../../sim/scenario/vary.ts'
import { WEB_RULES } from '../../../sim/scenario/web-rules.ts'
import { webOf } from './support.ts'

const ramp = (start: number, speed: number) => ({ start, speed, acceleration: 1, jerk: 10 })

const CASES: [path: string, value: unknown, fault: string, allowed: RegExp][] = [
  ['roll.radius', 0.03, 'roll.radius', /^at least the core's radius of 0.04 m$/],
  ['roll.runout', 0.06, 'roll.runout', /^at most half of the radius of 0.1 m$/],
  ['line.runout', 0.05, 'line.runout', /^at most half of the radius of 0.06 m$/],
  ['idlers.breakaway', 0.1, 'idlers.breakaway', /^at least the running drag of 0.6 N$/],
  ['window.most', 10, 'window.most', /^more than the least tension of 30 N$/],
  ['window.from', 3, 'window.from', /^a time within the run of 1.5 s$/],
  ['approach.creepSpeed', 3, 'approach.creepSpeed', /^at most the speed of drawing taut of 1 rad\/s$/],
  ['events.release', { time: 1.4 }, 'events.release', /^null: a web is not let go on purpose/],
  ['line.ramps', [ramp(0.5, 0.5), ramp(0.8, 1)], 'line.ramps[1].start', /^at least the 1.1 s at which/],
]

describe('rules of a web', () => {
  const base = webOf({ approach: { creepFrom: 0.1 } })

  it.each(CASES)('refuse %s of %j', (path, value, place, allowed) => {
    const checked = editScenario(base, [{ path, value }])
    expect(checked.ok).toBe(false)
    const [fault] = checked.ok ? [] : checked.faults
    expect(fault?.path).toBe(place)
    expect(fault?.allowed).toMatch(allowed)
  })

  it('are all shown above', () => {
    const fired = new Set<number>()
    for (const [path, value] of CASES) {
      const copy = structuredClone(base) as unknown as Record<string, unknown>
      const keys = path.split('.')
      const last = keys.pop()!
      ;(keys.reduce((at, key) => at[key] as Record<string, unknown>, copy) as Record<string, unknown>)[last] = value
      WEB_RULES.forEach((rule, n) => {
        if (rule.check(copy as unknown as Scenario).length > 0) fired.add(n)
      })
    }
    expect(fired.size).toBe(WEB_RULES.length)
  })

  it('a ramp after the end of the run is refused too', () => {
    const checked = editScenario(base, [{ path: 'line.ramps', value: [ramp(2, 1)] }])
    expect(checked.ok ? [] : checked.faults).toMatchObject([{ path: 'line.ramps[0].start', given: '2 s' }])
  })

  it('a drawing roll needs no core', () => {
    expect(checkScenario({ ...webOf(), roll: { kind: 'draws', radius: 0.03, coreRadius: 0.04 } }).ok).toBe(true)
  })
})

describe('the file of a web', () => {
  it('knows no jaws and no part, turns its output, and has its own figures only', () => {
    const web = { job: 'web', actuator: { kind: 'spindle' } }
    expect(checkScenario(web).ok).toBe(true)
    for (const stray of [{ jaws: {} }, { part: {} }, { requirements: { holdMargin: { least: 0 } } }])
      expect(checkScenario({ ...web, ...stray }).ok).toBe(false)
    expect(checkScenario({ ...web, actuator: { kind: 'screw' } }).ok).toBe(false)
    expect(checkScenario({ ...web, requirements: { tensionRipple: { most: 2 } } }).ok).toBe(true)
    expect(checkScenario({ web: {} }).ok).toBe(false)
  })

  it('has quantities by path, tensions in newtons', () => {
    const { scenario } = WEB_PRESETS[0]!
    expect(quantityAt(scenario, 'strategies.sensedForce.target')?.unit).toBe('N')
    expect(quantityAt(scenario, 'web.thickness')?.shown).toBe('µm')
    expect(quantityAt(scenario, 'part.width')).toBeNull()
  })

  it('varies, drag at rest following that of running', () => {
    const vary = varying(WEB_PRESETS[0]!.scenario, ['idlers.coulomb', 'web.modulus'])
    const found = vary([3, 3e9])
    expect(found.faults).toEqual([])
    expect(found.scenario).toMatchObject({ idlers: { coulomb: 3, breakaway: 3 }, web: { modulus: 3e9 } })
  })
})
