/** What a table of axes can be narrowed to. */
import { type AxisReport, jobOf, jobWords, type RunResult, type Scenario } from '../../../sim/index.ts'

export interface Filter {
  id: string
  label: string
  passes(report: AxisReport): boolean
}

const everyRun = (report: AxisReport, passes: (result: RunResult) => boolean) =>
  report.strategies.every(({ result }) => result !== null && passes(result))

export function filtersOf(scenario: Pick<Scenario, 'job'>): Filter[] {
  const { well } = jobOf(scenario)
  const { axes } = jobWords(scenario)
  return [
    {
      id: 'well',
      label: axes.well,
      passes: (report) => everyRun(report, ({ verdict }) => verdict === well),
    },
    { id: 'back-drivable', label: 'a back-drivable drive', passes: ({ backDrivable }) => backDrivable },
    { id: 'power-loss', label: axes.kept, passes: ({ powerLoss }) => powerLoss !== 'lets go' },
    {
      id: 'rating',
      label: 'current within the continuous rating',
      passes: (report) =>
        everyRun(report, ({ overloads }) => overloads.every(({ rating }) => rating !== 'continuousCurrent')),
    },
  ]
}
