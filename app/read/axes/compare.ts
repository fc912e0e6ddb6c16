/** Two axes under one part, figure by figure. Knows no React. */
import { type GripResult, recommend, recommendedName, type Scenario, wantedEffort } from '../../../sim/index.ts'
import { formatFigure, NO_FIGURE } from '../../ui/format.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { columnsOf, knownAxis } from './columns.ts'

/** An axis with the grips that were run on it. */
export interface RunAxis {
  scenario: Scenario
  results: (GripResult | null)[]
}

export interface ComparedRow {
  id: string
  label: string
  unit: string
  note: string
  /** Of the axis on the bench, and of the one beside it. */
  cells: [string, string]
}

/** By what one chooses an axis, in this order. */
const SHOWN = ['mass', 'impact', 'friction', 'continuous', 'peak', 'speed', 'asked', 'rating', 'winding']

export function comparedAxes(own: RunAxis, beside: RunAxis, units: UnitSystem): ComparedRow[] {
  const wanted = wantedEffort(own.scenario)
  const known = [own, beside].map(({ scenario, results }) => knownAxis(scenario, results, wanted))
  const columns = columnsOf(own.scenario)
  const both = (text: (n: 0 | 1) => string): [string, string] => [text(0), text(1)]
  const figures = SHOWN.map((id): ComparedRow => {
    const { label, note, quantity, value } = columns.find((column) => column.id === id)!
    const { symbol, toShown } = quantityUnit(quantity, units)
    const said = (figure: number | null) => formatFigure(figure === null ? null : toShown(figure))
    return { id, label, note, unit: symbol, cells: both((n) => said(value(known[n]!))) }
  })
  const advice = [own, beside].map(({ scenario, results }) =>
    recommend(
      scenario,
      results.filter((result) => result !== null),
    ),
  )
  const spare = (n: 0 | 1) => {
    const best = advice[n]!.best
    return best ? formatFigure(100 * best.spare!) : NO_FIGURE
  }
  return [
    {
      id: 'held',
      label: 'Strategies that hold',
      unit: '',
      note: HELD,
      cells: both((n) => heldText([own, beside][n]!)),
    },
    { id: 'best', label: 'Recommended', unit: '', note: BEST, cells: both((n) => recommendedName(advice[n]!)) },
    { id: 'spare', label: 'To spare with it', unit: '%', note: SPARE, cells: both(spare) },
    ...figures,
    {
      id: 'back',
      label: 'Back-drivable',
      unit: '',
      note: BACK,
      cells: both((n) => (known[n]!.backDrivable ? 'yes' : 'no')),
    },
    { id: 'loss', label: 'At power loss', unit: '', note: LOSS, cells: both((n) => known[n]!.powerLoss) },
  ]
}

const HELD = 'Of the strategies shown, how many hold the part undamaged.'
const BEST = 'Of the strategies shown, the one that stays farthest from both edges of the force window.'
const SPARE = 'The smaller of its hold margin and its damage margin.'
const BACK = 'Whether a force on the jaws drives the axis back without current.'
const LOSS = 'What becomes of the wanted grip force when the power goes, by friction and lead alone.'

function heldText({ results }: RunAxis): string {
  const known = results.filter((result) => result !== null)
  return `${known.filter(({ verdict }) => verdict === 'held').length} of ${known.length}`
}
