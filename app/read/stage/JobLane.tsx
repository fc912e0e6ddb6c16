/** The frame of a lane of any job but gripping: name, verdict, the effort at the instant of the cursor, and a line under the picture. */
import type { ReactNode } from 'react'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import { VerdictWord } from '../result/VerdictWord.tsx'
import { noResult, spokenVerdict, underWay } from '../result/words.ts'
import { type Quantity, quantityUnit } from '../units.ts'
import { nameOf } from './moments.ts'
import './stage.css'

/** What a lane is told; `runs` are all that stand side by side, for which the scale of the arrows is the same. */
export interface JobLaneProps {
  run: RunView
  runs: RunView[]
  width: number
  height: number
}

interface FrameProps {
  run: RunView
  width: number
  /** Effort at the instant [SI], and what kind of quantity it is. */
  effort: number
  quantity: Quantity
  foot: string
  /** Draws the picture under the label that it is given; `shows` names what is to be seen. */
  shows: string
  children(label: string): ReactNode
}

export function JobLane({ run, width, effort, quantity, foot, shows, children }: FrameProps) {
  const units = useView((state) => state.units)
  const label = nameOf(run)
  const { symbol, toShown } = quantityUnit(quantity, units)
  const none = noResult(run)
  return (
    <figure className="lane" data-strategy={run.strategy} style={{ width }}>
      <figcaption className="lane-head">
        <span className="lane-name">{label}</span>
        <strong className="lane-word">
          {run.result ? <VerdictWord result={run.result} /> : (none?.word ?? underWay(run.scenario))}
        </strong>
        <span className="lane-force">
          {formatFigure(toShown(effort))} <span className="unit">{symbol}</span>
        </span>
      </figcaption>
      {children(`${label}${run.result ? `, ${spokenVerdict(run.result)}` : ''}: ${shows}.`)}
      <div className="lane-foot">
        <p>{none?.why ?? foot}</p>
      </div>
    </figure>
  )
}
