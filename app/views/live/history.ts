/** What has been: the last seconds as they were recorded, ten minutes gathered, and what happened in them. */
import {
  type ChannelKind,
  channelsOf,
  jobOf,
  jobWords,
  type LiveState,
  type Scenario,
  type Traces,
} from '../../../sim/index.ts'
import { type LiveMark, SPAN } from '../../store/live.ts'
import { Gathered, RollingTraces } from '../../worker/rolling.ts'
import { panelsOf } from './panels.ts'

/** How far one can look back [s], and how much of it as it was recorded [s]. */
export const BACK = 600
const FINE = 8 * SPAN
/** Rows of a simulated second: two a bucket of half a millisecond; and rows that are gathered into two of the long ago. */
const RATE = 4000
const GATHERED = 32
/** Rows that a chart has any use for; of more, each two of a group show what was least and most in it. */
const MOST = 1600

export class LiveHistory {
  private readonly drawn: string[]
  private readonly fine: RollingTraces
  private readonly long: RollingTraces
  private readonly gathered: Gathered
  private newest: Float64Array

  /** Of the plant of a job. */
  constructor(scenario: Pick<Scenario, 'job'>) {
    const channels: readonly ChannelKind[] = channelsOf(jobOf(scenario))
    this.drawn = ['time', ...panelsOf(scenario).flatMap(({ channel, behind }) => [channel, behind])]
    this.fine = new RollingTraces(FINE * RATE, this.drawn, channels)
    this.long = new RollingTraces((2 * BACK * RATE) / GATHERED, this.drawn, channels)
    this.gathered = new Gathered(GATHERED, channels)
    this.newest = new Float64Array(channels.length)
  }

  append(columns: Float64Array[], newest: Float64Array) {
    this.fine.append(columns)
    this.long.append(this.gathered.take(columns))
    this.newest = newest
  }

  clear() {
    this.fine.clear()
    this.long.clear()
    this.gathered.clear()
  }

  /** [s] */
  get oldest(): number {
    return this.long.oldest ?? this.fine.oldest ?? 0
  }

  /** The traces of a span [s]: as recorded where that is at hand and not too much to draw, else gathered. */
  readonly look = (from: number, to = Number.POSITIVE_INFINITY): Traces => {
    const end = Math.min(to, this.newest[0]!)
    const { oldest } = this.fine
    const fine = oldest !== null && from >= oldest && (end - from) * RATE <= MOST
    return (fine || this.long.oldest === null ? this.fine : this.long).view(this.drawn, from, MOST, this.newest, to)
  }
}

/** What a new state says happened since the one before. */
export function happenings(scenario: Scenario, before: LiveState | null, state: LiveState): LiveMark[] {
  if (!before) return []
  const { time, events, left, engaged, phase } = state
  const words = jobWords(scenario).live.events
  const marks: LiveMark[] = []
  if (engaged && !before.engaged && phase === 'working') marks.push({ time, label: 'takes over', damage: false })
  for (const { id, damage } of jobOf(scenario).live.events) {
    const at = events[id] ?? null
    if (at !== null && before.events[id] == null) marks.push({ time: at, label: words[id]!, damage })
  }
  if (left !== '' && before.left === '') marks.push({ time, label: 'off its rails', damage: false })
  return marks
}
