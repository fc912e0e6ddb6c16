/** The words of a lesson: placeholders become figures in the units of the page, `**term**` a term, `*F_th*` a symbol. */
import { Fragment, useMemo } from 'react'
import { type LessonFigure, lessonText } from '../../../sim/index.ts'
import { useView } from '../../store/view.ts'

export type Figures = Record<string, LessonFigure>

const MARKS = /(\*\*[^*]+\*\*|\*[^*]+\*)/

export function Prose({ text, figures }: { text: string; figures: Figures }) {
  const units = useView((state) => state.units)
  const pieces = useMemo(() => lessonText(text, figures, units).split(MARKS), [text, figures, units])
  return pieces.map((piece, place) => {
    if (piece.startsWith('**')) return <dfn key={place}>{piece.slice(2, -2)}</dfn>
    if (!piece.startsWith('*')) return <Fragment key={place}>{piece}</Fragment>
    const [base, below] = piece.slice(1, -1).split('_')
    return (
      <Fragment key={place}>
        <i>{base}</i>
        {below && <sub>{below}</sub>}
      </Fragment>
    )
  })
}

export function Paragraphs({ texts, figures }: { texts: string[]; figures: Figures }) {
  return texts.map((text) => (
    <p key={text}>
      <Prose text={text} figures={figures} />
    </p>
  ))
}
