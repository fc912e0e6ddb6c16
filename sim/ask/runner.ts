/** What every study runs its grips with: it is handed one, so that whoever asks decides how a grip is computed. */
import type { GripResult } from '../job/grip/result.ts'
import type { Traces } from '../run/channels.ts'
import { type Core, sourceCore } from '../run/core.ts'
import { judgeGrip, simulateGrip } from '../run/simulate.ts'
import type { Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'

export interface Ran {
  result: GripResult
  /** Least mean force of the two contacts while the part hung in them [N]; null: it never did. */
  weakest: number | null
}

/**
 * Runs one grip; `scenario` keeps the rules of the format. `untilLost`: it may end as soon as the part can no longer be held, and the
 * verdict is then `held` exactly where that of the whole run is. `traces`: a lesson draws what it ran, everybody else does without.
 * Throws a RangeError where the grip would take more steps than a run may.
 */
export interface Runner {
  (scenario: Scenario, strategy: StrategyId, wish: { traces: true }): Ran & { traces: Traces }
  (scenario: Scenario, strategy: StrategyId, wish?: { untilLost?: boolean }): Ran
}

interface Wish {
  untilLost?: boolean
  traces?: true
}

/** Runs grips on a core. */
export const runnerOn = (core: Core): Runner =>
  ((scenario: Scenario, strategy: StrategyId, { untilLost = false, traces }: Wish = {}) =>
    traces ? simulateGrip(scenario, strategy, { core }) : judgeGrip(scenario, strategy, { core, untilLost })) as Runner

/** The simulator's own files in this process. */
export const runHere: Runner = runnerOn(sourceCore)
