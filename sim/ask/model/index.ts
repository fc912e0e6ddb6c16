/**
 * How far off the model can be for a scenario: closed forms at once, and counter-runs of the simulator in which what is
 * uncertain is made different. In these runs the part neither breaks nor yields, since a broken part hides how far the force would
 * have gone; the verdict still holds the peak against its limits.
 */
import type { Verdict } from '../../job/grip/result.ts'
import { type Edit, editScenario, type Fault, Refusal, type Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { type Runner, runHere } from '../runner.ts'
import { DRIVE, MEASURING, STEPPING } from './drive.ts'
import { ELECTRIC, HEAT } from './electric.ts'
import { ARM, PADS, PART } from './held.ts'
import { MECHANIC } from './mechanic.ts'
import type { Simplification } from './simplification.ts'

/** In the order of the power's way. */
export const SIMPLIFICATIONS: Simplification[] = [
  ...ELECTRIC,
  ...MECHANIC,
  ...PART,
  ...PADS,
  ...ARM,
  ...HEAT,
  ...MEASURING,
  ...DRIVE,
  ...STEPPING,
]

export interface Outcome {
  verdict: Verdict
  /** [N], [N], over what is needed less 1, [°C] */
  peakForce: number | null
  settledForce: number | null
  holdMargin: number | null
  windingTemperature: number | null
}

export interface CounterRun {
  /** Of the simplification. */
  id: string
  label: string
  edits: Edit[]
  /** Null: the scenario does not take that change; `faults` say why. */
  outcome: Outcome | null
  faults: Fault[]
}

export interface CounterRuns {
  strategy: StrategyId
  base: Outcome
  /** Those done so far, in the order of SIMPLIFICATIONS. */
  runs: CounterRun[]
  of: number
}

/** The list of counter-runs as it grows. Throws a RangeError where the scenario itself cannot be simulated. */
export function* counterRuns(scenario: Scenario, strategy: StrategyId, run = runHere): Generator<CounterRuns> {
  const variants = SIMPLIFICATIONS.flatMap(({ id, bound }) =>
    bound.how === 'runs' ? bound.variants(scenario, strategy).map((variant) => ({ id, ...variant })) : [],
  )
  const base = outcomeOf(scenario, strategy, run)
  const runs: CounterRun[] = []
  yield { strategy, base, runs: [], of: variants.length }
  for (const variant of variants) {
    runs.push({ ...variant, ...tried(scenario, strategy, variant.edits, run) })
    yield { strategy, base, runs: [...runs], of: variants.length }
  }
}

function tried(
  scenario: Scenario,
  strategy: StrategyId,
  edits: Edit[],
  run: Runner,
): Pick<CounterRun, 'outcome' | 'faults'> {
  const edited = editScenario(scenario, edits)
  if (!edited.ok) return { outcome: null, faults: edited.faults }
  try {
    return { outcome: outcomeOf(edited.scenario, strategy, run), faults: [] }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return { outcome: null, faults: [error.fault] }
  }
}

function outcomeOf(scenario: Scenario, strategy: StrategyId, run: Runner): Outcome {
  const { crackForce, yieldForce, ...part } = scenario.part
  const { verdict, metrics } = run({ ...scenario, part }, strategy).result
  const { peakForce, settledForce, holdMargin, windingTemperature } = metrics
  return {
    verdict: withLimits(verdict, peakForce ?? 0, crackForce, yieldForce),
    peakForce,
    settledForce,
    holdMargin,
    windingTemperature,
  }
}

/** What the verdict is where the peak is held against limits that the run did not know. */
function withLimits(verdict: Verdict, peak: number, crack = Infinity, dent = Infinity): Verdict {
  if (verdict === 'unstable') return verdict
  if (peak > crack) return 'crushed'
  return verdict === 'held' && peak > dent ? 'marked' : verdict
}
