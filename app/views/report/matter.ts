/** All that a report speaks of. */
import {
  type LoopsResult,
  type Recommendation,
  type Scenario,
  type StrategyId,
  studyWords,
} from '../../../sim/index.ts'
import type { Answers } from '../../read/spread/useAnswers.ts'
import type { Answered } from '../../read/study/useKept.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Fitting } from '../../store/fitted.ts'
import { type Column, ended } from './columns.ts'
import type { Told } from './useCauses.ts'

export interface SecondAxis {
  title: string
  scenario: Scenario
}

export interface Matter {
  scenario: Scenario
  /** What the present scenario was changed from. */
  base: Scenario
  units: UnitSystem
  columns: Column[]
  /** What the axis beside is called, and the scenario with it; null: there is none that can be run. */
  beside: SecondAxis | null
  told: Partial<Record<StrategyId, Told>>
  /** A study of many parts, of what is on the bench; null: there is none at hand. */
  many: Answers | null
  loops: Answered<LoopsResult>
  /** What the axis was fitted to; null: to nothing that is known here. */
  fitting: Fitting | null
  recommendation: Recommendation
  /** The column of the strategy that is handed over. */
  handed: Column | undefined
}

/** What is still being worked out; empty once the report is complete. */
export function missingFrom({ scenario, columns, beside, told, loops }: Matter): string[] {
  const runs = columns.flatMap((column) => [{ run: column.run }, ...(beside ? [{ run: column.beside }] : [])])
  return [
    runs.every(ended) ? '' : studyWords(scenario.job).runs,
    columns.every(({ strategy, run }) => run?.status === 'failed' || told[strategy]) ? '' : 'causes',
    loops.busy ? 'margins' : '',
    runs.every(isChecked) ? '' : 'step errors',
  ].filter((each) => each !== '')
}

/** Held against a finer run, whether or not it has a step error. */
const isChecked = ({ run }: Pick<Column, 'run'>) =>
  run?.result ? run.result.stepErrors !== null : run?.status === 'failed'
