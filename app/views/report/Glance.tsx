import { type Scenario, type StrategyId, whySentence, wordingOf } from '../../../sim/index.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { noResult, reasonText } from '../../read/result/words.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Column } from './columns.ts'
import { ForceTrace } from './ForceTrace.tsx'
import type { SecondAxis } from './matter.ts'
import { topForce } from './trace.ts'
import type { Told } from './useCauses.ts'

interface Props {
  scenario: Scenario
  columns: Column[]
  /** The axis beside, where there is one. */
  beside?: SecondAxis | null
  told: Partial<Record<StrategyId, Told>>
  units: UnitSystem
}

/** One column a strategy: verdict and reason on each axis, force trace, and what made the force in a sentence. */
export function Glance({ scenario, columns, beside, told, units }: Props) {
  const top = topForce(
    scenario,
    columns.flatMap((column) => [column.run ?? [], column.beside ?? []].flat()),
  )
  return (
    <div className="report-glance" data-beside={Boolean(beside)}>
      {columns.map((column) => (
        <section key={column.strategy} aria-label={column.label}>
          <h2>{column.label}</h2>
          <p className="report-verdict">
            {column.run?.result ? <VerdictWord result={column.run.result} /> : waitingText(column)}
          </p>
          <p className="report-reason">{reasonOf(column, units)}</p>
          {beside && (
            <p className="report-beside">
              <Ring />
              <b>
                {column.beside?.result ? (
                  <VerdictWord result={column.beside.result} />
                ) : (
                  waitingText({ run: column.beside })
                )}
              </b>{' '}
              on {beside.title}. {reasonOf({ run: column.beside }, units)}
            </p>
          )}
          <ForceTrace scenario={scenario} run={column.run} beside={column.beside} top={top} units={units} />
          <p className="report-why">{whyText(column, told[column.strategy], units)}</p>
        </section>
      ))}
    </div>
  )
}

const waitingText = ({ run }: Pick<Column, 'run'>) => (run && noResult(run)?.word) ?? 'Closing …'

function reasonOf({ run }: Pick<Column, 'run'>, units: UnitSystem): string {
  return run ? (noResult(run)?.why ?? reasonText(run, units)) : ''
}

function whyText({ run }: Column, told: Told | undefined, units: UnitSystem): string {
  if (run?.status === 'failed') return ''
  if (told?.failure) return `What made the force could not be worked out: ${told.failure}`
  if (!run || !told?.why) return 'What made the force is being worked out.'
  return whySentence(run.scenario, told.why, wordingOf(units))
}
