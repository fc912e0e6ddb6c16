/** Zeros of C·(zI − A)⁻¹·B, one input and one output. */
import { inverse, Matrix } from 'ml-matrix'
import type { Complex } from './complex.ts'
import { balanced, Dense, eigenvalues, rowsOf } from './matrix.ts'

/**
 * Finite eigenvalues of the pencil [A B; C 0] − z·[I 0; 0 0] (Emami-Naeini and Van Dooren, Automatica 18(4), 1982, from memory),
 * by inverting it about a point beside the unit circle, where slow zeros stay apart: what is infinite becomes 0. There are as many
 * as states less the samples that the input takes to reach the output. Throws a RangeError for a model that is not finite.
 */
export function zerosOf(a: Dense, b: Float64Array, c: Float64Array): Complex[] {
  const count = finiteZeros(a, b, c)
  if (count <= 0) return []
  const n = a.rows
  const { matrix, scale } = balanced(a)
  const pencil = matrix.grown(n + 1, n + 1)
  const [in_, out] = [b.map((value, i) => value / scale[i]!), c.map((value, i) => value * scale[i]!)]
  const [bSize, cSize] = [Math.hypot(...in_), Math.hypot(...out)]
  for (let i = 0; i < n; i++) {
    pencil.add(i, i, -BESIDE)
    pencil.set(i, n, in_[i]! / bSize)
    pencil.set(n, i, out[i]! / cSize)
  }
  const turned = inverse(new Matrix(rowsOf(pencil)))
  const power = new Dense(n + 1, n + 1)
  for (let i = 0; i <= n; i++) for (let j = 0; j < n; j++) power.set(i, j, turned.get(i, j))
  return eigenvalues(power)
    .sort((p, q) => Math.hypot(q.re, q.im) - Math.hypot(p.re, p.im))
    .slice(0, count)
    .map(({ re, im }) => ({ re: BESIDE + re / (re * re + im * im), im: -im / (re * re + im * im) }))
}

/** Where the pencil is inverted: no zero of a loop lies just there. */
const BESIDE = 1.0371

/** Share of what could add up below which a sum counts as 0. */
const NOTHING = 1e-13

/** States less the index of the first C·A^(r−1)·B that is not 0; below 1 where the input never reaches the output. */
function finiteZeros(a: Dense, b: Float64Array, c: Float64Array): number {
  let column = new Dense(b.length, 1, b.slice())
  for (let r = 1; r <= a.rows; r++) {
    const terms = column.data.map((value, i) => value * c[i]!)
    const sum = terms.reduce((total, term) => total + term, 0)
    const size = terms.reduce((total, term) => total + Math.abs(term), 0)
    if (Math.abs(sum) > NOTHING * size) return a.rows - r
    column = a.times(column)
  }
  return 0
}
