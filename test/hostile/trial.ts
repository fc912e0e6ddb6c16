/** Hostile scenarios by the block, each run by one strategy, and the shortest scenario that breaks a law. */
import base64 from 'virtual:core'
import fc from 'fast-check'
import { runnerOn } from '../../sim/ask/runner.ts'
import {
  checkScenario,
  compiledCore,
  Refusal,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  simulateGrip,
} from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { absurd, plausible } from '../grip/random.ts'
import { KINDS } from '../scenario/schema-walk.ts'
import { ERROR_LAW, LAWS } from './laws.ts'

export interface Breach {
  law: string
  wrong: string
  strategy: StrategyId
  /** The keys that it takes; all others are at their defaults. */
  scenario: object
}

export interface Tally {
  runs: number
  /** Scenarios that are drawn anew: a run of them would take too many steps. */
  tooLong: number
  breaches: Breach[]
}

/** Runs in a block; the same block of the same seed holds the same runs. */
export const BLOCK = 250
/** Cases of which most blocks find as many runs as they need. */
const MOST_NEED = 1.4 * BLOCK
/** Steps of the axis that one run may take. */
const MOST = 20_000
/** The same of a run that an unstable one at a step of its own is held against. */
const MOST_CHECKED = 200_000
/** One run in so many is held against finer steps. */
const CHECKED = 20

const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)
const run = runnerOn(core)

/** Half of them are lively, so that more becomes of the part than that it is never reached. */
const anyScenario = fc.oneof(
  ...KINDS.flatMap((kind) => [false, true].flatMap((lively) => [plausible(kind, lively), absurd(kind, lively)])),
)

const anyCase = fc.tuple(anyScenario, fc.constantFrom(...STRATEGIES.map(({ id }) => id)))

/** The runs of a block, as many as `most`. */
export function trial(seed: number, block: number, most = BLOCK): Tally {
  const tally: Tally = { runs: 0, tooLong: 0, breaches: [] }
  // Blocks of one seed, and of seeds that are neighbours, are far apart.
  const start = (Math.imul(seed, 0x9e3779b1) ^ Math.imul(block + 1, 0x85ebca6b)) | 0
  for (const [scenario, strategy] of drawn(start)) {
    if (tally.runs === most) break
    if (!isShort(scenario)) {
      tally.tooLong++
      continue
    }
    const check = tally.runs % CHECKED === 0 && isSoonChecked(scenario)
    tally.runs++
    const broken = breachOf(scenario, strategy, check)
    if (broken) tally.breaches.push({ ...broken, strategy, scenario: shortest(scenario, strategy, check, broken.law) })
  }
  return tally
}

/** Drawing takes as long as running: no more are drawn than most blocks need, and where they do not suffice all of them anew. */
function* drawn(seed: number) {
  let given = 0
  for (const numRuns of [MOST_NEED, 4 * BLOCK])
    for (const one of fc.sample(anyCase, { seed, numRuns }).slice(given)) {
      given++
      yield one
    }
}

const isShort = (scenario: Scenario) => stepsOf(scenario) <= MOST

/** At the step that its stiffest mode asks for it takes few steps too, or is refused, which takes none. */
function isSoonChecked(scenario: Scenario): boolean {
  const steps = stepsOf({ ...scenario, run: { ...scenario.run, step: null } })
  return steps <= MOST_CHECKED || steps === Number.POSITIVE_INFINITY
}

/** Of the axis in a run; Infinity: refused in a sentence, which test/run/fuzz.test.ts reads. */
function stepsOf(scenario: Scenario): number {
  try {
    return modelOf(scenario, STRATEGIES[0]!).bench.axis.steps * scenario.drive.currentRate * scenario.run.duration
  } catch (error) {
    if (error instanceof Refusal) return Number.POSITIVE_INFINITY
    throw error
  }
}

/** The first law that a run breaks. */
function breachOf(scenario: Scenario, strategy: StrategyId, check: boolean): { law: string; wrong: string } | null {
  try {
    const { result } = check ? simulateGrip(scenario, strategy, { core, stepError: true }) : run(scenario, strategy)
    for (const { name, broken } of check ? [...LAWS, ERROR_LAW] : LAWS) {
      const wrong = broken(result, scenario)
      if (wrong !== null) return { law: name, wrong }
    }
    return null
  } catch (error) {
    return { law: 'a run ends', wrong: String(error) }
  }
}

type Tree = Record<string, unknown>

/** The scenario without every key that it can do without and still break the law. */
function shortest(scenario: Scenario, strategy: StrategyId, check: boolean, law: string): object {
  const kept = structuredClone(scenario) as unknown as Tree
  const breaks = () => {
    const checked = checkScenario(kept)
    return checked.ok && isShort(checked.scenario) && breachOf(checked.scenario, strategy, check)?.law === law
  }
  const prune = (tree: Tree) => {
    for (const key of Object.keys(tree)) {
      const value = tree[key]
      delete tree[key]
      if (breaks()) continue
      tree[key] = value
      if (typeof value === 'object' && value !== null) prune(value as Tree)
    }
  }
  if (breaks()) prune(kept)
  return kept
}
