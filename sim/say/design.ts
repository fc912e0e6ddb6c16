/** What a gain design comes to, beside what was asked for. */
import type { Shortfall } from '../loops/design/design.ts'
import type { Limit, LimitKind } from '../loops/design/limits.ts'
import type { DesignOutcome } from '../loops/design/outcome.ts'
import type { JobId } from '../scenario/index.ts'
import { JOB_WORDS } from './jobs.ts'
import { limitName } from './limits.ts'
import type { Wording } from './wording.ts'

/** Limits that hold for the smallest signals as well. */
const ALWAYS: LimitKind[] = ['delay', 'resonance', 'encoder', 'noise', 'inner-loop', 'contact', 'free-air', 'reach']

/** Sentences; none where the design gives what was asked for and stays within the limits. */
export function designWords(
  short: Shortfall | null,
  outcomes: readonly DesignOutcome[],
  limits: readonly Limit[],
  words: Wording,
  job: JobId,
): string[] {
  const { at } = JOB_WORDS[job].loops
  const unstable = outcomes.filter(({ stable }) => !stable).map(({ workingPoint }) => at[workingPoint])
  return [
    ...(short ? [shortfall(short, words)] : []),
    ...(unstable.length > 0 ? [`Unstable ${unstable.join(', ')}.`] : []),
    ...beyond(outcomes, limits, words),
  ]
}

function shortfall(short: Shortfall, words: Wording): string {
  return short.kind === 'friction'
    ? 'The viscous friction of the axis damps more than is wanted: the gain that would have to be negative is 0, and the poles lie elsewhere.'
    : `${words.swing(short.wanted)} cannot be had by this method: its fastest, with the lags of this axis, is ${words.swing(short.fastest)}, and these are the gains for that.`
}

/** The working point that crosses lowest, against the limits that it passes; the tightest stands first. */
function beyond(outcomes: readonly DesignOutcome[], limits: readonly Limit[], words: Wording): string[] {
  const lowest = Math.min(...outcomes.flatMap(({ crossover }) => (crossover === null ? [] : [crossover])))
  const passed = limits.filter(({ kind, crossover }) => ALWAYS.includes(kind) && lowest > crossover * (1 + ROUNDING))
  if (!Number.isFinite(lowest) || passed.length === 0) return []
  const named = passed.map((limit) => `${limitName(limit).toLowerCase()} ${words.swing(limit.crossover)}`)
  return [`It crosses at ${words.swing(lowest)} or above, beyond what is advised below: ${named.join(', ')}.`]
}

/** A search ends so near its bound. */
const ROUNDING = 0.01
