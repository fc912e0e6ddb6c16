/**
 * Quantities that go together: the normal scores of two have the correlation asked (a Gaussian copula), so each keeps its own law and
 * a single sample can be computed without the others.
 */
import { normalQuantile, normalShare } from './distributions.ts'

/** Quantities `a` and `b` by their place, and the correlation of their normal scores, −1 … 1. */
export interface Pair {
  a: number
  b: number
  correlation: number
}

export type Correlator =
  /** `apply` gives a new point, in the open interval again; what no pair names is left to the bit. */
  | { kind: 'correlates'; apply: (u: Float64Array) => Float64Array }
  /** No law has all of these together; without any one of them there is one. What is not asked counts as uncorrelated. */
  | { kind: 'contradiction'; pairs: Pair[] }

/** Of round-off: a correlation of 1 leaves a pivot of 0, give or take. */
const NOTHING = 1e-12
const LARGEST = 1 - 2 ** -53

/** Throws a RangeError for a pair that names no two quantities of 0 … dimension − 1, or no correlation. */
export function correlator(dimension: number, pairs: readonly Pair[]): Correlator {
  for (const { a, b, correlation } of pairs) {
    const named = [a, b].every((place) => Number.isInteger(place) && place >= 0 && place < dimension)
    if (!named || a === b || !(Math.abs(correlation) <= 1)) {
      throw new RangeError(`No correlation of two quantities: ${a}, ${b}, ${correlation}.`)
    }
  }
  const members = [...new Set(pairs.flatMap(({ a, b }) => [a, b]))].sort((one, other) => one - other)
  const root = rootOf(members, pairs)
  return root ? { kind: 'correlates', apply: mixer(members, root) } : { kind: 'contradiction', pairs: culprits(pairs) }
}

function mixer(members: readonly number[], root: readonly Float64Array[]) {
  return (u: Float64Array): Float64Array => {
    const mixed = Float64Array.from(u)
    const scores = members.map((place) => normalQuantile(u[place]!))
    // The first keeps its score, to the bit.
    for (let row = 1; row < members.length; row++) {
      let score = 0
      for (let k = 0; k <= row; k++) score += root[row]![k]! * scores[k]!
      mixed[members[row]!] = Math.min(Math.max(normalShare(score), Number.MIN_VALUE), LARGEST)
    }
    return mixed
  }
}

/** Lower triangular root of the members' correlations (Cholesky), of a semi-definite matrix too; null: there is none. */
function rootOf(members: readonly number[], pairs: readonly Pair[]): Float64Array[] | null {
  const size = members.length
  const asked = members.map((_, row) => Float64Array.from({ length: size }, (_, column) => (row === column ? 1 : 0)))
  const seen = new Set<number>()
  for (const { a, b, correlation } of pairs) {
    const row = members.indexOf(Math.max(a, b))
    const column = members.indexOf(Math.min(a, b))
    if (seen.has(row * size + column) && asked[row]![column] !== correlation) return null
    seen.add(row * size + column)
    asked[row]![column] = correlation
  }
  return choleskyOf(asked)
}

function choleskyOf(matrix: readonly Float64Array[]): Float64Array[] | null {
  const size = matrix.length
  const root = matrix.map(() => new Float64Array(size))
  for (let column = 0; column < size; column++) {
    const pivot = matrix[column]![column]! - product(root[column]!, root[column]!, column)
    if (pivot < -NOTHING) return null
    const diagonal = pivot > NOTHING ? Math.sqrt(pivot) : 0
    root[column]![column] = diagonal
    for (let row = column + 1; row < size; row++) {
      const rest = matrix[row]![column]! - product(root[row]!, root[column]!, column)
      if (diagonal === 0 && Math.abs(rest) > Math.sqrt(NOTHING)) return null
      root[row]![column] = diagonal === 0 ? 0 : rest / diagonal
    }
  }
  return root
}

function product(one: Float64Array, other: Float64Array, length: number): number {
  let sum = 0
  for (let k = 0; k < length; k++) sum += one[k]! * other[k]!
  return sum
}

/** The pairs of which none can be left out without the contradiction going. */
function culprits(pairs: readonly Pair[]): Pair[] {
  let left = [...pairs]
  for (const pair of pairs) {
    const without = left.filter((other) => other !== pair)
    const members = [...new Set(without.flatMap(({ a, b }) => [a, b]))].sort((one, other) => one - other)
    if (!rootOf(members, without)) left = without
  }
  return left
}
