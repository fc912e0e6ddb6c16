/** The wanted force with which most parts hold, over the same parts at every force. */
import { forceWindow } from '../../job/grip/window.ts'
import { type Edit, editScenario, type Scenario } from '../../scenario/index.ts'
import { strategyOf } from '../../strategy/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { Runner } from '../runner.ts'
import { type Best, bestOf, nextSettings, type Tried } from './best.ts'
import { type Draws, drawing } from './draw.ts'
import { isFit, outcomeOf } from './outcome.ts'

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

/** Throws a Refusal where the correlations of the scenario contradict each other. */
export function* bestForce(question: BestQuestion, run: Runner): Generator<BestProgress> {
  const { scenario, strategy, sampling } = question
  const [from, to] = rangeOf(scenario)
  const tried: Tried[] = []
  let waiting = Array.from({ length: FIRST }, (_, at) => from + ((to - from) * at) / (FIRST - 1))
  while (waiting.length > 0) {
    for (const [at, force] of waiting.entries()) {
      tried.push({ setting: force, held: heldAt(question, force, run) })
      const best = bestOf(sampling, tried)
      const edits = strategyOf(strategy).set(settingAt(scenario, strategy, best.setting))
      yield { best, tried: tried.length, left: waiting.length - 1 - at, edits }
    }
    waiting = nextSettings(bestOf(sampling, tried), (to - from) * STEP)
  }
}

/** From a quarter of what holds to half as much again as damages; where there is no such edge, from and to several times the other. */
function rangeOf(scenario: Scenario): [number, number] {
  const { least, most } = forceWindow(scenario)
  const low = least ?? (most ?? 10) / 10
  const high = most ?? 4 * low
  return [0.25 * Math.min(low, high), 1.5 * Math.max(low, high)]
}

/** Rounded to what a drive can be told. */
const settingAt = (scenario: Scenario, strategy: StrategyId, force: number) =>
  Number(strategyOf(strategy).settingFor(scenario, force).toPrecision(4))

/** Of each part whether it is held as required. A force that the file does not allow holds none. */
function heldAt({ scenario, strategy, grips, ...draws }: BestQuestion, force: number, run: Runner): Uint8Array {
  const set = editScenario(scenario, strategyOf(strategy).set(settingAt(scenario, strategy, force)))
  if (!set.ok) return new Uint8Array(grips)
  const draw = drawing(set.scenario, draws)
  return Uint8Array.from({ length: grips }, (_, index) => (isFit(outcomeOf(draw(index), strategy, run)) ? 1 : 0))
}
