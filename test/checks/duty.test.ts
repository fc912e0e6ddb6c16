import { describe, expect, it } from 'vitest'
import { cooled, steadyStart } from '../../sim/axis/cooling.ts'
import { editScenario, PRESETS, simulateGrip } from '../../sim/index.ts'
import { heatOf } from '../blocks.ts'

const options = {
  windingResistance: 5,
  windingTime: 20,
  housingResistance: 10,
  housingTime: 600,
  ambient: 25,
  magnetCoefficient: 0,
}

/** One cycle: 6 W for 2 s, then nothing for 3 s, in steps of 10 ms. */
function cycle(start: { winding: number; housing: number }) {
  const heat = heatOf(options, start)
  for (let n = 0; n < 200; n++) heat.step(6, 0.01)
  return { on: { ...heat.state }, end: cooled(options, heat.state, 3) }
}

describe('steady state of a duty', () => {
  it('found from one cycle is where thousands of cycles end (brute force)', () => {
    const start = { winding: 25, housing: 25 }
    let at = start
    for (let n = 0; n < 4000; n++) at = cycle(at).end
    const steady = steadyStart(options, start, cycle(start).end, 5)
    expect(steady.winding / at.winding).toBeCloseTo(1, 4)
    expect(steady.housing / at.housing).toBeCloseTo(1, 4)
    // mean power 2.4 W over 10 K/W above ambient (closed form)
    expect((steady.housing - 25) / 24).toBeCloseTo(1, 2)
  })

  it('cools as two exponentials do: what the step-by-step nodes reach without loss', () => {
    const heat = heatOf(options, { winding: 90, housing: 60 })
    for (let n = 0; n < 300_000; n++) heat.step(0, 1e-4)
    const exact = cooled(options, { winding: 90, housing: 60 }, 30)
    expect(heat.state.winding).toBeCloseTo(exact.winding, 2)
    expect(heat.state.housing).toBeCloseTo(exact.housing, 2)
  })

  it('a clamp set in amperes presses less once its magnets are warm, and the winding limit is told', () => {
    const { scenario } = PRESETS.find(({ id }) => id === 'bauble')!
    const run = (edits: { path: string; value: unknown }[]) => {
      const checked = editScenario(scenario, edits)
      if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
      return simulateGrip(checked.scenario, 'current-clamp').result
    }
    const strong = [
      { path: 'strategies.currentClamp.limit', value: 1.8 },
      { path: 'servo.currentLimit', value: 3 },
      { path: 'part.crackForce', value: undefined },
    ]
    const cold = run(strong)
    const warm = run([...strong, { path: 'run.cycle', value: 2 }])
    expect(warm.metrics.windingTemperature!).toBeGreaterThan(cold.metrics.windingTemperature! + 20)
    expect(warm.metrics.settledForce!).toBeLessThan(0.99 * cold.metrics.settledForce!)
    const hot = run([...strong, { path: 'run.cycle', value: 2 }, { path: 'actuator.motor.thermal.limit', value: 60 }])
    expect(hot.metrics.windingTemperature!).toBeGreaterThan(60)
  })
})
