import {
  type Recommendation,
  recommendedName,
  recommendSentences,
  type Scenario,
  wordingOf,
} from '../../../sim/index.ts'
import { frameAt } from '../../picture/grip/frameAt.ts'
import type { PictureScales } from '../../picture/grip/scales.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { Picture } from '../../read/stage/Lane.tsx'
import { nameOf } from '../../read/stage/moments.ts'
import { scalesOf } from '../../read/stage/scales.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { formatFigure } from '../../ui/format.ts'
import type { Column } from './columns.ts'

interface Props {
  scenario: Scenario
  /** The strategy that is handed over; undefined: none. */
  column: Column | undefined
  columns: Column[]
  recommendation: Recommendation
  units: UnitSystem
}

/** Which strategy is handed over and why, beside the gripper as it holds the part. */
export function HandedOver({ scenario, column, columns, recommendation, units }: Props) {
  const complete = columns.every(({ run }) => run && run.status !== 'running')
  const own = column !== undefined && column.strategy !== recommendation.best?.strategy
  return (
    <div className="report-handed">
      <section aria-labelledby="report-handed">
        <h2 id="report-handed">{own ? 'Handed over' : 'Recommended'}</h2>
        <p className="report-verdict">
          {complete ? (own ? column.label : recommendedName(recommendation)) : 'Closing …'}
        </p>
        {own && (
          <p>
            Chosen by whoever prepared this report. The figures recommend:{' '}
            {recommendedName(recommendation).toLowerCase()}.
          </p>
        )}
        {complete && (
          <ul className="report-list">
            {recommendSentences(recommendation, wordingOf(units)).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </section>
      <Holdings scenario={scenario} column={column ?? columns[0]} />
    </div>
  )
}

/** Size that the picture is drawn for; the sheet scales it [px]. */
const SIZE = { width: 440, height: 170 }

/** Beside another [px]. */
const HALF = { width: 290, height: 170 }

/** The gripper as it holds the part; with either axis, where there are two. */
function Holdings({ scenario, column }: { scenario: Scenario; column: Column | undefined }) {
  const runs = [column?.run, column?.beside].flatMap((run) => (run && run.rows > 0 ? [run] : []))
  if (!column || runs.length === 0) return null
  const time = settledBy(scenario)
  return (
    <div className="report-pictures">
      {runs.map((run) => (
        <Holding
          key={nameOf(run)}
          run={run}
          label={column.label}
          time={time}
          scales={scalesOf(runs)}
          alone={!column.beside}
        />
      ))}
    </div>
  )
}

interface HoldingProps {
  run: RunView
  /** Of its strategy. */
  label: string
  time: number
  scales: PictureScales | undefined
  alone: boolean
}

function Holding({ run, label, time, scales, alone }: HoldingProps) {
  const frame = frameAt(run, time)
  const instant = `${label.toLowerCase()} at ${formatFigure(frame.time)} s`
  const size = alone ? SIZE : HALF
  return (
    <figure className="report-picture">
      <Picture
        frame={frame}
        scenario={run.scenario}
        scales={scales}
        label={`The gripper in section, ${instant}${run.axis === undefined ? '' : `, ${run.axis}`}.`}
        names={false}
        {...size}
      />
      <figcaption>
        {run.axis !== undefined && <Ring />}
        {alone ? `${label} at ${formatFigure(frame.time)} s, in section` : (run.axis ?? axisTitle(run.scenario))}
      </figcaption>
    </figure>
  )
}

/** The last instant before the arm moves or the power goes [s]. */
function settledBy({ arm, events, run }: Scenario): number {
  const starts = [...arm.moves.map(({ start }) => start), events.powerLoss?.time ?? run.duration, run.duration]
  return Math.min(...starts)
}
