import { type Scenario, type StrategyId, studyWords, whySentence, wordingOf } from '../../../sim/index.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { noResult, reasonText, underWay } from '../../read/result/words.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Column } from './columns.ts'
import type { SecondAxis } from './matter.ts'
import { Trace } from './Trace.tsx'
import { timeGround } from './trace.ts'
import type { Told } from './useCauses.ts'

interface Props {
  scenario: Scenario
  columns: Column[]
  /** The axis beside, where there is one. */
  beside?: SecondAxis | null
  told: Partial<Record<StrategyId, Told>>
  units: UnitSystem
}

/** One column a strategy: verdict and reason on each axis, trace of the effort, and what made it in a sentence. */
export function Glance({ scenario, columns, beside, told, units }: Props) {
  const runs = columns.flatMap((column) => [column.run ?? [], column.beside ?? []].flat())
  const ground = timeGround(scenario, runs, units)
  return (
    <div className="report-glance" data-beside={Boolean(beside)}>
      {columns.map((column) => (
        <section key={column.strategy} aria-label={column.label}>
          <h2>{column.label}</h2>
          <p className="report-verdict">
            {column.run?.result ? <VerdictWord result={column.run.result} /> : waitingText(scenario, column)}
          </p>
          <p className="report-reason">{reasonOf(column, units)}</p>
          {beside && (
            <p className="report-beside">
              <Ring />
              <b>
                {column.beside?.result ? (
                  <VerdictWord result={column.beside.result} />
                ) : (
                  waitingText(scenario, { run: column.beside })
                )}
              </b>{' '}
              on {beside.title}. {reasonOf({ run: column.beside }, units)}
            </p>
          )}
          <Trace scenario={scenario} run={column.run} beside={column.beside} ground={ground} units={units} />
          <p className="report-why">{whyText(scenario, column, told[column.strategy], units)}</p>
        </section>
      ))}
    </div>
  )
}

const waitingText = (scenario: Scenario, { run }: Pick<Column, 'run'>) =>
  (run && noResult(run)?.word) ?? underWay(scenario)

function reasonOf({ run }: Pick<Column, 'run'>, units: UnitSystem): string {
  return run ? (noResult(run)?.why ?? reasonText(run, units)) : ''
}

function whyText(scenario: Scenario, { run }: Column, told: Told | undefined, units: UnitSystem): string {
  const { effort } = studyWords(scenario.job)
  if (run?.status === 'failed') return ''
  if (told?.failure) return `What made the ${effort} could not be worked out: ${told.failure}`
  if (!run || !told?.why) return `What made the ${effort} is being worked out.`
  return whySentence(run.scenario, told.why, wordingOf(units))
}
