/** Free cooling of a motor's two nodes in closed form, and the steady state of a duty. */
import { exponential } from '../core/elementary.ts'
import { COPPER_COEFFICIENT, REFERENCE } from './heat.ts'

export interface HeatOptions {
  /** [K/W], [s], [K/W], [s], [°C] */
  windingResistance: number
  windingTime: number
  housingResistance: number
  housingTime: number
  ambient: number
}

/** Temperatures of the two nodes [°C]. */
export interface Temperatures {
  winding: number
  housing: number
}

/** Exact free cooling of the two nodes for `time` [s]. */
export function cooled(options: HeatOptions, from: Temperatures, time: number): Temperatures {
  const { e11, e12, e21, e22 } = transition(options, time)
  const w = from.winding - options.ambient
  const h = from.housing - options.ambient
  return { winding: options.ambient + e11 * w + e12 * h, housing: options.ambient + e21 * w + e22 * h }
}

/**
 * Start of the cycle in the steady state of a duty: the two nodes are linear in their temperatures, so one cycle of `time` [s]
 * that led from `start` to `end` tells the start to which it would return: start + (I − E)⁻¹(end − start).
 */
export function steadyStart(options: HeatOptions, start: Temperatures, end: Temperatures, time: number): Temperatures {
  const { e11, e12, e21, e22 } = transition(options, time)
  const a = 1 - e11
  const d = 1 - e22
  const det = a * d - e12 * e21
  const w = end.winding - start.winding
  const h = end.housing - start.housing
  return { winding: start.winding + (d * w + e12 * h) / det, housing: start.housing + (a * h + e21 * w) / det }
}

/** A motor this far above its ambient runs away [K]. */
export const RUNAWAY = 500

/**
 * Mean temperatures in a duty that goes on for ever, `current` [A] in the winding for `share` of the time: with the copper loss
 * P = share·I²·R·(1 + α(T_w − T_ref)), the housing lies P·R_ha above the ambient and the winding another P·R_wh (closed form). `resistance`
 * [Ω] is that of the cold winding. A motor that runs away is given the ambient and RUNAWAY.
 */
export function dutyTemperatures(
  options: HeatOptions,
  resistance: number,
  current: number,
  share: number,
): Temperatures {
  const { ambient, windingResistance, housingResistance } = options
  const cold = share * current * current * resistance
  const rest = 1 - cold * COPPER_COEFFICIENT * (windingResistance + housingResistance)
  const loss = rest > 0 ? (cold * (1 + COPPER_COEFFICIENT * (ambient - REFERENCE))) / rest : Number.POSITIVE_INFINITY
  const housing = Math.min(RUNAWAY, loss * housingResistance)
  return { winding: ambient + Math.min(RUNAWAY, housing + loss * windingResistance), housing: ambient + housing }
}

/** exp(M·time) of the two nodes, from the eigenvalues of M (both real and negative). */
function transition(options: HeatOptions, time: number) {
  const a = 1 / options.windingTime
  const c = 1 / options.housingTime
  const b = (a * options.windingTime * c * options.housingResistance) / options.windingResistance
  const sum = a + b + c
  const root = Math.sqrt(sum * sum - 4 * a * c)
  const slow = (-2 * a * c) / (sum + root)
  const fast = (-sum - root) / 2
  const es = exponential(slow * time)
  const ef = exponential(fast * time)
  const entry = (m: number, own: number) => (es * (m - fast * own) - ef * (m - slow * own)) / (slow - fast)
  return { e11: entry(-a, 1), e12: entry(a, 0), e21: entry(b, 0), e22: entry(-b - c, 1) }
}
