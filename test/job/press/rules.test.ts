/** What the keys of a press demand of each other, and how its file is read. */
import { describe, expect, it } from 'vitest'
import { checkScenario, editScenario, quantityAt, type Scenario } from '../../../sim/index.ts'
import { PRESS_PRESETS } from '../../../sim/others.ts'
import { PRESS_RULES } from '../../../sim/scenario/press-rules.ts'
import { varying } from '../../../sim/scenario/vary.ts'
import { pressOf } from './support.ts'

const point = (depth: number, least: number, most: number) => ({ depth, least, most })

const CASES: [path: string, value: unknown, fault: string, allowed: RegExp][] = [
  ['bushing.innerDiameter', 0.008, 'bushing.innerDiameter', /^less than the outer diameter of 0.008 m$/],
  ['bore.outerDiameter', 0.008, 'bore.outerDiameter', /^more than the bushing's diameter of 0.008 m$/],
  ['bushing.chamfer.length', 1e-5, 'bushing.chamfer.length', /^at least 0.00003429 m, so that the cone/],
  ['joint.friction.static', 0.05, 'joint.friction.static', /^at least the friction of pressing of 0.08$/],
  ['ram.stroke', 0.01, 'ram.stroke', /^more than the way to the bore of 0.01 m$/],
  ['window.depth.most', 0.001, 'window.depth', /^at least the least depth of 0.0079 m$/],
  ['window.seat', { least: 20, most: 10 }, 'window.seat', /^at least the least seating force of 20 N$/],
  ['window.band', [point(0.002, 0, 1), point(0.002, 0, 1)], 'window.band[1].depth', /^more than the 0.002 m/],
  ['approach.creepSpeed', 1, 'approach.creepSpeed', /^at most the approach speed of 0.02 m\/s$/],
]

describe('rules of a press', () => {
  it.each(CASES)('refuse %s of %j', (path, value, place, allowed) => {
    const base = pressOf({ approach: { creepFrom: 0.001 } })
    const checked = editScenario(base, [{ path, value }])
    expect(checked.ok).toBe(false)
    const [fault] = checked.ok ? [] : checked.faults
    expect(fault?.path).toBe(place)
    expect(fault?.allowed).toMatch(allowed)
  })

  it('are all shown above', () => {
    const base = pressOf({ approach: { creepFrom: 0.001 } })
    const fired = new Set<number>()
    for (const [path, value] of CASES) {
      const copy = structuredClone(base) as unknown as Record<string, unknown>
      const keys = path.split('.')
      const last = keys.pop()!
      ;(keys.reduce((at, key) => at[key] as Record<string, unknown>, copy) as Record<string, unknown>)[last] = value
      PRESS_RULES.forEach((rule, n) => {
        if (rule.check(copy as unknown as Scenario).length > 0) fired.add(n)
      })
    }
    expect(fired.size).toBe(PRESS_RULES.length)
  })

  it('a band whose ends are the wrong way round is refused too', () => {
    const checked = editScenario(pressOf(), [{ path: 'window.band', value: [point(0, 5, 1)] }])
    expect(checked.ok ? [] : checked.faults.map(({ path }) => path)).toEqual(['window.band[0].most'])
  })
})

describe('the file of a press', () => {
  it('knows no jaws and no part, and its own figures only', () => {
    for (const stray of [{ jaws: {} }, { part: {} }, { requirements: { holdMargin: { least: 0 } } }])
      expect(checkScenario({ job: 'press', ...stray }).ok).toBe(false)
    expect(checkScenario({ job: 'press', requirements: { seatForce: { least: 100 } } }).ok).toBe(true)
    expect(checkScenario({ bushing: {} }).ok).toBe(false)
  })

  it('has quantities by path, and may have no shoulder', () => {
    const { scenario } = PRESS_PRESETS[0]!
    expect(quantityAt(scenario, 'bore.shoulder.depth')?.shown).toBe('mm')
    expect(quantityAt(scenario, 'part.width')).toBeNull()
    expect(editScenario(scenario, [{ path: 'bore.shoulder', value: null }]).ok).toBe(true)
  })

  it('varies, friction at rest following that of pressing', () => {
    const { scenario } = PRESS_PRESETS[0]!
    const vary = varying(scenario, ['joint.friction.pressing', 'bushing.interference'])
    const found = vary([0.2, 12e-6])
    expect(found.faults).toEqual([])
    expect(found.scenario).toMatchObject({ joint: { friction: { pressing: 0.2, static: 0.2 } } })
  })
})
