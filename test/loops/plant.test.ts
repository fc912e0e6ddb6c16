/** The linear plants of every preset's working points, by their shape. */
import { describe, expect, it } from 'vitest'
import { ALL_PRESETS, workingPointsOf } from '../../sim/index.ts'
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
