import { useEffect, useState } from 'react'
import { STRATEGIES } from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import { type Slide, slideAt } from './slides.ts'
import { standingAt } from './standing.ts'

/** Rest after which it is read out [ms], so that a play or a drag is not. */
const REST = 400

/** Slide, instant and how every run stands by then, for those who hear the page. */
export function Spoken({ slide, slides, runs }: { slide: number; slides: Slide[]; runs: RunView[] }) {
  const time = useView((state) => (state.playing ? null : state.time))
  const [text, setText] = useState('')
  useEffect(() => {
    const timer = setTimeout(() => setText(said(slide, slides, runs, time)), REST)
    return () => clearTimeout(timer)
  }, [slide, slides, runs, time])
  return (
    <p role="status" className="sr-only">
      {text}
    </p>
  )
}

function said(slide: number, slides: Slide[], runs: RunView[], time: number | null): string {
  const { id, title } = slideAt(slide, slides)
  const place = `Slide ${slide + 1} of ${slides.length}: ${title}.`
  if (id !== 'run') return place
  if (time === null) return `${place} Playing.`
  const words = runs.map((run) => {
    const label = STRATEGIES.find(({ id }) => id === run.strategy)?.label
    return `${label}${run.axis === undefined ? '' : ` on ${run.axis}`} ${standingAt(run, time).word.toLowerCase()}`
  })
  return `${place} At ${formatFigure(time)} s: ${words.join(', ')}.`
}
