/** What a table of axes can be narrowed to. */
import type { AxisReport, GripResult } from '../../../sim/index.ts'

export interface Filter {
  id: string
  label: string
  passes(report: AxisReport): boolean
}

const everyRun = (report: AxisReport, passes: (result: GripResult) => boolean) =>
  report.strategies.every(({ result }) => result !== null && passes(result))

export const FILTERS: Filter[] = [
  {
    id: 'held',
    label: 'every strategy holding the part',
    passes: (report) => everyRun(report, ({ verdict }) => verdict === 'held'),
  },
  { id: 'back-drivable', label: 'a back-drivable drive', passes: ({ backDrivable }) => backDrivable },
  { id: 'power-loss', label: 'hold kept at power loss', passes: ({ powerLoss }) => powerLoss !== 'lets go' },
  {
    id: 'rating',
    label: 'current within the continuous rating',
    passes: (report) =>
      everyRun(report, ({ overloads }) => overloads.every(({ rating }) => rating !== 'continuousCurrent')),
  },
]
