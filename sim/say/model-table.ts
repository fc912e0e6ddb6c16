/** How far off the model can be, as the command line prints it. */

import type { CounterRun, Outcome } from '../ask/model/index.ts'
import type { ModelReport } from '../ask/model/report.ts'
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
export function modelTable({ base, simplifications }: ModelReport, words: Wording): string {
  const lines = [
    `${base.verdict}: peak ${orNone(base.peakForce, words.force)}, settled ${orNone(base.settledForce, words.force)}, on an unbreakable part`,
  ]
  for (const { element, title, how, basis, figures, runs } of simplifications) {
    lines.push('', `${element}: ${title}`)
    if (how === 'unknown') lines.push(`  not known. ${basis}`)
    else if (figures.length + runs.length === 0) lines.push('  does not apply here')
    else lines.push(`  ${basis}`)
    for (const { label, value, unit } of figures) lines.push(`  ${label}: ${figureText(value, unit, words)}`)
    for (const run of runs) lines.push(`  ${run.label}: ${outcomeText(run, base, words)}`)
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

function outcomeText({ outcome, faults }: CounterRun, base: Outcome, words: Wording): string {
  if (!outcome) return `not possible here (${faults.map(faultLine).join('; ')})`
  const parts = [
    `peak ${orNone(outcome.peakForce, words.force)} (${change(outcome.peakForce, base.peakForce, words)})`,
    `settled ${orNone(outcome.settledForce, words.force)} (${change(outcome.settledForce, base.settledForce, words)})`,
  ]
  if (outcome.holdMargin !== base.holdMargin) parts.push(`to spare ${orNone(outcome.holdMargin, words.ratio)}`)
  if (outcome.windingTemperature !== base.windingTemperature)
    parts.push(`winding ${orNone(outcome.windingTemperature, words.temperature)}`)
  return `${outcome.verdict}, ${parts.join(', ')}`
}
