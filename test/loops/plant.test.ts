/** The linear plants of every preset's working points, by their shape. */
import { describe, expect, it } from 'vitest'
import { ALL_PRESETS, editScenario, PRESETS, workingPointsOf } from '../../sim/index.ts'
import type { PlantState } from '../../sim/loops/axis-plant.ts'
import { plantModel } from '../../sim/loops/plant.ts'
import { workingPoint } from '../../sim/loops/working-point.ts'

describe('the plant at a working point', () => {
  it.each(ALL_PRESETS.map(({ id, scenario }) => ({ id, scenario })))(
    'of $id has one input, the voltage, which drives the current alone (L·di/dt = u − …)',
    ({ scenario }) => {
      for (const id of workingPointsOf(scenario)) {
        const { names, a, b } = plantModel(scenario, workingPoint(scenario, id))
        expect([a.rows, a.columns, b.rows, b.columns]).toEqual([names.length, names.length, names.length, 1])
        const { inductance } = scenario.actuator.motor
        expect([...b.data]).toEqual(names.map((name) => (name === 'current' ? 1 / inductance : 0)))
      }
    },
  )
})

describe('a part between a driven jaw and an anvil', () => {
  const anvil = editScenario(PRESETS[0]!.scenario, [{ path: 'jaws.layout', value: 'anvil' }])
  if (!anvil.ok) throw new Error('refused')
  const { scenario } = anvil

  const model = plantModel(scenario, workingPoint(scenario, 'nominal'))
  const of = (row: PlantState, column: PlantState) => model.a.at(model.names.indexOf(row), model.names.indexOf(column))

  it('is pushed by the jaw as hard as it pushes the jaw, whatever the masses (Newton’s third law)', () => {
    for (const [part, jaw] of [
      ['part', 'jaw'],
      ['partSpeed', 'jawSpeed'],
    ] as const)
      expect(model.jawMass * of('jawSpeed', part)).toBeCloseTo(scenario.part.mass * of('partSpeed', jaw), 6)
  })

  it('swings between jaw and anvil with ω² = (k_near + k_far)/m, both contacts alike (closed form)', () => {
    const near = scenario.part.mass * of('partSpeed', 'jaw')
    expect(near).toBeGreaterThan(0)
    expect((-of('partSpeed', 'part') * scenario.part.mass) / (2 * near)).toBeCloseTo(1, 9)
  })
})
