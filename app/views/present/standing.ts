/** How a run stands at an instant: the word that is true by then, and the instants worth stopping at. */
import { jobOf, type StrategyId, shownAs } from '../../../sim/index.ts'
import { isDamage, noResult, VERDICT_WORDS } from '../../read/result/words.ts'
import { momentsOf } from '../../read/stage/moments.ts'
import type { RunView } from '../../store/results.ts'

export interface Standing {
  word: string
  /** The verdict is in: the word will not change any more. */
  decided: boolean
}

/** When the verdict of a run is in [s]; null: there is none. */
export function decidedAt({ result, scenario }: Pick<RunView, 'result' | 'scenario'>): number | null {
  if (!result) return null
  const { moments } = jobOf(scenario)
  const { duration } = scenario.run
  return Math.min(duration, moments.wrong(result)?.time ?? moments.right(scenario, result) ?? duration)
}

export function standingAt(run: RunView, time: number): Standing {
  const { result, scenario } = run
  const open = (word: string): Standing => ({ word, decided: false })
  const none = noResult(run)
  if (none) return open(none.word)
  const end = decidedAt(run)
  if (result && end !== null && time >= end) return { word: VERDICT_WORDS[result.verdict], decided: true }
  return open(shownAs(scenario).stage(result, time))
}

/** Instants that lie nearer than this are one stop, at the last of them [s]. */
const TOGETHER = 0.003

/** Start, contact, peaks, moves of arm or line, what went wrong, the verdicts, end: sorted [s]. */
export function stopsOf(runs: RunView[], duration: number): number[] {
  const events = runs.flatMap(({ scenario }) =>
    shownAs(scenario)
      .events(scenario)
      .map(({ start }) => start),
  )
  const verdicts = runs.flatMap((run) => decidedAt(run) ?? [])
  const all = [...runs.flatMap(momentsOf).map(({ time }) => time), ...events, ...verdicts]
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

/** The run to speak of first: one that did damage, else one that failed, else any. */
export function firstToTell(runs: RunView[]): RunView | undefined {
  const lost = runs.filter((run) => run.result && !isWell(run))
  return lost.find(({ result }) => isDamage(result!.verdict)) ?? lost[0] ?? runs[0]
}

/** The strategy whose two axes differ most: one that does its work on one of them alone, else the one whose room to spare differs most. */
export function tellingOf(own: RunView[], beside: RunView[]): StrategyId | null {
  const weights = own.flatMap((run) => {
    const { strategy } = run
    const other = beside.find((each) => each.strategy === strategy)
    if (!run.result || !other?.result) return []
    const alone = isWell(run) !== isWell(other)
    return [{ strategy, weight: alone ? Number.POSITIVE_INFINITY : Math.abs(spareOf(run) - spareOf(other)) }]
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

const isWell = ({ result, scenario }: RunView) => result?.verdict === jobOf(scenario).well

/** The nearest of its margins; 0 for what has failed, or where none can be stated. */
function spareOf(run: RunView): number {
  if (!run.result || !isWell(run)) return 0
  const spare = jobOf(run.scenario).study.spare(run.scenario, run.result) ?? 0
  return Number.isFinite(spare) ? spare : 0
}
