/** The rows of a section's table of symbols: from the schema, from the section itself, and figures that no scenario sets. */
import {
  type ActuatorKind,
  FIXED_FIGURES,
  JOB_SCHEMAS,
  type JobId,
  readPath,
  type Scenario,
} from '../../../sim/index.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import type { Section } from './section.ts'

export interface SymbolRow {
  symbol: string
  title: string
  unit: string
  shown?: string | undefined
  /** Key of the scenario, '' for a symbol of the section's own. */
  path: string
  /** SI; null: none to show, and `words` may say why. */
  value: number | null
  words: string
  /** Where a fixed figure comes from. */
  basis: string
}

const kindsOf = (job: JobId) => Object.keys(JOB_SCHEMAS[job]) as ActuatorKind[]

export function symbolRows({ quantities, own, fixed }: Section, scenario: Scenario): SymbolRow[] {
  return [
    ...quantities.flatMap((path) => quantityRows(path, scenario)),
    ...FIXED_FIGURES.filter(({ id }) => fixed.includes(id)).map(({ label, ...figure }) => ({
      ...figure,
      title: label,
      path: '',
      words: '',
    })),
    ...own.map(({ value, ...symbol }) => ({
      ...symbol,
      path: '',
      value: value?.(scenario) ?? null,
      words: '',
      basis: '',
    })),
  ]
}

/** One row, or several where the kinds of axis mean different quantities by the same key; that of the present axis first. */
function quantityRows(path: string, scenario: Scenario): SymbolRow[] {
  const { job } = scenario
  const { kind } = scenario.actuator
  const rows = new Map<string, SymbolRow>()
  for (const each of [kind, ...kindsOf(job).filter((other) => other !== kind)]) {
    const field = fieldAt(each, path, job)
    if (field?.kind !== 'quantity') continue
    const { symbol, title, unit, shown } = field.schema
    const key = `${symbol} ${unit}`
    if (rows.has(key)) continue
    const given = each === kind ? readPath(scenario, path) : undefined
    const value = typeof given === 'number' ? given : null
    const absent = field.absent === 'never' ? 'none' : field.absent.words
    const words = value !== null ? '' : each === kind ? absent : 'another kind of axis'
    rows.set(key, { symbol, title, unit, shown, path, value, words, basis: '' })
  }
  return [...rows.values()]
}
