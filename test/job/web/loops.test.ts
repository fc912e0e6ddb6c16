/** The linear loops of a web's tension against the simulator: at the gain that they call the border a run neither grows nor fades. */
import { describe, expect, it } from 'vitest'
import type { Scenario } from '../../../sim/index.ts'
import { analyseLoops } from '../../../sim/loops/analyse.ts'
import { plantModel } from '../../../sim/loops/plant.ts'
import { workingPoint } from '../../../sim/loops/working-point.ts'
import { IDEAL, pulled, webOf } from './support.ts'

/** The gauge roll takes over all but at its target, so that nothing comes to a limit. */
const tuned = (factor: number, speed: number): Scenario =>
  webOf(IDEAL, {
    web: { damping: 0.001 },
    roll: { inertia: 0.02 },
    span: { length: 1, entryTension: 10 },
    line: { ramps: speed > 0 ? [{ start: 0.6, speed, acceleration: 4, jerk: 100 }] : [] },
    window: { from: 0.5, most: 10_000 },
    approach: { speed: 0.02, acceleration: 1e6, jerk: 1e9 },
    strategies: {
      sensedForce: {
        contactForce: 49,
        kp: 0.01 * factor,
        ki: 0.02 * factor,
        speedLimit: 50,
        velocity: { kp: 20, ki: 1000 },
      },
    },
    run: { duration: 4 },
  })

const forceLoop = (scenario: Scenario, at: 'nominal' | 'running') =>
  analyseLoops(scenario, { loops: ['force'], workingPoints: [at] }).loops[0]!

/** Swing of the tension between two times [N]; without bound where the run has left its rails. */
function swing(scenario: Scenario, from: number, to: number): number {
  const { traces, result } = pulled(scenario, 'sensed-force')
  if (result.verdict === 'unstable' && result.events.unstable! < to) return Number.POSITIVE_INFINITY
  const { tension } = traces as unknown as Record<string, Float64Array>
  let [low, high] = [Number.POSITIVE_INFINITY, 0]
  traces.time.forEach((time, n) => {
    if (time < from || time > to) return
    low = Math.min(low, tension![n]!)
    high = Math.max(high, tension![n]!)
  })
  return high - low
}

describe('the force loop of a web', () => {
  it.each([
    ['nominal', 0],
    ['running', 2],
  ] as const)('has its border where a run has it, within 2 %%: %s', (at, speed) => {
    const { margins, stability } = forceLoop(tuned(1, speed), at)
    expect(stability).toBe('stable')
    const border = 10 ** (margins!.gainMargin! / 20)
    expect(border).toBeGreaterThan(1.5)
    const begin = speed > 0 ? 2 : 1.4
    const grows = (factor: number) => {
      const scenario = tuned(border * factor, speed)
      return swing(scenario, begin + 1, begin + 1.15) / Math.min(1e9, swing(scenario, begin, begin + 0.15))
    }
    expect(grows(0.98)).toBeLessThan(1)
    expect(grows(1.02)).toBeGreaterThan(1)
  })

  it('stands on a spring of E·A·R/L to rotation, and forgets in L/v when it runs (closed forms)', () => {
    const scenario = tuned(1, 2)
    const plantAt = (id: 'nominal' | 'running') => plantModel(scenario, workingPoint(scenario, id))
    const { nearForce, a, names } = plantAt('running')
    const part = names.indexOf('part')
    expect(nearForce.part! / (52_800 * 0.1)).toBeCloseTo(1, 1) // less what damping takes back
    expect(Math.abs(-a.at(part, part) / 2 - 1)).toBeLessThan(2e-3) // 1 m at 2 m/s
    expect(Math.abs(plantAt('nominal').a.at(part, part))).toBe(0)
  })
})
