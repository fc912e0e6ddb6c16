/** The wanted effort with which most parts hold, over the same parts at every force. */
import { jobOf } from '../../job/index.ts'
import { type Edit, editScenario, type Scenario } from '../../scenario/index.ts'
import { strategyOf } from '../../strategy/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { batchesOf, type SpreadStudy } from './batch.ts'
import { type Best, bestOf, nextSettings, type Tried } from './best.ts'
import type { Draws } from './draw.ts'
import { fatesOf } from './outcome.ts'
import { BATCH } from './points.ts'
import type { Crew } from './tasks.ts'

export interface BestQuestion extends Draws {
  scenario: Scenario
  strategy: StrategyId
  /** Parts, the same at every force. */
  grips: number
}

/** Told after each force; `best` is that of the forces so far [N], and its shares are of parts that are held as required. */
export interface BestProgress {
  best: Best
  /** Forces that were tried, and how many are to come before it is known where to look next. */
  tried: number
  left: number
  /** Edits of the file that ask for the best force. */
  edits: Edit[]
}

/** Forces tried first, over the window and as far again around it. */
const FIRST = 10
/** The best force and the ends of its drift are found to this share of what was looked at. */
const STEP = 1 / 40

/** `told` hears of each force and returns whether to go on. Rejects with a Refusal where the correlations contradict each other. */
export async function runBest(
  question: BestQuestion,
  crew: Crew,
  told: (progress: BestProgress) => boolean = () => true,
): Promise<void> {
  const { scenario, strategy, sampling } = question
  const [from, to] = rangeOf(scenario)
  const tried: Tried[] = []
  let waiting = Array.from({ length: FIRST }, (_, at) => from + ((to - from) * at) / (FIRST - 1))
  while (waiting.length > 0) {
    for (const [at, force] of waiting.entries()) {
      tried.push({ setting: force, held: await heldAt(question, force, crew) })
      const best = bestOf(sampling, tried)
      const edits = strategyOf(strategy).set(settingAt(scenario, strategy, best.setting))
      if (!told({ best, tried: tried.length, left: waiting.length - 1 - at, edits })) return
    }
    waiting = nextSettings(bestOf(sampling, tried), (to - from) * STEP)
  }
}

/** From a quarter of what holds to half as much again as damages; where there is no such edge, from and to several times the other. */
function rangeOf(scenario: Scenario): [number, number] {
  const { least, most } = jobOf(scenario).study.window(scenario)
  const low = least ?? (most ?? 10) / 10
  const high = most ?? 4 * low
  return [0.25 * Math.min(low, high), 1.5 * Math.max(low, high)]
}

/** Rounded to what a drive can be told. */
const settingAt = (scenario: Scenario, strategy: StrategyId, force: number) =>
  Number(strategyOf(strategy).settingFor(scenario, force).toPrecision(4))

/** Of each part whether it is held as required. A force that the file does not allow holds none. */
async function heldAt({ scenario, strategy, grips, ...draws }: BestQuestion, force: number, crew: Crew) {
  const held = new Uint8Array(grips)
  const set = editScenario(scenario, strategyOf(strategy).set(settingAt(scenario, strategy, force)))
  if (!set.ok) return held
  const study: SpreadStudy = { scenario: set.scenario, strategies: [strategy], grips, ...draws }
  const fates = fatesOf(scenario.job)
  const { well } = jobOf(scenario)
  const items = Array.from({ length: batchesOf(grips) }, (_, batch) => ({ batch, strategy }))
  await crew.work('spread', study, items, ({ batch, fates: places, failed }) => {
    for (const [row, place] of places.entries())
      held[batch * BATCH + row] = fates[place] === well && failed[row] === 0 ? 1 : 0
    return true
  })
  return held
}
