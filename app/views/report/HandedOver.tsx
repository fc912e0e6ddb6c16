import {
  type Recommendation,
  recommendedName,
  recommendSentences,
  type Scenario,
  wordingOf,
} from '../../../sim/index.ts'
import { frameAt } from '../../picture/grip/frameAt.ts'
import { Picture } from '../../read/stage/Lane.tsx'
import { scalesOf } from '../../read/stage/scales.ts'
import type { UnitSystem } from '../../read/units.ts'
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
      <Holding scenario={scenario} column={column ?? columns[0]} />
    </div>
  )
}

/** Size that the picture is drawn for; the sheet scales it [px]. */
const SIZE = { width: 440, height: 170 }

function Holding({ scenario, column }: { scenario: Scenario; column: Column | undefined }) {
  const run = column?.run
  if (!run || run.rows === 0) return null
  const time = settledBy(scenario)
  const frame = frameAt(run, time)
  const label = `The gripper in section, ${run.strategy === column.strategy ? column.label.toLowerCase() : ''} at ${formatFigure(frame.time)} s.`
  return (
    <figure className="report-picture">
      <Picture frame={frame} scenario={scenario} scales={scalesOf([run])} label={label} names={false} {...SIZE} />
      <figcaption>
        {column.label} at {formatFigure(frame.time)} s, in section
      </figcaption>
    </figure>
  )
}

/** The last instant before the arm moves or the power goes [s]. */
function settledBy({ arm, events, run }: Scenario): number {
  const starts = [...arm.moves.map(({ start }) => start), events.powerLoss?.time ?? run.duration, run.duration]
  return Math.min(...starts)
}
