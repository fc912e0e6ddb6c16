/** What is asked of every grip, figure by figure. */
import Type from 'typebox'
import { group, optional, quantity } from '../quantity.ts'
import { FIGURES, type FigureId, type FigureName } from './figures.ts'

/** Far beyond any figure of a grip. */
const MOST = 1e9

const bounds = ({ label, unit, shown }: FigureName) => {
  const bound = (which: string, note: string) =>
    optional(quantity({ label: which, symbol: '', unit, ...(shown && { shown }), range: [-MOST, MOST], note }))
  return Type.Object(
    {
      least: bound('At least', `${label}: a grip that stays below it does not meet the requirement.`),
      most: bound('At most', `${label}: a grip that goes above it does not meet the requirement.`),
    },
    { title: label, additionalProperties: false },
  )
}

const entries = Object.entries(FIGURES).map(([id, name]) => [id, optional(bounds(name))] as const)

/** A figure that is not named is not asked for. */
export const requirements = group(
  'Requirements',
  Object.fromEntries(entries) as Record<FigureId, Type.TOptional<ReturnType<typeof bounds>>>,
)
