/**
 * How sure fitted values are. What is left of a log is seldom white, so the covariance is that of slopes times what is left, summed
 * over blocks of time longer than it remembers (White 1980; Liang and Zeger, Biometrika 73(1), 1986); where it is white this is the usual
 * s² (JᵀJ)⁻¹. Of the two the larger is taken, and Student's t of the blocks.
 */
import { EigenvalueDecomposition, Matrix, pseudoInverse } from 'ml-matrix'
import { studentQuantile } from '../ask/spread/distributions.ts'
import type { Compared, Fitted } from './fit.ts'

export interface Certainty {
  /** Half of the 95 % interval of each value; Infinity where the log does not tell it. */
  half: number[]
  /** Correlation of each with each. */
  correlations: number[][]
}

/** Blocks at most, at least, and how many memories long each is. */
const BLOCKS = 100
const LEAST_BLOCKS = 20
const MEMORIES = 5
/** Below this share of the largest eigenvalue a direction is not told. */
const UNTOLD = 1e-10

export function certaintyOf(fitted: Fitted): Certainty {
  const { slopes, left, compared } = fitted
  const n = slopes.columns
  const size = Array.from({ length: n }, (_, p) => slopes.getColumnVector(p).norm('frobenius') || 1)
  const j = new Matrix(slopes.rows, n)
  for (let k = 0; k < slopes.rows; k++) for (let p = 0; p < n; p++) j.set(k, p, slopes.get(k, p) / size[p]!)
  const residual = left.flatMap((each, c) => [...each].map((value) => value / compared[c]!.scale))
  const information = j.transpose().mmul(j)
  const inverse = pseudoInverse(information)
  const plain = Matrix.mul(inverse, residual.reduce((sum, r) => sum + r * r, 0) / Math.max(1, residual.length - n))
  const { count, sums } = blocked(j, residual, fitted)
  const robust = inverse
    .mmul(sums)
    .mmul(inverse)
    .mul(count / Math.max(1, count - n))
  const covariance = larger(plain, robust)
  const t = studentQuantile(0.975, Math.max(1, count - n))
  const blind = blindOf(information)
  const sd = size.map((each, p) => Math.sqrt(covariance.get(p, p)) / each)
  const half = sd.map((each, p) =>
    blind[p] || slopes.getColumnVector(p).norm('frobenius') === 0 ? Number.POSITIVE_INFINITY : t * each,
  )
  const correlations = sd.map((_, p) =>
    sd.map((_, q) => covariance.get(p, q) / Math.sqrt(covariance.get(p, p) * covariance.get(q, q) || 1)),
  )
  return { half, correlations }
}

/** Whichever has the larger variances, quantity by quantity, with the correlations of the plain one. */
function larger(plain: Matrix, robust: Matrix): Matrix {
  const grow = Array.from({ length: plain.rows }, (_, p) =>
    Math.sqrt(Math.max(1, robust.get(p, p) / (plain.get(p, p) || 1))),
  )
  return plain.clone().apply(function (this: Matrix, p: number, q: number) {
    this.set(p, q, this.get(p, q) * grow[p]! * grow[q]!)
  })
}

/** Quantities with a part in a direction that the log does not tell. */
function blindOf(information: Matrix): boolean[] {
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(information, { assumeSymmetric: true })
  const most = Math.max(...realEigenvalues)
  return Array.from({ length: information.rows }, (_, p) =>
    realEigenvalues.some((value, k) => value < UNTOLD * most && Math.abs(eigenvectorMatrix.get(p, k)) > 0.1),
  )
}

/** Sums of slope times what is left over blocks of rows of one recording, all its channels together, squared and added. */
function blocked(j: Matrix, residual: readonly number[], { left, compared }: Fitted): { count: number; sums: Matrix } {
  const n = j.columns
  const blocks = new Map<string, Float64Array>()
  let at = 0
  for (const { recording, rows } of compared) {
    const length = blockLength(compared, left, recording)
    for (const row of rows) {
      const key = `${recording} ${Math.floor(row / length)}`
      const g = blocks.get(key) ?? new Float64Array(n)
      for (let p = 0; p < n; p++) g[p]! += j.get(at, p) * residual[at]!
      blocks.set(key, g)
      at++
    }
  }
  const sums = Matrix.zeros(n, n)
  for (const g of blocks.values())
    for (let p = 0; p < n; p++) for (let q = 0; q < n; q++) sums.set(p, q, sums.get(p, q) + g[p]! * g[q]!)
  return { count: blocks.size, sums }
}

/** Rows in a block: so many times what the residuals of a recording remember, with neither too few blocks nor too many. */
function blockLength(compared: readonly Compared[], left: readonly Float64Array[], recording: number): number {
  const own = left.filter((_, c) => compared[c]!.recording === recording)
  const rows = Math.max(...own.map(({ length }) => length))
  const most = Math.max(1, Math.floor(rows / LEAST_BLOCKS))
  const least = Math.max(1, Math.ceil(rows / BLOCKS))
  return Math.min(most, Math.max(least, Math.ceil(MEMORIES * Math.max(...own.map(memoryOf)))))
}

/** Rows until the correlation of a signal with itself has fallen below 1/e. */
function memoryOf(left: Float64Array): number {
  const power = left.reduce((sum, each) => sum + each * each, 0)
  if (power === 0) return 1
  for (let lag = 1; lag < left.length / 4; lag = Math.ceil(lag * 1.3)) {
    let sum = 0
    for (let k = lag; k < left.length; k++) sum += left[k]! * left[k - lag]!
    if (sum < power / Math.E) return lag
  }
  return left.length / 4
}

/** Half of each 95 % interval where what is left is white: t · s √diag((JᵀJ)⁻¹); Infinity for what nothing changes with. */
export function plainHalf(slopes: Matrix, left: readonly number[]): number[] {
  const free = Math.max(1, left.length - slopes.columns)
  const s2 = left.reduce((sum, each) => sum + each * each, 0) / free
  const size = Array.from({ length: slopes.columns }, (_, p) => slopes.getColumnVector(p).norm('frobenius') || 1)
  const unit = slopes.clone()
  for (const [p, each] of size.entries()) unit.mulColumn(p, 1 / each)
  const inverse = pseudoInverse(unit.transpose().mmul(unit))
  const t = studentQuantile(0.975, free)
  return size.map((each, p) =>
    slopes.getColumnVector(p).norm('frobenius') === 0
      ? Number.POSITIVE_INFINITY
      : (t * Math.sqrt(s2 * inverse.get(p, p))) / each,
  )
}
