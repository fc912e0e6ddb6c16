/** The figures of a run that cards and tables of the bench show, in their order. */
import { jobOf, METRICS, type Metric, type Scenario } from '../../../sim/index.ts'

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

/** Those that tables of runs of a job show: of a grip the same, of another job its headlines and what else its studies tell first. */
export function tableFigures(scenario: Scenario): Figure[] {
  if (scenario.job === 'grip') return FIGURES
  const { figures, headlines, study } = jobOf(scenario)
  const ids: readonly string[] = [...headlines, ...study.told, 'settledCurrent', 'windingTemperature', 'stepError']
  return (figures as unknown as Figure[]).filter(({ id }) => ids.includes(id))
}
