/** The part of the complex plane that is shown: a square, its places on the drawing, and curves as paths. Knows no React. */
import type { Curves } from '../../../sim/index.ts'
import type { Range, View } from '../../ui/chart/group.ts'

/** A square of the plane: real and imaginary parts. */
export type Square = Required<View>

/** About the critical point, as it is shown at first; and how far out one can look. */
export const AT_FIRST: Square = { x: [-2.5, 1.5], y: [-2, 2] }
export const WIDEST: Square = { x: [-20.5, 19.5], y: [-20, 20] }
/** Edge of the drawing. */
export const SIZE = 320

export interface Plane {
  x(re: number): number
  y(im: number): number
  /** Length on the drawing of 1. */
  one: number
}

export function planeOf({ x: [left, right], y: [low, high] }: Square): Plane {
  return {
    x: (re) => ((re - left) / (right - left)) * SIZE,
    y: (im) => ((high - im) / (high - low)) * SIZE,
    one: SIZE / (right - left),
  }
}

/** The square about the middle of a part, as large as its longer side; inside what can be looked at. */
export function squareOf({ x, y }: Square): Square {
  const side = Math.min(WIDEST.x[1] - WIDEST.x[0], Math.max(x[1] - x[0], y[1] - y[0]))
  const fit = ([from, to]: Range, [least, most]: Range): Range => {
    const start = Math.min(most - side, Math.max(least, (from + to - side) / 2))
    return [start, start + side]
  }
  return { x: fit(x, WIDEST.x), y: fit(y, WIDEST.y) }
}

/** Beyond so many times the drawing a curve is bent, so that coordinates stay small. */
const FAR = 12

export function pathOf({ re, im }: Curves, { x, y }: Plane): string {
  const bent = (place: number) => Math.min(FAR * SIZE, Math.max(-FAR * SIZE, place)).toFixed(1)
  let d = ''
  for (let i = 0; i < re.length; i++)
    if (Number.isFinite(re[i]!) && Number.isFinite(im[i]!))
      d += `${d === '' ? 'M' : 'L'}${bent(x(re[i]!))},${bent(y(im[i]!))}`
  return d
}

/** Real and imaginary part at a frequency [rad/s], by a straight line between two points of the curve; null outside. */
export function pointAt({ frequency, re, im }: Curves, at: number): { re: number; im: number } | null {
  const next = frequency.findIndex((each) => each >= at)
  if (next < 0 || at < frequency[0]!) return null
  const before = Math.max(0, next - 1)
  const width = frequency[next]! - frequency[before]!
  const share = width > 0 ? (at - frequency[before]!) / width : 1
  const point = {
    re: re[before]! + share * (re[next]! - re[before]!),
    im: im[before]! + share * (im[next]! - im[before]!),
  }
  return Number.isFinite(point.re) && Number.isFinite(point.im) ? point : null
}

/** The frequency [rad/s] at which any of the curves comes nearest to a place on the drawing; null: there is none. */
export function nearestFrequency(curves: Curves[], plane: Plane, place: { x: number; y: number }): number | null {
  let best: number | null = null
  let least = Number.POSITIVE_INFINITY
  for (const { frequency, re, im } of curves)
    for (let i = 0; i < re.length; i++) {
      const far = Math.hypot(plane.x(re[i]!) - place.x, plane.y(im[i]!) - place.y)
      if (far < least) [least, best] = [far, frequency[i]!]
    }
  return best
}
