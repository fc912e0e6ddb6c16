import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { Matrix, QrDecomposition } from 'ml-matrix'

export interface StepFrom {
  values: readonly number[]
  /** What is left there, over its scale, and its slopes by each value, a column a value. */
  left: Float64Array
  slopes: Matrix
  least: readonly number[]
  most: readonly number[]
  damping: number
}

export type Reduced = Pick<StepFrom, 'left' | 'slopes'>

/**
 * The same least squares in a row for each value: slopes J = Q R stand for themselves as R, what is left as Qᵀ r, since no step of
 * Levenberg and Marquardt knows more of them than JᵀJ and Jᵀr (Golub and Van Loan, Matrix Computations, ch. 5).
 */
export function reduced(left: Float64Array, slopes: Matrix): Reduced {
  const n = slopes.columns
  if (slopes.rows <= n + 1) return { left, slopes }
  const qr = new QrDecomposition(slopes)
  const [q, r] = [qr.orthogonalMatrix, qr.upperTriangularMatrix]
  // The library wants a row more than there may be values.
  const rows = Matrix.zeros(n + 1, n)
  rows.setSubMatrix(r, 0, 0)
  const turned = new Float64Array(n + 1)
  for (let k = 0; k < slopes.rows; k++) for (let p = 0; p < n; p++) turned[p]! += q.get(k, p) * left[k]!
  return { left: turned, slopes: rows }
}

/**
 * Where Levenberg and Marquardt would go next, by a library, in units in which all values are felt alike. It asks for the point before
 * it judges it, and there it is left: whether a step is taken is for whoever asked, who may have to wait for the point.
 */
export function stepFrom(from: StepFrom): number[] {
  const { values, left, least, most, damping } = from
  const slopes = inward(from)
  const size = values.map((_, p) => slopes.getColumnVector(p).norm('frobenius') || 1)
  const scaled = (list: readonly number[]) => list.map((value, p) => value * size[p]!)
  const start = scaled(values)
  let asked: number[] = []
  levenbergMarquardt(
    { x: [...left.keys()], y: left },
    (given) => {
      asked = [...given]
      const here = asked.every((value, p) => value === start[p])
      return () => (here ? 0 : Number.NaN)
    },
    {
      initialValues: start,
      minValues: scaled(least),
      maxValues: scaled(most),
      damping,
      maxIterations: 1,
      errorTolerance: 0,
      jacobianFunction: () => (k) => size.map((each, p) => -slopes.get(k, p) / each),
    },
  )
  return asked.map((value, p) => Math.min(most[p]!, Math.max(least[p]!, value / size[p]!)))
}

/** Slopes without those of values that stand at an end of their range and could only gain beyond it: they would bend every step. */
function inward({ values, left, slopes, least, most }: StepFrom): Matrix {
  const inner = slopes.clone()
  for (const [p, value] of values.entries()) {
    const rising = left.reduce((sum, each, k) => sum + slopes.get(k, p) * each, 0)
    const outward = (value <= least[p]! && rising > 0) || (value >= most[p]! && rising < 0)
    if (outward) for (let k = 0; k < inner.rows; k++) inner.set(k, p, 0)
  }
  return inner
}
