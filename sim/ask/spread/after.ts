/** How many parts a change of the file holds: the same parts and noise, gripped before and after it. */
import { type Edit, editScenario, type Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { SpreadStudy } from './batch.ts'
import { allBatches, runSpread } from './run.ts'
import type { Crew } from './tasks.ts'
import { type Gained, gainedOf } from './tighten.ts'

export interface AfterQuestion {
  /** With something that varies. */
  scenario: Scenario
  strategy: StrategyId
  /** Parts, and the seed that they are drawn with. */
  grips: number
  seed: number
}

/**
 * One answer a change, in their order. Null: the format refuses it, or it moves the middle of a law that has its values of its own (a
 * list, a triangle), so that no part would change. `told` hears of the share done and of the answers that are in, and returns whether
 * to go on; what it stops is null.
 * Rejects with a Refusal where the correlations of the scenario contradict each other.
 */
export async function runAfter(
  { scenario, strategy, grips, seed }: AfterQuestion,
  changes: Edit[][],
  crew: Crew,
  told: (done: number, answers: readonly (Gained | null)[]) => boolean = () => true,
): Promise<(Gained | null)[]> {
  const study: SpreadStudy = { scenario, strategies: [strategy], grips, seed, sampling: 'sobol' }
  const all = allBatches(study).length
  const answers: (Gained | null)[] = []
  let [done, goOn] = [0, true]
  const gripped = async (changed: Scenario) => {
    const progress = () => {
      done++
      goOn = told(done / (all * (changes.length + 1)), answers)
      return goOn
    }
    const [tally] = await runSpread({ ...study, scenario: changed }, crew, progress)
    return tally!
  }
  const before = await gripped(scenario)
  for (const edits of changes) {
    const edited = editScenario(scenario, edits)
    const moves = edited.ok && !edits.some(({ path }) => isFixed(scenario, path))
    const after = goOn && moves ? await gripped(edited.scenario) : null
    answers.push(after && after.batches.size === all ? gainedOf('sobol', before, after) : null)
  }
  return answers
}

/** The parts do not follow the value of the file. */
const isFixed = ({ spread }: Scenario, path: string) =>
  spread.varies.some(
    (each) => each.path === path && !each.share && (each.law === 'measured' || each.law === 'triangular'),
  )
