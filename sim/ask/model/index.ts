/**
 * How far off the model can be for a scenario: closed forms at once, and counter-runs of the simulator in which what is
 * uncertain is made different. Where work is not done well its figures are those of work that cannot break, since what has broken hides
 * how far the effort would have gone; the verdict is that of the work as it is.
 */
import { JOBS, jobOf } from '../../job/index.ts'
import type { Figure } from '../../job/job.ts'
import { type Edit, editScenario, type Fault, type JobId, Refusal, type Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { type Runner, runHere } from '../runner.ts'
import { CLOSURE } from './cap.ts'
import { DRIVE, MEASURING, STEPPING } from './drive.ts'
import { ELECTRIC, HEAT } from './electric.ts'
import { ARM, PADS, PART } from './held.ts'
import { JAWS, MECHANIC } from './mechanic.ts'
import { JOINT } from './press.ts'
import type { Simplification } from './simplification.ts'
import { WEB } from './web.ts'

/** Of the work itself, in the order of the power's way; a job that has none here is told by its axis alone. */
const WORK: Partial<Record<JobId, Simplification[]>> = {
  grip: [...JAWS, ...PART, ...PADS, ...ARM],
  press: JOINT,
  cap: CLOSURE,
  web: WEB,
}

/** In the order of the power's way. */
export const simplificationsOf = (job: JobId): Simplification[] => [
  ...ELECTRIC,
  ...MECHANIC,
  ...(WORK[job] ?? []),
  ...HEAT,
  ...MEASURING,
  ...DRIVE,
  ...STEPPING,
]

/** Of all jobs, each once. */
export const SIMPLIFICATIONS: Simplification[] = [
  ...new Set((Object.keys(JOBS) as JobId[]).flatMap((job) => simplificationsOf(job))),
]

/** Figures that are told of a job: the first of those that its studies tell, and how warm the winding gets. */
export function toldOf(scenario: Pick<Scenario, 'job'>): Figure[] {
  const { figures, study } = jobOf(scenario)
  return [...study.told.slice(0, 3), HOTTEST].map((id) => figures.find((figure) => figure.id === id)!)
}

/** The figure that is told where heat is simplified. */
export const HOTTEST = 'windingTemperature'

export interface Outcome {
  verdict: string
  /** What `toldOf` names [SI]; null: it does not exist. */
  metrics: Record<string, number | null>
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
  /** Those done so far, in the order of `simplificationsOf`. */
  runs: CounterRun[]
  of: number
}

/** The list of counter-runs as it grows. Throws a RangeError where the scenario itself cannot be simulated. */
export function* counterRuns(scenario: Scenario, strategy: StrategyId, run = runHere): Generator<CounterRuns> {
  const variants = simplificationsOf(scenario.job).flatMap(({ id, bound }) =>
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
  const own = run(scenario, strategy).result
  const { verdict }: { verdict: string } = own
  const whole = verdict === jobOf(scenario).well ? own : run(unbreakable(scenario), strategy).result
  const metrics: Record<string, number | null> = { ...whole.metrics }
  return { verdict, metrics: Object.fromEntries(toldOf(scenario).map(({ id }) => [id, metrics[id] ?? null])) }
}

/** A grip keeps its pads, and what slides in them. */
function unbreakable(scenario: Scenario): Scenario {
  if (scenario.job === 'grip') {
    const { crackForce: _, yieldForce: __, ...part } = scenario.part
    return { ...scenario, part }
  }
  const edited = editScenario(scenario, [...jobOf(scenario).why.unlosable])
  return edited.ok ? edited.scenario : scenario
}
