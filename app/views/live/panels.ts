/** The traces that roll. */
import { jobOf, jobWords, type Scenario, type StrategyId, strategyOf } from '../../../sim/index.ts'
import { effortQuantity, type Quantity } from '../../read/units.ts'
import type { ChartBand } from '../../ui/Chart.tsx'
import { lookOf } from './jobs.ts'

export interface Panel {
  label: string
  quantity: Quantity
  height: number
  /** The channel that matters, and a thin one behind it. That has no name at its end, where the two would keep changing places. */
  channel: string
  behind: string
  /** Least span of its values [SI]: what the job asks of it, so that the noise of a plant at rest looks as small as it is. */
  calm(scenario: Scenario, strategy: StrategyId): number
  /** It shows the effort, with its window and what happens. */
  main?: boolean
}

/** Share of the limit that the servo keeps. */
const CALM_CURRENT = 0.2

/** Effort, current and speed of the output, and what else the job has. */
export function panelsOf(scenario: Pick<Scenario, 'job'>): Panel[] {
  const { effort, speed } = lookOf(scenario).panels
  const { output } = jobOf(scenario)
  return [
    {
      label: jobWords(scenario).live.effort.label,
      quantity: effortQuantity(scenario),
      height: 150,
      ...effort,
      calm: (of, strategy) => strategyOf(strategy).forceOf(of).expected,
      main: true,
    },
    {
      label: 'Current',
      quantity: 'current',
      height: 80,
      channel: 'current',
      behind: 'command',
      calm: ({ servo }) => CALM_CURRENT * servo.currentLimit,
    },
    {
      label: `${output.label[0]!.toUpperCase()}${output.label.slice(1)} speed`,
      quantity: output.travel === 'rad' ? 'turningSpeed' : 'speed',
      height: 96,
      channel: 'speed',
      behind: 'wantedSpeed',
      calm: ({ approach }) => approach.speed,
      ...speed,
    },
  ]
}

/** The window of the effort; none where it is empty. */
export function bandOf(scenario: Scenario): ChartBand[] {
  const { least, most } = jobOf(scenario).study.window(scenario)
  if ((least === null && most === null) || (least !== null && most !== null && least >= most)) return []
  const { study, live } = jobWords(scenario)
  const { below } = live
  return [{ from: least, to: most, label: `${study.effort} window`, hatch: true, below, above: live.above(scenario) }]
}
