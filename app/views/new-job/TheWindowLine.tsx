import { edgesAsked, type JobId, NEW_JOBS, workAsked } from '../../../sim/index.ts'
import { windowWords } from '../../read/result/windowWords.ts'
import { effortUnit } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { useAnswers } from './draft.ts'

/** The window of what was told so far. */
export function TheWindowLine({ job, atRest }: { job: JobId; atRest: boolean }) {
  const answers = useAnswers(job)
  const units = useView((state) => state.units)
  const { window, windowComes, whole } = NEW_JOBS[job]
  const { least, most } = edgesAsked(job, answers)
  const { symbol, toShown } = effortUnit({ job }, units)
  const effort = (value: number) => withUnit(formatFigure(toShown(value)), symbol)
  const empty = least !== null && most !== null && least >= most
  const of = `${window.unit}${atRest ? ' with the arm at rest' : ''}`
  const work = whole(answers) ? workAsked(job, answers) : null
  const words = () => {
    if (empty) return `is empty: ${effort(least)} at least${of}, ${effort(most)} at most. ${window.empty}`
    if (work?.ok) return windowWords(work.scenario, units).sentence
    if (least === null && most === null) return windowComes
    if (least === null) return `up to ${effort(most!)}${window.unit}: ${window.above}.`
    if (most === null) return `from ${effort(least)}${of}: ${window.below}; ${window.noMost}.`
    return `${effort(least)} to ${effort(most)}${of}: ${window.below}, ${window.above}.`
  }
  return (
    <p className="new-job-window" role="status" data-empty={empty || undefined}>
      <strong>{window.title}</strong> {words()}
    </p>
  )
}
