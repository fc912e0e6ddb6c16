/** Small dense matrices for the linear models: row by row in one array. Sizes are those of a loop, at most about twenty. */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix'
import type { Complex } from './complex.ts'

export class Dense {
  readonly rows: number
  readonly columns: number
  readonly data: Float64Array

  constructor(rows: number, columns: number, data = new Float64Array(rows * columns)) {
    this.rows = rows
    this.columns = columns
    this.data = data
  }

  static identity(size: number): Dense {
    const made = new Dense(size, size)
    for (let i = 0; i < size; i++) made.set(i, i, 1)
    return made
  }

  at(row: number, column: number): number {
    return this.data[row * this.columns + column]!
  }

  set(row: number, column: number, value: number): void {
    this.data[row * this.columns + column] = value
  }

  add(row: number, column: number, value: number): void {
    this.data[row * this.columns + column]! += value
  }

  copy(): Dense {
    return new Dense(this.rows, this.columns, this.data.slice())
  }

  column(index: number): Float64Array {
    return Float64Array.from({ length: this.rows }, (_, i) => this.at(i, index))
  }

  /** The same numbers in the upper left corner of a larger matrix of zeros. */
  grown(rows: number, columns: number): Dense {
    const made = new Dense(rows, columns)
    for (let i = 0; i < this.rows; i++) {
      made.data.set(this.data.subarray(i * this.columns, (i + 1) * this.columns), i * columns)
    }
    return made
  }

  /** Rows and columns of the given indices, in their order. */
  kept(indices: readonly number[]): Dense {
    const made = new Dense(indices.length, indices.length)
    for (const [i, row] of indices.entries())
      for (const [j, column] of indices.entries()) made.set(i, j, this.at(row, column))
    return made
  }

  times(other: Dense): Dense {
    const { rows, columns: inner } = this
    const { columns } = other
    const made = new Dense(rows, columns)
    const out = made.data
    for (let i = 0; i < rows; i++) {
      for (let k = 0; k < inner; k++) {
        const factor = this.data[i * inner + k]!
        if (factor === 0) continue
        for (let j = 0; j < columns; j++) out[i * columns + j]! += factor * other.data[k * columns + j]!
      }
    }
    return made
  }

  power(exponent: number): Dense {
    let result: Dense | null = null
    let square: Dense = this
    for (let n = exponent; n > 0; n = Math.floor(n / 2)) {
      if (n % 2 === 1) result = result ? result.times(square) : square
      if (n > 1) square = square.times(square)
    }
    return result ?? Dense.identity(this.rows)
  }
}

/**
 * Scales of the states that bring rows and columns of a square matrix to like size, powers of two so that nothing is rounded
 * (Parlett and Reinsch, Numerische Mathematik 13, 1969). The balanced matrix is D⁻¹ A D.
 */
export function balanced(a: Dense): { matrix: Dense; scale: Float64Array } {
  const n = a.rows
  const matrix = a.copy()
  const scale = new Float64Array(n).fill(1)
  for (let sweep = 0, changed = true; changed && sweep < 100; sweep++) {
    changed = false
    for (let i = 0; i < n; i++) {
      let column = 0
      let row = 0
      for (let j = 0; j < n; j++) {
        if (j === i) continue
        column += Math.abs(matrix.at(j, i))
        row += Math.abs(matrix.at(i, j))
      }
      if (column === 0 || row === 0) continue
      const factor = 2 ** Math.round(Math.log2(row / column) / 2)
      if (!(column * factor + row / factor < 0.95 * (column + row))) continue
      changed = true
      scale[i]! *= factor
      for (let j = 0; j < n; j++) {
        matrix.data[j * n + i]! *= factor
        matrix.data[i * n + j]! /= factor
      }
    }
  }
  return { matrix, scale }
}

function norm(a: Dense): number {
  let most = 0
  for (let i = 0; i < a.rows; i++) {
    let sum = 0
    for (let j = 0; j < a.columns; j++) sum += Math.abs(a.at(i, j))
    most = Math.max(most, sum)
  }
  return most
}

/**
 * e^(A·time): balanced, halved until the norm is below one half, Taylor series, squared back (Moler and Van Loan, SIAM Review
 * 45, 2003, method 3). Fourteen terms leave less than 1e-16 there.
 */
export function exponential(a: Dense, time: number): Dense {
  const { matrix, scale } = balanced(a)
  const squarings = Math.max(0, Math.ceil(Math.log2(norm(matrix) * Math.abs(time))) + 1)
  const small = matrix.copy()
  for (let i = 0; i < small.data.length; i++) small.data[i]! *= time / 2 ** squarings
  let term = Dense.identity(a.rows)
  let sum = term.copy()
  for (let n = 1; n <= 14; n++) {
    term = term.times(small)
    for (let i = 0; i < term.data.length; i++) {
      term.data[i]! /= n
      sum.data[i]! += term.data[i]!
    }
  }
  for (let n = 0; n < squarings; n++) sum = sum.times(sum)
  const size = a.rows
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) sum.data[i * size + j]! *= scale[i]! / scale[j]!
  return sum
}

