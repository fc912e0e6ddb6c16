import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import type { Matrix } from 'ml-matrix'

export interface StepFrom {
  values: readonly number[]
  /** What is left there, over its scale, and its slopes by each value, a column a value. */
  left: Float64Array
  slopes: Matrix
  least: readonly number[]
  most: readonly number[]
  damping: number
}

/**
 * Where Levenberg and Marquardt would go next, by a library, in units in which all values are felt alike. It asks for the point before
 * it judges it, and there it is left: whether a step is taken is for whoever asked, who may have to wait for the point.
 */
export function stepFrom({ values, left, slopes, least, most, damping }: StepFrom): number[] {
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
