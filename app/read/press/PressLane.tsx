/** One lane of a press: ram, bushing and bore by one strategy, its verdict, force and depth at the instant of the cursor. */
import { Press } from '../../picture/press/Press.tsx'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import { VerdictWord } from '../result/VerdictWord.tsx'
import { noResult, spokenVerdict } from '../result/words.ts'
import { nameOf } from '../stage/moments.ts'
import '../stage/stage.css'
import { quantityUnit } from '../units.ts'
import { rowAt, tracesOf } from './traces.ts'

interface LaneProps {
  run: RunView
  /** Force for which an arrow is as long as it may be [N]. */
  mostForce: number
  width: number
  height: number
}

/** What a strategy does to the bushing, its verdict, force and depth at the instant of the cursor. */
export function PressLane({ run, mostForce, width, height }: LaneProps) {
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const label = nameOf(run)
  const traces = run.traces && run.rows > 0 ? tracesOf(run.traces) : null
  const row = traces ? rowAt(traces.time, time) : 0
  const at = (name: 'travel' | 'depth' | 'force' | 'shoulderForce') => traces?.[name][row] ?? 0
  const frame = { travel: at('travel'), depth: at('depth'), force: at('force'), shoulder: at('shoulderForce') }
  const force = quantityUnit('force', units)
  const length = quantityUnit('length', units)
  const none = noResult(run)
  return (
    <figure className="lane" data-strategy={run.strategy} style={{ width }}>
      <figcaption className="lane-head">
        <span className="lane-name">{label}</span>
        <strong className="lane-word">
          {run.result ? <VerdictWord result={run.result} /> : (none?.word ?? 'Pressing …')}
        </strong>
        <span className="lane-force">
          {formatFigure(force.toShown(frame.force))} <span className="unit">{force.symbol}</span>
        </span>
      </figcaption>
      <Press
        scenario={run.scenario}
        label={`${label}${run.result ? `, ${spokenVerdict(run.result)}` : ''}: ram, bushing and bore in section.`}
        {...{ frame, width, height, mostForce }}
      />
      <div className="lane-foot">
        <p>{none?.why ?? `Depth ${formatFigure(length.toShown(Math.max(0, frame.depth)))} ${length.symbol}`}</p>
      </div>
    </figure>
  )
}
