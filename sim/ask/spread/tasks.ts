/**
 * The work of studies of many grips, cut so that any number of workers can share it: each task is prepared once from what all its
 * items share, then does them one by one, in any order.
 */
import type { Answer, ReplayedLogs } from '../../log/replayed.ts'
import { replaying } from '../../log/replayed.ts'
import { type Core, sourceCore } from '../../run/core.ts'
import type { Scenario } from '../../scenario/index.ts'
import { varying } from '../../scenario/vary.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { AnyRunner } from '../runner.ts'
import { type BandStudy, type Envelopes, envelopeRunner } from './band.ts'
import { type Batch, batchRunner, type SpreadStudy } from './batch.ts'
import { partsFrom } from './draw.ts'
import { type Outcome, outcomeOf } from './outcome.ts'

/** Parts given by the shares of their laws, each with the seed of its noise. */
export interface Placed {
  shares: Float64Array[]
  seeds: number[]
}

/** Values at given paths, each row a scenario, with the noise of the file. */
export interface Valued {
  paths: string[]
  values: number[][]
}

export interface Tasks {
  /** A batch of the parts of a study by one strategy. */
  spread: { shared: SpreadStudy; item: { batch: number; strategy: StrategyId }; result: Batch }
  /** Between what the traces of a batch's parts run. */
  envelopes: { shared: BandStudy; item: { batch: number; strategy: StrategyId }; result: Envelopes }
  /** Parts where their laws are asked for by place. */
  placed: { shared: { scenario: Scenario; strategy: StrategyId }; item: Placed; result: Outcome[] }
  /** Scenarios that differ from one in the values at some paths. */
  valued: { shared: { scenario: Scenario; strategy: StrategyId }; item: Valued; result: Outcome[] }
  /** Logs laid over a scenario with other values; null where its rules forbid them. */
  replayed: { shared: ReplayedLogs; item: number[]; result: Answer[] | null }
}

export type TaskName = keyof Tasks

type Task<T extends TaskName> = (
  shared: Tasks[T]['shared'],
  run: AnyRunner,
  core: Core,
) => (item: Tasks[T]['item']) => Tasks[T]['result']

const TASKS: { [T in TaskName]: Task<T> } = {
  spread: (study, run) => {
    const next = batchRunner(study, run)
    return ({ batch, strategy }) => next(batch, strategy)
  },
  envelopes: (study, run) => {
    const next = envelopeRunner(study, run)
    return ({ batch, strategy }) => next(batch, strategy)
  },
  placed: ({ scenario, strategy }, run) => {
    const part = partsFrom(scenario)
    return ({ shares, seeds }) => shares.map((each, at) => outcomeOf(part(at, each, seeds[at]!), strategy, run))
  },
  valued: ({ scenario, strategy }, run) => {
    return ({ paths, values }) => {
      const vary = varying(scenario, paths)
      return values.map((row) => outcomeOf(vary(row), strategy, run))
    }
  },
  replayed: (logs, _run, core) => replaying(logs, core),
}

/** Prepares a task. Throws a Refusal where the correlations of the scenario contradict each other. */
export const prepared = <T extends TaskName>(
  task: T,
  shared: Tasks[T]['shared'],
  run: AnyRunner,
  core: Core,
): ((item: Tasks[T]['item']) => Tasks[T]['result']) => (TASKS[task] as Task<T>)(shared, run, core)

/** Whoever has workers: does all items, in whatever order, and tells each result with its place. */
export interface Crew {
  /** How many items are worked on at once. */
  size: number
  /** `told` returns whether to go on. Rejects where a task cannot be prepared, or an item was tried twice in vain. */
  work<T extends TaskName>(
    task: T,
    shared: Tasks[T]['shared'],
    items: Tasks[T]['item'][],
    told: (result: Tasks[T]['result'], at: number) => boolean,
  ): Promise<void>
}

/** One worker: this process. */
export const crewHere = (run: AnyRunner, core: Core = sourceCore): Crew => ({
  size: 1,
  async work(task, shared, items, told) {
    const next = prepared(task, shared, run, core)
    for (const [at, item] of items.entries()) if (!told(next(item), at)) return
  },
})
