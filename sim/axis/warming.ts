/** How long a winding bears a current, in closed form: the two nodes of `heat.ts`, copper loss growing with temperature. */
import { exponential } from '../core/elementary.ts'
import type { HeatOptions, Temperatures } from './cooling.ts'
import { COPPER_COEFFICIENT, REFERENCE } from './heat.ts'

/** Times longer than this count as for ever [s]. */
const EVER = 1e9

interface Coil extends HeatOptions {
  /** Highest temperature of the winding [°C]. */
  limit: number
}

/**
 * Time [s] until the winding reaches its limit under a steady `current` [A], `resistance` [Ω] at 25 °C; 0 where it is there already,
 * Infinity where it never gets there. With w and h over the ambient, ẇ = p + (g − a)·w + a·h and ḣ = b·w − (b + c)·h are linear, and
 * the rate of each is a sum of two exponentials.
 */
export function timeToLimit(coil: Coil, resistance: number, current: number, from: Temperatures): number {
  if (from.winding >= coil.limit) return 0
  const rise = riseOf(coil, current * current * resistance, from)
  const wanted = coil.limit - from.winding
  const reached = (time: number) => rise.at(time) >= wanted
  if (rise.turn > 0) return reached(rise.turn) ? firstTime(reached, rise.turn) : Number.POSITIVE_INFINITY
  let late = 1
  while (!reached(late)) {
    late *= 2
    if (late > EVER) return Number.POSITIVE_INFINITY
  }
  return firstTime(reached, late)
}

interface Rise {
  /** Rise of the winding [K] after so much time [s]. */
  at(time: number): number
  /** When it is highest and turns back, as under a housing that was hotter [s]; 0: it does not. */
  turn: number
}

function riseOf(coil: HeatOptions, loss: number, from: Temperatures): Rise {
  const a = 1 / coil.windingTime
  const c = 1 / coil.housingTime
  const b = (c * coil.housingResistance) / coil.windingResistance
  const perLoss = coil.windingResistance / coil.windingTime
  const p = perLoss * loss * (1 + COPPER_COEFFICIENT * (coil.ambient - REFERENCE))
  const g = perLoss * loss * COPPER_COEFFICIENT
  const w = from.winding - coil.ambient
  const h = from.housing - coil.ambient
  const rate = p + (g - a) * w + a * h
  const change = (g - a) * rate + a * (b * w - (b + c) * h)
  const sum = g - a - b - c
  const half = g - a + b + c
  const root = Math.sqrt(half * half + 4 * a * b)
  const slow = (sum + root) / 2
  const fast = (sum - root) / 2
  const slowly = (change - fast * rate) / root
  const quickly = rate - slowly
  const rateAt = (time: number) => slowly * exponential(slow * time) + quickly * exponential(fast * time)
  return {
    at: (time) => slowly * grown(slow, time) + quickly * grown(fast, time),
    turn: rate > 0 && slowly < 0 ? turnOf(rateAt, 1 / (slow - fast)) : 0,
  }
}

/** When a rate that starts above zero has come down to it; 0: not within what counts as for ever. */
function turnOf(rateAt: (time: number) => number, first: number): number {
  let late = first
  while (rateAt(late) > 0) {
    late *= 2
    if (!(late > 0 && late < EVER)) return 0
  }
  return firstTime((time) => rateAt(time) <= 0, late)
}

/** Integral of e^(rate·t) from 0 to `time`. */
function grown(rate: number, time: number): number {
  const x = rate * time
  return Math.abs(x) < 1e-5 ? time * (1 + x / 2) : (exponential(x) - 1) / rate
}

/** First time at which something is so that is not so at 0 and is so at `late`. */
function firstTime(isSo: (time: number) => boolean, late: number): number {
  let [from, to] = [0, late]
  for (let n = 0; n < 60; n++) {
    const middle = (from + to) / 2
    if (isSo(middle)) to = middle
    else from = middle
  }
  return to
}
