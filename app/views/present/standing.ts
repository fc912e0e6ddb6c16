/** How a grip stands at an instant: the word that is true by then, and the instants worth stopping at. */
import { type GripResult, liftTime, type StrategyId } from '../../../sim/index.ts'
import { isDamage, noResult, VERDICT_WORDS } from '../../read/result/words.ts'
import { momentsOf } from '../../read/stage/moments.ts'
import type { RunView } from '../../store/results.ts'

export interface Standing {
  word: string
  /** The verdict is in: the word will not change any more. */
  decided: boolean
}

/** When the verdict of a run is in [s]; null: there is none. What is held is held once the arm has moved for the last time. */
export function decidedAt({ result, scenario }: Pick<RunView, 'result' | 'scenario'>): number | null {
  if (!result) return null
  const { events, metrics, verdict } = result
  const { duration } = scenario.run
  const times = {
    crushed: events.crack,
    dropped: events.drop,
    loose: events.loose,
    slipped: events.slip,
    marked: events.mark,
    unstable: events.unstable,
    missed: metrics.contactTime === null ? duration : liftTime(scenario),
    held: Math.max(liftTime(scenario), ...scenario.arm.moves.map((move) => move.start + move.duration)),
  }
  return Math.min(duration, times[verdict] ?? duration)
}

export function standingAt(run: RunView, time: number): Standing {
  const { result } = run
  const open = (word: string): Standing => ({ word, decided: false })
  const none = noResult(run)
  if (none) return open(none.word)
  const end = decidedAt(run)
  if (!result || end === null) return open('Closing')
  if (time >= end) return { word: VERDICT_WORDS[result.verdict], decided: true }
  const { contactTime } = result.metrics
  if (contactTime === null || time < contactTime) return open('Closing')
  return open(result.events.slip !== null && time >= result.events.slip ? 'Sliding' : 'Gripping')
}

/** Instants that lie nearer than this are one stop, at the last of them [s]. */
const TOGETHER = 0.003

/** Start, contact, peaks, moves of the arm, what went wrong, the verdicts, end: sorted [s]. */
export function stopsOf(runs: RunView[], duration: number): number[] {
  const moves = runs.flatMap(({ scenario }) => scenario.arm.moves.map((move) => move.start))
  const verdicts = runs.flatMap((run) => decidedAt(run) ?? [])
  const all = [...runs.flatMap(momentsOf).map(({ time }) => time), ...moves, ...verdicts]
    .filter((time) => time > TOGETHER && time < duration - TOGETHER)
    .sort((a, b) => a - b)
  return [0, ...all.filter((time, i) => (all[i + 1] ?? duration) - time > TOGETHER), duration]
}

/** The stop before or after an instant; null: there is none. */
export function stopBeside(stops: number[], time: number, by: 1 | -1): number | null {
  const near = 1e-9
  if (by > 0) return stops.find((stop) => stop > time + near) ?? null
  return stops.findLast((stop) => stop < time - near) ?? null
}

/** The run to speak of first: one that damaged the part, else one that lost it, else any. */
export function firstToTell(runs: RunView[]): RunView | undefined {
  const lost = runs.filter(({ result }) => result && result.verdict !== 'held')
  return lost.find(({ result }) => isDamage(result!.verdict)) ?? lost[0] ?? runs[0]
}

/** The strategy whose two axes differ most: one that holds on one of them alone, else the one whose room to spare differs most. */
export function tellingOf(own: RunView[], beside: RunView[]): StrategyId | null {
  const weights = own.flatMap(({ strategy, result }) => {
    const other = beside.find((run) => run.strategy === strategy)?.result
    if (!result || !other) return []
    const alone = (result.verdict === 'held') !== (other.verdict === 'held')
    return [{ strategy, weight: alone ? Number.POSITIVE_INFINITY : Math.abs(spareOf(result) - spareOf(other)) }]
  })
  const most = weights.reduce((best, each) => (each.weight > best.weight ? each : best), {
    strategy: null,
    weight: -1,
  } as {
    strategy: StrategyId | null
    weight: number
  })
  return most.strategy ?? own[0]?.strategy ?? null
}

/** The smaller of its margins, no limit being no margin; 0 for what has lost the part. */
function spareOf({ verdict, metrics: { holdMargin, damageMargin } }: GripResult): number {
  if (verdict !== 'held') return 0
  const least = Math.min(holdMargin ?? Number.POSITIVE_INFINITY, damageMargin ?? Number.POSITIVE_INFINITY)
  return Number.isFinite(least) ? least : 0
}
