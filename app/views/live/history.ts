/** What has been: the last seconds as they were recorded, ten minutes gathered, and what happened in them. */
import { CHANNELS, type Channel, type LiveState, type Traces } from '../../../sim/index.ts'
import { type LiveMark, SPAN } from '../../store/live.ts'
import { Gathered, RollingTraces } from '../../worker/rolling.ts'
import { PANELS } from './panels.ts'

/** How far one can look back [s], and how much of it as it was recorded [s]. */
export const BACK = 600
const FINE = 8 * SPAN
/** Rows of a simulated second: two a bucket of half a millisecond; and rows that are gathered into two of the long ago. */
const RATE = 4000
const GATHERED = 32
/** Rows that a chart has any use for; of more, each two of a group show what was least and most in it. */
const MOST = 1600
const DRAWN: Channel[] = ['time', ...PANELS.flatMap(({ channel, behind }) => [channel, behind])]

export class LiveHistory {
  private readonly fine = new RollingTraces(FINE * RATE, DRAWN)
  private readonly long = new RollingTraces((2 * BACK * RATE) / GATHERED, DRAWN)
  private readonly gathered = new Gathered(GATHERED)
  private newest: Float64Array = new Float64Array(CHANNELS.length)

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
    return (fine || this.long.oldest === null ? this.fine : this.long).view(DRAWN, from, MOST, this.newest, to)
  }
}

/** What a new state says happened since the one before. */
export function happenings(
  before: LiveState | null,
  { time, crack, lost, left, engaged, phase }: LiveState,
): LiveMark[] {
  if (!before) return []
  const marks: LiveMark[] = []
  if (engaged && !before.engaged && phase === 'closing') marks.push({ time, label: 'takes over', damage: false })
  if (crack && !before.crack) marks.push({ time, label: 'breaks', damage: true })
  if (lost !== null && before.lost === null) marks.push({ time: lost, label: 'lost', damage: false })
  if (left !== '' && before.left === '') marks.push({ time, label: 'off its rails', damage: false })
  return marks
}
