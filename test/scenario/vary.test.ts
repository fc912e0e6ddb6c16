import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { editScenario, PRESETS, type Scenario } from '../../sim/index.ts'
import { varying } from '../../sim/scenario/vary.ts'

const scenario = PRESETS[0]!.scenario

const checked = (edits: Record<string, number>): Scenario => {
  const edited = editScenario(
    scenario,
    Object.entries(edits).map(([path, value]) => ({ path, value })),
  )
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults))
  return edited.scenario
}

describe('a variation', () => {
  it('is what a checked edit gives, and leaves the original alone', () => {
    const before = structuredClone(scenario)
    const vary = varying(scenario, ['part.width', 'part.mass', 'jaws.friction.static', 'arm.moves[0].acceleration'])
    const { start } = scenario.arm.moves[0]!
    const made = vary([0.069, 0.26, 0.5, 4])
    expect(made.faults).toEqual([])
    expect(made.scenario).toEqual(
      checked({ 'part.width': 0.069, 'part.mass': 0.26, 'jaws.friction.static': 0.5, 'arm.moves[0].acceleration': 4 }),
    )
    expect(made.scenario.arm.moves[0]!.start).toBe(start)
    expect(vary([0.07, 0.25, 0.5, 5]).scenario).not.toBe(made.scenario)
    expect(scenario).toEqual(before)
  })

  it('is cut at the ends of what is allowed, and says so; whole numbers stay whole', () => {
    const { scenario: made, values, cut } = varying(scenario, ['part.mass', 'run.seed'])([-3, 7.4])
    expect(values).toEqual([made.part.mass, 7])
    expect(cut).toEqual([true, false])
    expect(made.part.mass).toBeGreaterThan(0)
    expect(made.run.seed).toBe(7)
  })

  it('tells the rules between keys that it breaks as a checked edit does', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.2, noNaN: true }), (width) => {
        const { faults } = varying(scenario, ['part.width'])([width])
        const edited = editScenario(scenario, [{ path: 'part.width', value: width }])
        expect(faults).toEqual(edited.ok ? [] : edited.faults)
      }),
    )
    expect(varying(scenario, ['part.width'])([0.5]).faults[0]).toMatchObject({ path: 'jaws.opening' })
  })

  it('lets sliding friction follow static friction down, and break-away follow Coulomb friction up', () => {
    const { sliding } = scenario.jaws.friction
    const { breakaway } = scenario.actuator.transmission
    const slippery = varying(scenario, ['jaws.friction.static', 'jaws.friction.sliding'])([sliding / 2, sliding])
    expect(slippery.scenario.jaws.friction).toMatchObject({ static: sliding / 2, sliding: sliding / 2 })
    expect(slippery.cut).toEqual([false, true])
    expect(slippery.faults).toEqual([])
    const worn = varying(scenario, ['actuator.transmission.coulomb'])([breakaway * 2])
    expect(worn.scenario.actuator.transmission.breakaway).toBe(breakaway * 2)
    expect(worn.cut).toEqual([false])
    expect(scenario.jaws.friction.sliding).toBe(sliding)
    expect(scenario.actuator.transmission.breakaway).toBe(breakaway)
  })

  it('is refused where no quantity is', () => {
    for (const path of ['part', 'part.colour', 'arm.gravity', '', 'part.constructor'])
      expect(() => varying(scenario, [path]), path).toThrow(RangeError)
  })
})
