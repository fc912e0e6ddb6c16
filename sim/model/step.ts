/** The fixed integration step: a whole part of the current loop's period, small enough for the fastest rate of any element. */
import type { Bench } from '../cycle/bench.ts'
import { Refusal, type Scenario } from '../scenario/index.ts'

export const LONGEST_STEP = 1e-5
/** Fastest rate times step; semi-implicit Euler is stable up to 2. */
export const MODE_PER_STEP = 0.1
const MOST_STEPS = 2e8

/** Fastest rate of axis and job [rad/s]. */
export const fastestOf = ({ axis, load }: Bench) =>
  Math.max(axis.fastest(), load.fastest(axis.outputMass, axis.highestForce()))

/** Steps in one period of the current loop. Throws a Refusal where the run would need more than 2e8 steps. */
export function stepsOf(bench: Bench, scenario: Scenario): number {
  const period = 1 / scenario.drive.currentRate
  const { step, duration } = scenario.run
  const wanted = step ?? Math.min(LONGEST_STEP, MODE_PER_STEP / fastestOf(bench))
  const substeps = step ? Math.round(period / step) : Math.ceil(period / wanted - 1e-9)
  const steps = (duration / period) * substeps
  if (steps > MOST_STEPS)
    throw new Refusal({
      path: 'run.duration',
      given: `${duration} s, which takes ${steps.toExponential(1)} steps of ${(period / substeps).toExponential(1)} s for the stiffest mode`,
      allowed: `at most ${((duration * MOST_STEPS) / steps).toPrecision(3)} s with these masses and stiffnesses`,
    })
  return substeps
}
