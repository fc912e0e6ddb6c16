/** All that a report speaks of. */
import type { LoopsResult, Recommendation, Scenario, StrategyId } from '../../../sim/index.ts'
import type { Answered } from '../../read/study/useKept.ts'
import type { UnitSystem } from '../../read/units.ts'
import { type Column, ended } from './columns.ts'
import type { Told } from './useCauses.ts'

export interface Matter {
  scenario: Scenario
  /** What the present scenario was changed from. */
  base: Scenario
  units: UnitSystem
  columns: Column[]
  told: Partial<Record<StrategyId, Told>>
  loops: Answered<LoopsResult>
  recommendation: Recommendation
  /** The column of the strategy that is handed over. */
  handed: Column | undefined
}

/** What is still being worked out; empty once the report is complete. */
export function missingFrom({ columns, told, loops }: Matter): string[] {
  return [
    columns.every(ended) ? '' : 'grips',
    columns.every(({ strategy, run }) => run?.status === 'failed' || told[strategy]) ? '' : 'causes',
    loops.busy ? 'margins' : '',
    columns.every(hasStepError) ? '' : 'step errors',
  ].filter((each) => each !== '')
}

/** Or will never have one. */
function hasStepError({ run }: Column): boolean {
  if (!run?.result) return run?.status === 'failed'
  const { stepError, metrics, events } = run.result
  return stepError !== null || events.unstable !== null || !metrics.peakForce || !metrics.settledForce
}
