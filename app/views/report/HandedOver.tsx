import {
  jobWords,
  type Recommendation,
  recommendedName,
  recommendSentences,
  type Scenario,
  STRATEGIES,
  shownAs,
  wordingOf,
} from '../../../sim/index.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { overOf } from '../../read/effort/over.ts'
import { RunPicture } from '../../read/picture/RunPicture.tsx'
import { underWay } from '../../read/result/words.ts'
import { nameOf } from '../../read/stage/moments.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import type { Column } from './columns.ts'
import { OverTrace } from './OverTrace.tsx'

interface Props {
  scenario: Scenario
  /** The strategy that is handed over; undefined: none. */
  column: Column | undefined
  columns: Column[]
  recommendation: Recommendation
  units: UnitSystem
}

/** Which strategy is handed over and why, beside the picture of what it has come to. */
export function HandedOver({ scenario, column, columns, recommendation, units }: Props) {
  const complete = columns.every(({ run }) => run && run.status !== 'running')
  const refusals = useRefusals(scenario)
  const own = column !== undefined && column.strategy !== recommendation.best?.strategy
  return (
    <div className="report-handed">
      <section aria-labelledby="report-handed">
        <h2 id="report-handed">{own ? 'Handed over' : 'Recommended'}</h2>
        <p className="report-verdict">
          {complete ? (own ? column.label : recommendedName(recommendation)) : underWay(scenario)}
        </p>
        {own && (
          <p>
            Chosen by whoever prepared this report. The figures recommend:{' '}
            {recommendedName(recommendation).toLowerCase()}.
          </p>
        )}
        {complete && (
          <ul className="report-list">
            {[...recommendSentences(scenario, recommendation, wordingOf(units)), ...refusals].map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </section>
      <Holdings scenario={scenario} column={column ?? columns[0]} units={units} />
    </div>
  )
}

/** Why strategies that are shown make no sense for the job. */
function useRefusals(scenario: Scenario): string[] {
  const shown = useView((state) => state.shown)
  const refuses = jobWords(scenario).refuses ?? {}
  return STRATEGIES.flatMap(({ id, label }) =>
    shown.includes(id) && refuses[id] ? [`${label} was not run. ${refuses[id]}`] : [],
  )
}

/** Size that the picture is drawn for; the sheet scales it [px]. */
const SIZE = { width: 440, height: 170 }

/** Beside another [px]. */
const HALF = { width: 290, height: 170 }

interface HoldingsProps {
  scenario: Scenario
  column: Column | undefined
  units: UnitSystem
}

/** The work as it has come to rest; with either axis, where there are two, else with the effort over what the job is told by. */
function Holdings({ scenario, column, units }: HoldingsProps) {
  const runs = [column?.run, column?.beside].flatMap((run) => (run && run.rows > 0 ? [run] : []))
  const over = overOf(scenario)
  if (!column || runs.length === 0) return null
  const time = settledBy(scenario)
  const alone = !column.beside
  return (
    <div className="report-pictures">
      {runs.map((run) => (
        <Holding
          key={nameOf(run)}
          label={column.label}
          size={alone && !over ? SIZE : HALF}
          {...{ run, runs, time, alone }}
        />
      ))}
      {alone && over && <OverTrace {...{ scenario, column, over, units }} />}
    </div>
  )
}

interface HoldingProps {
  run: RunView
  /** Of its strategy. */
  label: string
  time: number
  runs: RunView[]
  alone: boolean
  size: { width: number; height: number }
}

function Holding({ run, label, time, runs, alone, size }: HoldingProps) {
  const seen = Math.min(time, run.traces?.time[run.rows - 1] ?? time)
  const at = `${label} at ${formatFigure(seen)} s`
  const { picture } = shownAs(run.scenario)
  const whose = run.axis === undefined ? '' : `, ${run.axis}`
  return (
    <figure className="report-picture">
      <RunPicture
        label={`${picture.charAt(0).toUpperCase()}${picture.slice(1)}: ${at.charAt(0).toLowerCase()}${at.slice(1)}${whose}.`}
        {...{ run, runs, time, ...size }}
      />
      <figcaption>
        {run.axis !== undefined && <Ring />}
        {alone ? `${at}, in section` : (run.axis ?? axisTitle(run.scenario))}
      </figcaption>
    </figure>
  )
}

/** The last instant before the arm moves or the power goes [s]. */
function settledBy({ arm, events, run }: Scenario): number {
  const starts = [...arm.moves.map(({ start }) => start), events.powerLoss?.time ?? run.duration, run.duration]
  return Math.min(...starts)
}
