/** The laws by which a quantity scatters about its value in the file. */
import { exponential, power } from '../../core/elementary.ts'
import { normalQuantile, normalShare } from './distributions.ts'

/**
 * Lengths of a law are in the quantity's unit; with `share` they are shares of its value (`low`, `mode`, `high` and `values`: multiples
 * of it). `normal` is cut at ±`within`. `lognormal`: the value is the median, `factor` > 1 the geometric standard deviation. `measured`:
 * each of the list with the same weight, nothing in between.
 */
export type Law =
  | { law: 'normal'; sd: number; within?: number; share?: boolean }
  | { law: 'uniform'; half: number; share?: boolean }
  | { law: 'triangular'; low: number; mode: number; high: number; share?: boolean }
  | { law: 'lognormal'; factor: number }
  | { law: 'measured'; values: readonly number[]; share?: boolean }

/** The quantity with the share `u` of the law below it, 0 < u < 1; never falls as `u` grows. */
export function quantileOf(law: Law, value: number, u: number): number {
  switch (law.law) {
    case 'normal':
      return value + cutQuantile(law, u) * law.sd * unitOf(law, value)
    case 'uniform':
      return value + (2 * u - 1) * law.half * unitOf(law, value)
    case 'triangular':
      return triangularQuantile(edgesOf(law, value), u)
    case 'lognormal':
      return value * power(law.factor, value < 0 ? -normalQuantile(u) : normalQuantile(u))
    case 'measured':
      return measuredQuantile(law, value, u)
  }
}

/**
 * How dense the law is at `x`, per unit of the quantity, for a sketch. A list has no density: of it this is a histogram of √n bars.
 * A law without width has none either: Infinity at its value, 0 elsewhere.
 */
export function densityOf(law: Law, value: number, x: number): number {
  switch (law.law) {
    case 'normal': {
      const sd = law.sd * unitOf(law, value)
      if (sd === 0) return spike(x, value)
      const z = (x - value) / sd
      const cut = cutOf(law)
      return Math.abs(z) > cut ? 0 : bell(z) / (sd * (1 - 2 * normalShare(-cut)))
    }
    case 'uniform': {
      const half = law.half * unitOf(law, value)
      if (half === 0) return spike(x, value)
      return Math.abs(x - value) > half ? 0 : 1 / (2 * half)
    }
    case 'triangular':
      return triangularDensity(edgesOf(law, value), x)
    case 'lognormal': {
      const ratio = x / value
      if (ratio <= 0) return 0
      const width = Math.log(law.factor)
      return width === 0 ? spike(x, value) : bell(Math.log(ratio) / width) / (Math.abs(x) * width)
    }
    case 'measured':
      return barOf(listOf(law, value), x)
  }
}

/** The normal law that a tolerance of ±`half` held with capability `cpk` means: cpk = half/(3·sd), centred (ISO 22514-2). */
export const lawOfTolerance = (half: number, cpk: number): Law => ({ law: 'normal', sd: half / (3 * cpk) })

/** What a length of the law is counted in. */
const unitOf = (law: { share?: boolean }, value: number) => (law.share ? Math.abs(value) : 1)

const spike = (x: number, at: number) => (x === at ? Number.POSITIVE_INFINITY : 0)
const bell = (z: number) => exponential(-z * z * 0.5) / Math.sqrt(2 * Math.PI)

/** Where a normal law is cut, in standard deviations. */
const cutOf = ({ sd, within }: { sd: number; within?: number }) =>
  within === undefined || sd === 0 ? Number.POSITIVE_INFINITY : within / sd

/** Both halves from the lower tail, where the quantile is exact. */
function cutQuantile(law: { sd: number; within?: number }, u: number): number {
  const tail = normalShare(-cutOf(law))
  const below = tail + Math.min(u, 1 - u) * (1 - 2 * tail)
  const z = below >= 0.5 ? 0 : normalQuantile(below)
  return u < 0.5 ? z : -z
}

type Edges = { low: number; mode: number; high: number }

function edgesOf({ low, mode, high, share }: Edges & { share?: boolean }, value: number): Edges {
  if (!share) return { low, mode, high }
  return value < 0
    ? { low: high * value, mode: mode * value, high: low * value }
    : { low: low * value, mode: mode * value, high: high * value }
}

function triangularQuantile({ low, mode, high }: Edges, u: number): number {
  const width = high - low
  if (width === 0) return mode
  return u * width < mode - low
    ? low + Math.sqrt(u * width * (mode - low))
    : high - Math.sqrt((1 - u) * width * (high - mode))
}

function triangularDensity({ low, mode, high }: Edges, x: number): number {
  if (low === high) return spike(x, mode)
  if (x < low || x > high) return 0
  const peak = 2 / (high - low)
  if (x < mode) return (peak * (x - low)) / (mode - low)
  return x > mode ? (peak * (high - x)) / (high - mode) : peak
}

type Measured = Extract<Law, { law: 'measured' }>

/** Lists in order, each sorted once however many samples are drawn of it. */
const sorted = new WeakMap<readonly number[], Float64Array>()

function inOrder(values: readonly number[]): Float64Array {
  const known = sorted.get(values)
  if (known) return known
  const list = Float64Array.from(values).sort()
  sorted.set(values, list)
  return list
}

function measuredQuantile({ values, share }: Measured, value: number, u: number): number {
  const list = inOrder(values)
  const place = Math.min(Math.floor(u * list.length), list.length - 1)
  if (!share) return list[place]!
  return value * list[value < 0 ? list.length - 1 - place : place]!
}

function listOf({ values, share }: Measured, value: number): Float64Array {
  const list = inOrder(values)
  return share ? list.map((each) => each * value).sort() : list
}

function barOf(list: Float64Array, x: number): number {
  const low = list[0]!
  const high = list.at(-1)!
  if (low === high) return spike(x, low)
  if (x < low || x > high) return 0
  const bars = Math.ceil(Math.sqrt(list.length))
  const barAt = (at: number) => Math.min(Math.floor(((at - low) / (high - low)) * bars), bars - 1)
  const bar = barAt(x)
  const inside = list.reduce((count, each) => count + (barAt(each) === bar ? 1 : 0), 0)
  return (inside * bars) / (list.length * (high - low))
}
