/** The words of a lesson: placeholders become figures in the units of the page, `**term**` a term, `*F_th*` a symbol. */
import { Fragment, useMemo } from 'react'
import { type LessonFigure, worth } from '../../../sim/index.ts'
import { shownUnit, type UnitSystem } from '../../read/units.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, formatPlain, withUnit } from '../../ui/format.ts'

export type Figures = Record<string, LessonFigure>

/** Digits of what is given: as it was typed, or enough to work with once it is converted. */
const DIGITS: Record<UnitSystem, number> = { si: 6, us: 4 }

/** What stands for a figure that a run does not have. */
const NONE = 'none'

export function figureWords({ value, exact, exponent, ...source }: LessonFigure, units: UnitSystem): string {
  if (value === null) return NONE
  if (typeof value === 'string') return value
  const { symbol, toShown } = shownUnit(source, units, exponent)
  const { value: rounded, digits } = worth(source, value)
  const text = exact ? formatPlain(toShown(value), DIGITS[units]) : formatFigure(toShown(rounded), digits || undefined)
  return symbol === '1/s' ? `${text} times a second` : withUnit(text, symbol.replace('^1.5', '¹·⁵'))
}

/** The text with every placeholder filled; one without a figure is left as it stands. */
export const fillText = (text: string, figures: Figures, units: UnitSystem): string =>
  text.replace(/\{([^{}]*)\}/g, (whole, name: string) => {
    const figure = figures[name]
    return figure ? figureWords(figure, units) : whole
  })

const MARKS = /(\*\*[^*]+\*\*|\*[^*]+\*)/

export function Prose({ text, figures }: { text: string; figures: Figures }) {
  const units = useView((state) => state.units)
  const pieces = useMemo(() => fillText(text, figures, units).split(MARKS), [text, figures, units])
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
