/** Least and most of the figures of a job, as `requirements` names them. */
import Type from 'typebox'
import { group, optional, quantity } from '../quantity.ts'
import type { FigureName } from './figures.ts'

/** Far beyond any figure of a run that could be asked for. */
const MOST = 1e9

const bounds = ({ label, unit, shown }: FigureName) => {
  const bound = (which: string, note: string) =>
    optional(quantity({ label: which, symbol: '', unit, ...(shown && { shown }), range: [-MOST, MOST], note }))
  return Type.Object(
    {
      least: bound('At least', `${label}: a run that stays below it does not meet the requirement.`),
      most: bound('At most', `${label}: a run that goes above it does not meet the requirement.`),
    },
    { title: label, additionalProperties: false },
  )
}

/** A figure that is not named is not asked for. */
export function boundsOf<Id extends string>(figures: Record<Id, FigureName>) {
  const entries = Object.entries<FigureName>(figures).map(([id, name]) => [id, optional(bounds(name))] as const)
  return group('Requirements', Object.fromEntries(entries) as Record<Id, Type.TOptional<ReturnType<typeof bounds>>>)
}
