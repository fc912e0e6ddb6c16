/** How every sentence writes its quantities: three significant digits, in the units that whoever asks has chosen. All take SI. */
import { DIGITS, formatFigure, formatPlain, withUnit } from './figure.ts'
import { QUANTITIES, type Quantity, type ShownUnit, shownUnit, type UnitSource, type UnitSystem } from './units.ts'

export type Wording = Readonly<Record<Quantity, (si: number) => string>> & {
  readonly system: UnitSystem
  /** A frequency [rad/s] in the unit of the loops, with Hz in brackets. */
  swing(omega: number): string
  /** What somebody has typed, with a digit more than what is reckoned: a limit of 12.15 mm is not one of 12.2 mm. */
  typed(quantity: Quantity, si: number): string
  /** Figure and unit of any quantity; `exponent` is n of the contact law, for stiffness of the form N/m^n. */
  of(source: UnitSource, si: number, exponent?: number): string
}

/** A figure without unit, or one whose unit is the same for everybody. */
export const figure = (value: number) => formatPlain(value, DIGITS)
export const degrees = (value: number) => withUnit(figure(value), '°')
export const decibels = (value: number) => withUnit(figure(value), 'dB')

const say = ({ symbol, toShown }: ShownUnit, si: number) => withUnit(figure(toShown(si)), symbol)

function wordingIn(system: UnitSystem): Wording {
  const quantities = Object.entries<UnitSource>(QUANTITIES).map(([name, source]) => {
    const unit = shownUnit(source, system)
    return [name, (si: number) => say(unit, si)]
  })
  return {
    ...(Object.fromEntries(quantities) as Record<Quantity, (si: number) => string>),
    // Instants stand in a column with others, so that their zeros are kept.
    time: (seconds) => withUnit(formatFigure(seconds), 's'),
    system,
    swing: (omega) => `${withUnit(figure(omega), 'rad/s')} (${withUnit(figure(omega / (2 * Math.PI)), 'Hz')})`,
    typed: (quantity, si) => {
      const { symbol, toShown } = shownUnit(QUANTITIES[quantity], system)
      return withUnit(formatPlain(toShown(si), DIGITS + 1), symbol)
    },
    of: (source, si, exponent) => say(shownUnit(source, system, exponent), si),
  }
}

const WORDINGS: Record<UnitSystem, Wording> = { si: wordingIn('si'), us: wordingIn('us') }

export const wordingOf = (system: UnitSystem): Wording => WORDINGS[system]
