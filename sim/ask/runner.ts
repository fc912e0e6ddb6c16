/** What every study runs its grips with: it is handed one, so that whoever asks decides how a grip is computed. */
import type { GripJudgement } from '../job/grip/result.ts'
import type * as job from '../job/job.ts'
import type { Traces } from '../run/channels.ts'
import { type Core, sourceCore } from '../run/core.ts'
import { judge, simulate } from '../run/simulate.ts'
import type { Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'

export type Ran<R extends job.JobResult = GripJudgement> = job.Ran<R>

/**
 * Runs one grip, or, for a study of any job, what the scenario asks for; `scenario` keeps the rules of the format. `untilLost`: it may
 * end as soon as the work can no longer be done well, and the verdict is then the good one exactly where that of the whole run is. `traces`: a
 * lesson draws what it ran, everybody else does without. Throws a RangeError where the grip would take more steps than a run may.
 */
export interface Runner<R extends job.JobResult = GripJudgement> {
  (scenario: Scenario, strategy: StrategyId, wish: { traces: true }): Ran<R> & { traces: Traces }
  (scenario: Scenario, strategy: StrategyId, wish?: { untilLost?: boolean }): Ran<R>
}

/** Of any job. */
export type AnyRunner = Runner<job.JobResult>

interface Wish {
  untilLost?: boolean
  traces?: true
}

/** Runs grips on a core. */
export const runnerOn = (core: Core): Runner =>
  ((scenario: Scenario, strategy: StrategyId, { untilLost = false, traces }: Wish = {}) =>
    traces ? simulate(scenario, strategy, { core }) : judge(scenario, strategy, { core, untilLost })) as Runner

/** The simulator's own files in this process. */
export const runHere: Runner = runnerOn(sourceCore)
