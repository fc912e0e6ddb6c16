/** How far off the model can be, as the command line prints it. */

import type { CounterRun } from '../ask/model/index.ts'
import type { ModelReport } from '../ask/model/report.ts'
import type { Figure } from '../job/job.ts'
import { faultLine } from '../scenario/index.ts'
import { inPlainSpaces, NO_FIGURE, withUnit } from './figure.ts'
import { textIn } from './text.ts'
import { shownUnit } from './units.ts'
import { figure, type Wording } from './wording.ts'

const orNone = (value: number | null, say: (value: number) => string) => (value === null ? NO_FIGURE : say(value))

const change = (value: number | null, from: number | null, words: Wording) =>
  value === null || from === null || from === 0
    ? NO_FIGURE
    : `${value >= from ? '+' : ''}${words.ratio(value / from - 1)}`

/** The report with the quantities of its texts filled in. */
export const spokenModel = (report: ModelReport, words: Wording): ModelReport => ({
  ...report,
  simplifications: report.simplifications.map((row) => ({
    ...row,
    title: inPlainSpaces(textIn(row.title, words)),
    basis: inPlainSpaces(textIn(row.basis, words)),
  })),
})

/** `report` as `spokenModel` gives it. */
export function modelTable({ told, base, simplifications }: ModelReport, words: Wording): string {
  const figures = told.map(({ id, label, ...unit }) => `${label.toLowerCase()} ${said(base.metrics[id], unit, words)}`)
  const lines = [`${base.verdict}: ${figures.join(', ')}; of work that does not break`]
  for (const { element, title, how, basis, figures, runs } of simplifications) {
    lines.push('', `${element}: ${title}`)
    if (how === 'unknown') lines.push(`  not known. ${basis}`)
    else if (figures.length + runs.length === 0) lines.push('  does not apply here')
    else lines.push(`  ${basis}`)
    for (const { label, value, unit } of figures) lines.push(`  ${label}: ${figureText(value, unit, words)}`)
    for (const run of runs) lines.push(`  ${run.label}: ${outcomeText(run, { told, base }, words)}`)
  }
  return inPlainSpaces(lines.join('\n'))
}

function figureText(value: number | null, unit: string, { system }: Wording): string {
  const { symbol, toShown } = shownUnit({ unit }, system)
  return withUnit(
    orNone(value, (si) => figure(toShown(si))),
    symbol,
  )
}

const said = (value: number | null | undefined, unit: Pick<Figure, 'unit' | 'shown'>, words: Wording) =>
  orNone(value ?? null, (si) => words.of(unit, si))

/** Every figure that is another one, an effort with its change. */
function outcomeText(
  { outcome, faults }: CounterRun,
  { told, base }: Pick<ModelReport, 'told' | 'base'>,
  words: Wording,
): string {
  if (!outcome) return `not possible here (${faults.map(faultLine).join('; ')})`
  const parts = told.flatMap(({ id, label, unit, shown }, place) => {
    const [now, before] = [outcome.metrics[id] ?? null, base.metrics[id] ?? null]
    const text = `${label.toLowerCase()} ${said(now, { unit, ...(shown && { shown }) }, words)}`
    if (unit !== '' && place < told.length - 1) return [`${text} (${change(now, before, words)})`]
    return now === before ? [] : [text]
  })
  return `${outcome.verdict}, ${parts.join(', ')}`
}
