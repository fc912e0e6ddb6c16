/** The play as a customer sees it: the strategies side by side, a word each, and the effort against the window. Also what a clip is made of. */
import type { ReactNode } from 'react'
import { type Scenario, shownAs } from '../../../sim/index.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { effortAt } from '../../read/effort/effort.ts'
import { RunPicture } from '../../read/picture/RunPicture.tsx'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { nameOf } from '../../read/stage/moments.ts'
import { paceText } from '../../read/stage/pace.ts'
import { effortUnit, type UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { formatFigure, NO_FIGURE } from '../../ui/format.ts'
import type { TimeLens } from '../../ui/timeLens.ts'
import { EffortStory } from './EffortStory.tsx'
import { standingAt } from './standing.ts'
import { ONE_COLUMN } from './useSize.ts'

export interface BoardProps {
  runs: RunView[]
  scenario: Scenario
  /** How the play is slowed, and places on the axis of time. */
  lens: TimeLens
  axis: TimeLens
  units: UnitSystem
  /** The instant shown [s]. */
  time: number
  width: number
  height: number
  /** Size of its type [px]. */
  text: number
  /** Makes the effort over time something to drag. */
  bar?: (story: ReactNode) => ReactNode
}

/** Heights in lines of type: what stands over a picture, the clock, the story, gaps. */
const HEAD = 3.6
const CLOCK = 1.9
const STORY = 10.5
const GAP = 0.8
/** Share of the height that the story takes at most. */
const STORY_SHARE = 0.34
/** Words in a picture are made for type of this size [px]. */
const PICTURE_TEXT = 13.5

export function Board({ bar = (story) => story, ...props }: BoardProps) {
  const { runs, scenario, lens, axis, units, time, width, height, text } = props
  const stacked = width < ONE_COLUMN
  const story = stacked ? STORY * text : Math.min(STORY * text, STORY_SHARE * height)
  const columns = stacked ? 1 : Math.max(1, runs.length)
  const lane = (width - (columns - 1) * GAP * text) / columns
  const picture = stacked ? 0.52 * lane : height - story - (HEAD + CLOCK + 2 * GAP) * text
  return (
    <div className="board" style={{ width, fontSize: text, gap: GAP * text }}>
      <div
        className="board-lanes"
        style={{ gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))`, gap: GAP * text }}
      >
        {runs.map((run) => (
          <BoardLane key={nameOf(run)} run={run} {...props} width={lane} height={Math.max(120, picture)} />
        ))}
      </div>
      <div className="board-story">
        <p className="board-clock" style={{ height: CLOCK * text }}>
          <span>
            {shownAs(scenario).effort} <span className="unit">{effortUnit(scenario, units).symbol}</span>
          </span>
          <span className="board-time">
            {time.toFixed(3)} <span className="unit">s</span>
          </span>
          <span className="board-pace">{paceText(lens.rate(time))}</span>
        </p>
        {bar(
          <EffortStory
            runs={runs}
            scenario={scenario}
            lens={lens}
            axis={axis}
            units={units}
            width={width}
            height={story}
            text={0.85 * text}
            time={time}
          />,
        )}
      </div>
    </div>
  )
}

function BoardLane({ run, runs, units, time, width, height, text }: BoardProps & { run: RunView }) {
  const paired = runs.some(({ axis }) => axis !== undefined)
  const label = paired ? (run.axis ?? axisTitle(run.scenario)) : nameOf(run)
  const { word, decided } = standingAt(run, time)
  const { symbol, toShown } = effortUnit(run.scenario, units)
  const effort = effortAt(run, time)
  const scale = Math.max(1, text / PICTURE_TEXT)
  return (
    <section className="board-lane" data-strategy={run.strategy} data-decided={decided} aria-label={label}>
      <div className="board-head" style={{ height: HEAD * text }}>
        <p className="board-name">
          {run.axis !== undefined && <Ring />}
          {label}
        </p>
        <p className="board-word">{decided && run.result ? <VerdictWord result={run.result} /> : word}</p>
        <p className="board-effort">
          {effort === null ? NO_FIGURE : formatFigure(toShown(effort))} <span className="unit">{symbol}</span>
        </p>
      </div>
      <div className="board-picture" style={{ width, height }}>
        <RunPicture
          label={`${label}, ${word.toLowerCase()}: ${shownAs(run.scenario).picture}.`}
          width={width / scale}
          height={height / scale}
          {...{ run, runs, time }}
        />
      </div>
    </section>
  )
}
