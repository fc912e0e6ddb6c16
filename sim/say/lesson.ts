/** Figures of a lesson in the units of the reader, and texts with them in the place of their names. */
import type { LessonFigure } from '../ask/lesson/figures.ts'
import { formatFigure, formatPlain, withUnit } from './figure.ts'
import { worth } from './metric.ts'
import { shownUnit, type UnitSystem } from './units.ts'

/** Digits of what is given: as it was typed, or enough to work with once it is converted. */
const GIVEN_DIGITS: Record<UnitSystem, number> = { si: 6, us: 4 }

/** What stands for a figure that a run does not have. */
const NONE = 'none'

export function lessonFigureText({ value, exact, exponent, ...source }: LessonFigure, system: UnitSystem): string {
  if (value === null) return NONE
  if (typeof value === 'string') return value
  const { symbol, toShown } = shownUnit(source, system, exponent)
  const { value: rounded, digits } = worth(source, value)
  const text = exact
    ? formatPlain(toShown(value), GIVEN_DIGITS[system])
    : formatFigure(toShown(rounded), digits || undefined)
  return symbol === '1/s' ? `${text} times a second` : withUnit(text, symbol)
}

/** The text with every placeholder filled; one without a figure is left as it stands. */
export const lessonText = (text: string, figures: Readonly<Record<string, LessonFigure>>, system: UnitSystem): string =>
  text.replace(/\{([^{}]*)\}/g, (whole, name: string) => {
    const figure = figures[name]
    return figure ? lessonFigureText(figure, system) : whole
  })
