/**
 * What drives a figure: the share of its variance that goes when a quantity is held (first order), and that stays when all others are
 * held (total). Saltelli et al., Variance based sensitivity analysis of model output, Comput. Phys. Commun. 181 (2010), for the first
 * order; Jansen, Analysis of variance designs for model output, Comput. Phys. Commun. 117 (1999), for the total.
 *
 * The quantities are those of the points, before any correlation: of two that go together, the shares tell which random number drove.
 */
import { studentQuantile } from './distributions.ts'
import { exactUpper } from './intervals.ts'
import { pointsOf, type Sampled, SCRAMBLINGS, scramblingOf } from './points.ts'

export interface Index {
  /** As estimated: of a quantity without effect it may lie a little below zero. */
  value: number
  /** 95 % limits, within 0 … 1. */
  low: number
  high: number
}

export interface Driver {
  first: Index
  total: Index
}

/** Points that a sample takes: itself, another one, and itself with each quantity in turn taken from the other. */
export const partsOf = (dimension: number): number => dimension + 2

/**
 * Part 0 of sample `index` is that very sample of the study, so what was computed for it serves again; part 1 the other one, part 2 + k
 * the sample with quantity k of the other. Takes points of twice the dimension, with their RangeError.
 */
export function designOf({ sampling, dimension, seed }: Sampled): (index: number, part: number) => Float64Array {
  const points = pointsOf({ sampling, dimension: 2 * dimension, seed })
  return (index, part) => {
    const both = points(index)
    if (part === 1) return both.slice(dimension)
    const own = both.slice(0, dimension)
    if (part > 1) own[part - 2] = both[dimension + part - 2]!
    return own
  }
}

/** Sums over the samples of one scrambling, of values counted from a common origin. */
interface Sums {
  samples: number
  values: number
  squares: number
  /** By quantity: the other's value times the change, the change, its square. */
  products: Float64Array
  changes: Float64Array
  changed: Float64Array
}

/**
 * By quantity, from the values of a figure in all parts of samples 0, 1, 2 …, `rows[index][part]`; a failure counts as 0 or 1. Limits
 * from leaving out each scrambling in turn (jackknife), with Student's law of their number. Null: the figure does not vary, or there are
 * fewer than three scramblings. A figure of numbers that a quantity never changed has index 0 without limits of its own.
 */
export function driversOf(rows: readonly ArrayLike<number>[]): Driver[] | null {
  if (rows.length === 0) return null
  const dimension = rows[0]!.length - 2
  const groups = sumsOf(rows, dimension).filter(({ samples }) => samples > 0)
  if (groups.length < 3) return null
  const without = groups.map((left) =>
    indicesOf(
      groups.filter((group) => group !== left),
      dimension,
    ),
  )
  const whole = indicesOf(groups, dimension)
  if (!whole || without.some((each) => each === null)) return null
  const counted = isCount(rows)
  // Of failures that a quantity never changed, no more than this share can be changed by it.
  const unseen = counted ? exactUpper(0, rows.length, 0.975) / (2 * whole.variance) : 0
  // The products of failures are whole: what is known of their sum is no better than to half of one.
  const coarse = counted ? 0.5 / (rows.length * whole.variance) : 0
  return Array.from({ length: dimension }, (_, k) => {
    const still = groups.every(({ changed }) => changed[k] === 0) ? unseen : 0
    const [first, total] = [without.map((each) => each!.first[k]!), without.map((each) => each!.total[k]!)]
    return { first: limited(whole.first[k]!, first, coarse, still), total: limited(whole.total[k]!, total, 0, still) }
  })
}

const isCount = (rows: readonly ArrayLike<number>[]) =>
  rows.every((row) => Array.from(row).every((value) => value === 0 || value === 1))

function sumsOf(rows: readonly ArrayLike<number>[], dimension: number): Sums[] {
  const groups = Array.from({ length: SCRAMBLINGS }, () => ({
    samples: 0,
    values: 0,
    squares: 0,
    products: new Float64Array(dimension),
    changes: new Float64Array(dimension),
    changed: new Float64Array(dimension),
  }))
  const origin = rows[0]![0]!
  for (const [index, row] of rows.entries()) {
    const group = groups[scramblingOf(index)]!
    const [own, other] = [row[0]! - origin, row[1]! - origin]
    group.samples++
    group.values += own + other
    group.squares += own * own + other * other
    for (let k = 0; k < dimension; k++) {
      const change = row[k + 2]! - row[0]!
      group.products[k]! += other * change
      group.changes[k]! += change
      group.changed[k]! += change * change
    }
  }
  return groups
}

function indicesOf(groups: readonly Sums[], dimension: number) {
  const sum = (of: (group: Sums) => number) => groups.reduce((total, group) => total + of(group), 0)
  const samples = sum((group) => group.samples)
  const mean = sum((group) => group.values) / (2 * samples)
  const variance = sum((group) => group.squares) / (2 * samples) - mean * mean
  // Of a figure that does not vary, round-off is left.
  if (!(variance > 1e-24 * mean * mean)) return null
  const quantities = Array.from({ length: dimension }, (_, k) => k)
  return {
    variance,
    first: quantities.map(
      (k) => (sum((g) => g.products[k]!) - mean * sum((g) => g.changes[k]!)) / (samples * variance),
    ),
    total: quantities.map((k) => sum((g) => g.changed[k]!) / (2 * samples * variance)),
  }
}

function limited(value: number, without: readonly number[], coarse: number, still: number): Index {
  const groups = without.length
  const mean = without.reduce((total, each) => total + each, 0) / groups
  const square = without.reduce((total, each) => total + (each - mean) ** 2, 0)
  const reach = studentQuantile(0.975, groups - 1) * Math.sqrt((square * (groups - 1)) / groups + coarse ** 2)
  const within = (limit: number) => Math.min(Math.max(limit, 0), 1)
  return { value, low: within(value - reach), high: within(Math.max(value + reach, still)) }
}
