/** The report's figures as text: the same list, rounding and digits as the command line's table. Knows no React. */
import { type Cause, type GripResult, jobOf, metricText, type Scenario, type Why } from '../../../sim/index.ts'
import type { Figure } from '../../read/result/figures.ts'
import { effortUnit, shownUnit, type UnitSystem } from '../../read/units.ts'
import { formatFigure } from '../../ui/format.ts'

export interface FigureRow {
  metric: Figure
  unit: string
  /** One a result; a result that is not there yet gives a dash. */
  cells: string[]
}

/** All figures of the job. */
export const figuresOf = (scenario: Scenario) => jobOf(scenario).figures as unknown as readonly Figure[]

export function figureRows(scenario: Scenario, results: (GripResult | null)[], units: UnitSystem): FigureRow[] {
  return figuresOf(scenario).map((metric) => ({
    metric,
    unit: shownUnit(metric, units).symbol,
    cells: results.map((result) => metricText(metric, result && metric.value(result), units).text),
  }))
}

export interface CauseRow {
  label: string
  /** Effort and its share of the figure, one a strategy; null: not taken apart. */
  cells: ({ force: string; share: string } | null)[]
}

/** The causes of all strategies in one order, and what they add up to. What rounds to nothing everywhere is left out. */
export function causeRows(
  scenario: Scenario,
  whys: (Why | null)[],
  units: UnitSystem,
): { rows: CauseRow[]; sums: string[] } {
  const unit = effortUnit(scenario, units)
  const text = ({ force: whole }: Why, cause: Cause | undefined) => ({
    force: fixed(unit.toShown(cause?.force ?? 0), unit.toShown(whole ?? 0)),
    share: whole ? `${fixed((100 * (cause?.force ?? 0)) / whole, 100)} %` : '',
  })
  const known = whys.map((why) => (why && why.force !== null ? why : null))
  const rows = inOneOrder(known.map((why) => why?.causes.map(({ label }) => label) ?? [])).map((label) => ({
    label,
    cells: known.map(
      (why) =>
        why &&
        text(
          why,
          why.causes.find((each) => each.label === label),
        ),
    ),
  }))
  return {
    rows: rows.filter(({ cells }) => cells.some((cell) => cell && cell.force !== '0')),
    sums: known.map((why) => formatFigure(why && unit.toShown(why.force ?? 0))),
  }
}

/** All names of lists that follow one common order, of which each may leave names out. */
function inOneOrder(lists: string[][]): string[] {
  const order: string[] = []
  for (const list of lists) {
    let at = 0
    for (const name of list) {
      const found = order.indexOf(name)
      if (found < 0) order.splice(at, 0, name)
      at = (found < 0 ? at : found) + 1
    }
  }
  return order
}

/** With the decimals that `whole` has at three significant digits, so that a column adds up. */
function fixed(value: number, whole: number): string {
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(whole) || 1)))
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? '0' : text.replace('-', '\u2212')
}
