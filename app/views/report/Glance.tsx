import { type Scenario, type StrategyId, whySentence, wordingOf } from '../../../sim/index.ts'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { reasonText } from '../../read/result/words.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Column } from './columns.ts'
import { ForceTrace } from './ForceTrace.tsx'
import { topForce } from './trace.ts'
import type { Told } from './useCauses.ts'

interface Props {
  scenario: Scenario
  columns: Column[]
  told: Partial<Record<StrategyId, Told>>
  units: UnitSystem
}

/** One column a strategy: verdict, reason, force trace, and what made the force in a sentence. */
export function Glance({ scenario, columns, told, units }: Props) {
  const top = topForce(
    scenario,
    columns.flatMap(({ run }) => run ?? []),
  )
  return (
    <div className="report-glance">
      {columns.map((column) => (
        <section key={column.strategy} aria-label={column.label}>
          <h2>{column.label}</h2>
          <p className="report-verdict">
            {column.run?.result ? <VerdictWord result={column.run.result} /> : waitingText(column)}
          </p>
          <p className="report-reason">{reasonOf(column, units)}</p>
          <ForceTrace scenario={scenario} run={column.run} top={top} units={units} />
          <p className="report-why">{whyText(column, told[column.strategy], units)}</p>
        </section>
      ))}
    </div>
  )
}

const waitingText = ({ run }: Column) => (run?.status === 'failed' ? 'No result' : 'Closing …')

function reasonOf({ run }: Column, units: UnitSystem): string {
  if (run?.status === 'failed') return `The simulation could not be run: ${run.message}`
  return run ? reasonText(run, units) : ''
}

function whyText({ run }: Column, told: Told | undefined, units: UnitSystem): string {
  if (run?.status === 'failed') return ''
  if (told?.failure) return `What made the force could not be worked out: ${told.failure}`
  if (!run || !told?.why) return 'What made the force is being worked out.'
  return whySentence(run.scenario, told.why, wordingOf(units))
}