/** Zero-order hold: x⁺ = Φ x + Γ u over `period` of ẋ = A x + B u, `b` one column an input (Van Loan, IEEE TAC 23, 1978). */
export function held(a: Dense, b: Dense, period: number): { a: Dense; b: Dense } {
  const n = a.rows
  const whole = a.grown(n + b.columns, n + b.columns)
  for (let i = 0; i < n; i++) for (let j = 0; j < b.columns; j++) whole.set(i, n + j, b.at(i, j))
  return parted(exponential(whole, period), n)
}

/** `count` steps of x⁺ = A x + B u under a held input, as one. */
export function lifted(a: Dense, b: Dense, count: number): { a: Dense; b: Dense } {
  const n = a.rows
  const whole = a.grown(n + b.columns, n + b.columns)
  for (let j = 0; j < b.columns; j++) {
    for (let i = 0; i < n; i++) whole.set(i, n + j, b.at(i, j))
    whole.set(n + j, n + j, 1)
  }
  return parted(whole.power(count), n)
}

function parted(whole: Dense, n: number): { a: Dense; b: Dense } {
  const b = new Dense(n, whole.columns - n)
  for (let i = 0; i < n; i++) for (let j = 0; j < b.columns; j++) b.set(i, j, whole.at(i, n + j))
  return { a: whole.kept([...Array(n).keys()]), b }
}

/** Eigenvalues of a square matrix. Throws a RangeError for a matrix that is not finite. */
export function eigenvalues(a: Dense): Complex[] {
  if (a.rows === 0) return []
  if (!a.data.every(Number.isFinite)) throw new RangeError('the linear model is not finite')
  const { matrix } = balanced(a)
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(new Matrix(rowsOf(matrix)), {
    assumeSymmetric: false,
  })
  return realEigenvalues.map((re, i) => ({ re, im: imaginaryEigenvalues[i]! }))
}

/** Numbers as real and imaginary parts, row by row where they are a square matrix. */
interface Parts {
  re: Float64Array
  im: Float64Array
}

/** x of (z·I − A)·x = b in place, b given as real and imaginary part: elimination with row pivots. Throws a RangeError where z is a pole. */
export function solveShifted(a: Dense, z: Complex, b: Parts): void {
  const n = a.rows
  const matrix: Parts = { re: a.data.map((value) => -value), im: new Float64Array(n * n) }
  for (let i = 0; i < n; i++) {
    matrix.re[i * n + i]! += z.re
    matrix.im[i * n + i] = z.im
  }
  for (let k = 0; k < n; k++) {
    bringPivot(matrix, b, n, k)
    clearBelow(matrix, b, n, k)
  }
  for (let k = n - 1; k >= 0; k--) solveRow(matrix, b, n, k)
}

/** Puts the row with the largest entry in column k in row k. */
function bringPivot({ re, im }: Parts, b: Parts, n: number, k: number): void {
  const sizeAt = (i: number) => re[i * n + k]! ** 2 + im[i * n + k]! ** 2
  let best = k
  for (let i = k + 1; i < n; i++) if (sizeAt(i) > sizeAt(best)) best = i
  if (sizeAt(best) === 0) throw new RangeError('the linear model has a pole where it is looked at')
  if (best === k) return
  for (let j = k; j < n; j++) for (const part of [re, im]) swap(part, k * n + j, best * n + j)
  for (const part of [b.re, b.im]) swap(part, k, best)
}

function swap(values: Float64Array, p: number, q: number): void {
  const kept = values[p]!
  values[p] = values[q]!
  values[q] = kept
}

function clearBelow({ re, im }: Parts, b: Parts, n: number, k: number): void {
  const [x, y] = [re[k * n + k]!, im[k * n + k]!]
  const size = x * x + y * y
  for (let i = k + 1; i < n; i++) {
    const [p, q] = [re[i * n + k]!, im[i * n + k]!]
    if (p === 0 && q === 0) continue
    const fr = (p * x + q * y) / size
    const fi = (q * x - p * y) / size
    for (let j = k + 1; j < n; j++) {
      const [u, v] = [re[k * n + j]!, im[k * n + j]!]
      re[i * n + j]! -= fr * u - fi * v
      im[i * n + j]! -= fr * v + fi * u
    }
    b.re[i]! -= fr * b.re[k]! - fi * b.im[k]!
    b.im[i]! -= fr * b.im[k]! + fi * b.re[k]!
  }
}

/** b[k] from those already solved behind it. */
function solveRow({ re, im }: Parts, b: Parts, n: number, k: number): void {
  let [u, v] = [b.re[k]!, b.im[k]!]
  for (let j = k + 1; j < n; j++) {
    u -= re[k * n + j]! * b.re[j]! - im[k * n + j]! * b.im[j]!
    v -= re[k * n + j]! * b.im[j]! + im[k * n + j]! * b.re[j]!
  }
  const [x, y] = [re[k * n + k]!, im[k * n + k]!]
  const size = x * x + y * y
  b.re[k] = (u * x + v * y) / size
  b.im[k] = (v * x - u * y) / size
}

export const rowsOf = ({ rows, columns, data }: Dense): number[][] =>
  Array.from({ length: rows }, (_, i) => Array.from(data.subarray(i * columns, (i + 1) * columns)))
