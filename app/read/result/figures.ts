/** The figures of a run that cards and tables of the bench show, in their order. */
import { METRICS, type Metric } from '../../../sim/index.ts'

export type Figure = Metric

const SHOWN: Metric['id'][] = [
  'peakForce',
  'settledForce',
  'damageMargin',
  'holdMargin',
  'gripTime',
  'slipDistance',
  'settledCurrent',
  'windingTemperature',
  'stepError',
]

export const FIGURES: Figure[] = SHOWN.map((id) => METRICS.find((metric) => metric.id === id)!)
