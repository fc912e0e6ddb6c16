/** What is said of a bench that runs on: one sentence on what the drive does and one on the work, and what an act is for. */
import { isHunting, type LiveState } from '../job/live.ts'
import type { ArmMove, Scenario } from '../scenario/index.ts'
import { withUnit } from './figure.ts'
import { jobWords } from './jobs.ts'
import { figure, type Wording } from './wording.ts'

/** A channel of the newest sample [SI]. */
export type At = (channel: string) => number

export interface LiveWords {
  groups: Readonly<Record<string, string>>
  /** Label of an act, the mark that it leaves on the traces, and one sentence where the label does not say it all. */
  acts: Readonly<Record<string, { label: string; mark: string; title?: string }>>
  /** Marks of what happens to the work. */
  events: Readonly<Record<string, string>>
  /** What the drive does while it has power, and how the work stands, a sentence each. */
  drive(state: LiveState, at: At): string
  work(state: LiveState, at: At, scenario: Scenario, words: Wording): string
  /** The effort: its name, what its mean is over, and what its peak is. */
  effort: { label: string; mean: string; peak: string }
  /** What too little of it does, and too much, as it stands at the window: "drops below", "breaks above". */
  below: string
  above(scenario: Scenario): string
}

export function liveSentence(scenario: Scenario, state: LiveState, at: At, words: Wording): string {
  if (state.left !== '') return 'The plant has left its rails and stands still: start anew.'
  const { live } = jobWords(scenario)
  return `${driven(scenario, state, at, live)} ${live.work(state, at, scenario, words)}`
}

function driven({ events }: Scenario, state: LiveState, at: At, live: LiveWords): string {
  if (!state.powered) return `No power: the windings are ${events.powerLoss?.windings ?? 'open'}.`
  if (isHunting(state)) return 'Hunting: the loop does not come to rest.'
  return live.drive(state, at)
}

/** What a button does, in a sentence; of one that shakes the arm, how hard. '': its label says it. */
export function actTitle(scenario: Scenario, id: string, move: ArmMove | null, words: Wording): string {
  const { title = '' } = jobWords(scenario).live.acts[id]!
  if (!move) return title
  const hard = `${words.acceleration(Math.abs(move.acceleration))} for ${withUnit(figure(move.duration), 's')}`
  return `${hard}; ${title}`
}
