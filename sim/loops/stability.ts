/** What the closed poles say of a loop. */
import { type Complex, magnitude } from './complex.ts'

/** `border`: a pole on the unit circle, so that what is disturbed neither grows nor dies away. */
export type Stability = 'stable' | 'border' | 'unstable'

/**
 * Growth rate that counts as none [1/s], a doubling in eight days; and the distance from the unit circle that the rounding of
 * eigenvalues may cause.
 */
const SLOWEST = 1e-6
const ROUNDING = 1e-10

/** Growth rate of a pole's mode [1/s]; 0 where it is none. */
export function growthOf(pole: Complex, period: number): number {
  const exponent = Math.log(magnitude(pole))
  return Math.abs(exponent) <= Math.max(SLOWEST * period, ROUNDING) ? 0 : exponent / period
}

export function stabilityOf(poles: readonly Complex[], period: number): Stability {
  const growth = Math.max(...poles.map((pole) => growthOf(pole, period)))
  return growth > 0 ? 'unstable' : growth < 0 ? 'stable' : 'border'
}

/** Distance from z = 1 below which an open and a closed pole are one mode that the loop neither sees nor moves. */
const SAME = 1e-10

/** Both lists without the modes at z = 1 that they share: such a mode cancels from L. */
export function withoutIdle(
  closed: readonly Complex[],
  open: readonly Complex[],
): { closed: Complex[]; open: Complex[]; idle: number } {
  const atOne = ({ re, im }: Complex) => Math.hypot(re - 1, im) < SAME
  const idle = Math.min(closed.filter(atOne).length, open.filter(atOne).length)
  const drop = (poles: readonly Complex[]) => {
    let left = idle
    return poles.filter((pole) => !(atOne(pole) && left-- > 0))
  }
  return { closed: drop(closed), open: drop(open), idle }
}
