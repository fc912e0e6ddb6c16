/** A single cycle from cold, or one of a duty that has gone on for ever, found from single cycles. */
import { cooled, RUNAWAY, steadyStart, type Temperatures } from '../axis/cooling.ts'
import { COPPER_COEFFICIENT } from '../axis/heat.ts'
import type { Model } from '../model/model.ts'
import { type Cycle, type CycleOptions, partOf, runCycle } from './run.ts'

/** Cycles that are run at most to find the temperatures at which that of a duty starts. */
const ROUNDS = 4
/** The temperatures stand where what losses add by changing with them is within this [K]; the error left is a part of it. */
const NEAR = 0.1
/** Kelvins more at the end for each at the start, beyond which nothing is reckoned ahead: such a motor runs away. */
const STEEPEST = 0.8

/**
 * One cycle of a model: from `options.start`, or, where the scenario says after what time [s] it repeats, from the temperatures at which
 * it would start for ever. These come from cycles without figures, of which `onProgress` hears as well; the cycle that was asked to stop is
 * then what is handed out.
 */
export function runDuty(model: Model, options: CycleOptions): Cycle {
  const { cycle: period, duration } = model.scenario.run
  if (period === null) return runCycle(model, options)
  const { thermal } = model.scenario.actuator.motor
  const whole = partOf(options.onProgress, ROUNDS / (ROUNDS + 1), 1)
  /** Where a cycle that starts so would start for ever, did its losses not change with temperature; or the cycle that was asked to stop. */
  const leads = (start: Temperatures, round: number): Temperatures | Cycle => {
    const onProgress = partOf(options.onProgress, round / (ROUNDS + 1), (round + 1) / (ROUNDS + 1))
    const cycle = runCycle(model, { core: options.core, figures: false, onProgress, start })
    if (cycle.cancelled) return cycle
    const { winding, housing } = cycle.bench.axis.heat.state
    return steadyStart(thermal, start, cooled(thermal, { winding, housing }, period - duration), period)
  }
  const found = standing(leads, { winding: thermal.ambient, housing: thermal.ambient })
  return 'bench' in found ? found : runCycle(model, { ...options, onProgress: whole, start: found })
}

/**
 * The temperatures [°C] that lead to themselves, by the secant method: losses are nearly a straight line of the winding's temperature. The
 * first slope is that of a winding at constant current, for which ΔT grows by α·ΔT with each kelvin.
 */
function standing(
  leads: (start: Temperatures, round: number) => Temperatures | Cycle,
  ambient: Temperatures,
): Temperatures | Cycle {
  const hottest = ambient.winding + RUNAWAY
  let start = ambient
  let before: { from: number; to: number } | null = null
  for (let round = 0; round < ROUNDS; round++) {
    const next = leads(start, round)
    if ('bench' in next) return next
    const change = next.winding - start.winding
    const slope: number = before
      ? (next.winding - before.to) / (start.winding - before.from)
      : COPPER_COEFFICIENT * change
    const came = start.winding
    before = { from: came, to: next.winding }
    // What comes on top of the change itself, as a share of it.
    const beyond = slope > -STEEPEST && slope < STEEPEST ? slope / (1 - slope) : 0
    start = {
      winding: Math.min(next.winding + beyond * change, hottest),
      housing: Math.min(next.housing + beyond * (next.housing - start.housing), hottest),
    }
    const stands = Math.abs(slope) < STEEPEST && Math.abs(beyond * change) <= NEAR
    if (stands || start.winding === came) break
  }
  return start
}
