/**
 * The gain at which a fast loop loses stability in the simulation, against the linear limit, which takes the axis as the continuous
 * thing that it is (closed form between samples). Forces are those of a step's beginning, so the simulation is late by up to a step and
 * loses stability early, never late: an error of first order, which goes with the step. How early is our own bound, as the model view
 * states it.
 * Dry friction, noise and steps of measurement are off.
 */
import { describe, expect, it } from 'vitest'
import { tryLoop } from '../../sim/ask/loop-trial.ts'
import { type LoopId, type Scenario, strategyOf } from '../../sim/index.ts'
import { analyseLoops } from '../../sim/loops/analyse.ts'
import { type WorkingPointId, workingPoint } from '../../sim/loops/working-point.ts'
import { modelOf } from '../../sim/model/model.ts'
import { boundless, CYCLES, coil, growth, screw } from './calm-axes.ts'
import type { Tree } from './support.ts'

/** Servo and force loop at 20 and 40 kHz. */
const FAST: Tree = {
  drive: { currentBandwidth: 12_000, backEmfFeedforward: 0 },
  servo: { rate: 20_000, speedFilter: 5e-5 },
  sensors: { gauge: { bandwidth: 10_000 } },
  strategies: { sensedForce: { rate: 20_000, kd: 0 } },
}
const FASTEST: Tree = {
  drive: { currentRate: 40_000, currentBandwidth: 30_000, backEmfFeedforward: 0 },
  servo: { rate: 40_000, speedFilter: 2e-5 },
  sensors: { gauge: { bandwidth: 30_000 } },
  strategies: { sensedForce: { rate: 40_000, kd: 0 } },
}

/** The simulated limit over the linear one, to a thousandth. */
function limitRatio(scenario: Scenario, loop: LoopId, id: WorkingPointId): number {
  const point = workingPoint(scenario, id)
  const { gainMargin, gainMarginFrequency } = analyseLoops(scenario, { loops: [loop], workingPoints: [id] }).loops[0]!
    .margins!
  const linear = 10 ** (gainMargin! / 20)
  const grows = (factor: number) => {
    const { given, bounds } = tryLoop(boundless(scenario), {
      loop,
      point,
      duration: CYCLES / gainMarginFrequency!,
      gain: linear * factor,
      disturbance: (time) => (time < 0.002 ? (loop === 'force' ? 1e-5 : 1e-3) : 0),
    })
    return bounds.has('voltage') || growth(given) > 1
  }
  let [stable, unstable] = [0.8, 1.2]
  expect(grows(stable)).toBe(false)
  expect(grows(unstable)).toBe(true)
  while (unstable - stable > 1e-3) {
    const middle = (stable + unstable) / 2
    if (grows(middle)) unstable = middle
    else stable = middle
  }
  return (stable + unstable) / 2
}

/** Forty cycles tell growth from what else decays to about this share of the gain. */
const READ = 0.012

const LOOPS = [
  ['position', 'free'],
  ['position', 'nominal'],
  ['velocity', 'nominal'],
  ['force', 'softest'],
  ['force', 'stiffest'],
] as const

for (const [name, axis] of [
  ['ball screw', screw],
  ['voice coil', coil],
] as const) {
  describe.each([
    ['fast', axis(FAST), 0.03],
    ['fastest', axis(FASTEST), 0.15],
  ])(`${name}, %s`, (_pace, scenario, early) => {
    const { step } = modelOf(scenario, strategyOf('sensed-force')).bench.axis
    const finer = { ...scenario, run: { ...scenario.run, step: step / 4 } }
    it.each(LOOPS)('%s loop, %s', (loop, id) => {
      const [usual, fine] = [limitRatio(scenario, loop, id), limitRatio(finer, loop, id)]
      expect(Math.max(usual, fine)).toBeLessThan(1 + READ)
      expect(usual).toBeGreaterThan(1 - early)
      expect(fine).toBeGreaterThan(1 - early / 4 - READ)
    })
  })
}
