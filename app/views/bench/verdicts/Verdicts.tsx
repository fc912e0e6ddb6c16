import { useEffect, useState } from 'react'
import { STRATEGIES } from '../../../../sim/index.ts'
import { StrategyChooser } from '../../../read/result/StrategyChooser.tsx'
import { spokenVerdict } from '../../../read/result/words.ts'
import { useResults } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import { Pins } from '../pins/Pins.tsx'
import { type CardFigures, VerdictCard } from './VerdictCard.tsx'
import './verdicts.css'

/** One card a strategy, then the pinned runs. */
export function Verdicts(figures: CardFigures) {
  const shown = useView((state) => state.shown)
  return (
    <section className="verdicts" data-sheet aria-label="Verdicts">
      {STRATEGIES.filter(({ id }) => shown.includes(id)).map(({ id }) => (
        <VerdictCard key={id} strategy={id} {...figures} />
      ))}
      <StrategyChooser />
      <Pins />
      <Spoken />
    </section>
  )
}

/** Rest after which the verdicts are read out [ms], so that a drag is not. */
const REST = 700

/** The verdicts for those who hear the page. */
function Spoken() {
  const runs = useResults((state) => state.runs)
  const beside = useResults((state) => state.beside)
  const [text, setText] = useState('')
  useEffect(() => {
    const timer = setTimeout(() => {
      const said = STRATEGIES.flatMap(({ id, label }) => {
        return [runs[id], beside[id]].flatMap((run) =>
          run?.result ? [`${label}${run.axis ? ` on ${run.axis}` : ''}: ${spokenVerdict(run.result)}.`] : [],
        )
      })
      setText(said.join(' '))
    }, REST)
    return () => clearTimeout(timer)
  }, [runs, beside])
  return (
    <p role="status" className="sr-only">
      {text}
    </p>
  )
}
