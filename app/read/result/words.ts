/** How figures and verdicts are written on cards and in tables. */
import {
  type CapVerdict,
  type GripResult,
  isWell,
  jobWords,
  type PressVerdict,
  reasonOf,
  type Scenario,
  type Verdict,
  type WebVerdict,
  wordingOf,
} from '../../../sim/index.ts'
import type { RunView } from '../../store/results.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { shownUnit, type UnitSystem } from '../units.ts'
import type { Figure } from './figures.ts'

/** Of any job. */
export type AnyVerdict = Verdict | PressVerdict | CapVerdict | WebVerdict

export const VERDICT_WORDS: Record<AnyVerdict, string> = {
  held: 'Held',
  slipped: 'Slipped',
  loose: 'Loose',
  dropped: 'Dropped',
  marked: 'Marked',
  crushed: 'Crushed',
  seated: 'Seated',
  short: 'Short',
  slack: 'Slack',
  tilted: 'Tilted',
  forced: 'Forced',
  tight: 'Tight',
  stripped: 'Stripped',
  'cross-threaded': 'Cross-threaded',
  taut: 'Taut',
  stretched: 'Stretched',
  torn: 'Torn',
  missed: 'Missed',
  unstable: 'Unstable',
}

/** The word of a verdict whose job is not known to the compiler. */
export const verdictWord = (verdict: string): string => VERDICT_WORDS[verdict as AnyVerdict]

/** Verdicts that mean a damaged part. */
export const isDamage = (verdict: string) =>
  ['crushed', 'marked', 'forced', 'stripped', 'cross-threaded', 'stretched', 'torn'].includes(verdict)

/** Damage has a colour of its own, every other failure another; what is held stays calm. */
export type Tone = 'calm' | 'damage' | 'failure'

export const toneOf = (verdict: string): Tone => (isWell(verdict) ? 'calm' : isDamage(verdict) ? 'damage' : 'failure')

/** A result in words alone, for those who hear the page and for labels. */
export function spokenVerdict({
  verdict,
  overloads,
  requirements,
  doubt,
}: Pick<GripResult, 'verdict' | 'overloads' | 'requirements' | 'doubt'>) {
  const short = requirements.some(({ met }) => !met)
  const beside = [doubt && 'in doubt', overloads.length > 0 && 'overloaded', short && 'requirement missed'].filter(
    Boolean,
  )
  return [VERDICT_WORDS[verdict].toLowerCase(), ...beside].join(', ')
}

/** Changes smaller than this share of the figure are rounding, not news. */
const NEWS = 0.002

/** `+3.1 N`: how far a figure lies from another; null where that cannot be said or is nothing. */
export function differenceText(figure: Figure, now: number | null, before: number | null, units: UnitSystem) {
  if (now === null || before === null) return null
  const size = Math.max(Math.abs(now), Math.abs(before))
  if (Math.abs(now - before) <= Math.max(NEWS * size, (figure.grain ?? 0) / 2)) return null
  const { symbol, toShown } = shownUnit(figure, units)
  const change = toShown(now) - toShown(before)
  return `${change > 0 ? '+' : ''}${withUnit(formatFigure(change, 2), symbol)}`
}

/** What stands in the place of a verdict where there is none, and why; null: there is one, or it is on its way. */
export function noResult({ status, message, again }: Pick<RunView, 'status' | 'message' | 'again'>) {
  if (status !== 'failed') return null
  if (again) return { word: 'Stopped', why: `The run has no result: ${message}` }
  return { word: 'No result', why: `The simulation could not be run: ${message ?? 'no reason was given'}` }
}

/** The reason of a verdict in the units of the page. */
export const reasonText = ({ result, scenario }: RunView, units: UnitSystem): string =>
  result ? reasonOf(scenario, result, wordingOf(units)) : ''

/** What stands in the place of a verdict that is on its way. */
export function underWay(scenario: Scenario): string {
  const { acting } = jobWords(scenario).study
  return `${acting[0]!.toUpperCase()}${acting.slice(1)} …`
}
