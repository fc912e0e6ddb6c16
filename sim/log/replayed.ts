/** Logs laid over a scenario again and again, with other values at some of its keys. */
import type { Core } from '../run/core.ts'
import { Refusal, type Scenario } from '../scenario/index.ts'
import { varying } from '../scenario/vary.ts'
import { interpolated } from './grid.ts'
import type { AnswerChannel, Measured } from './measured.ts'
import { type Answer, Replayer, type ReplaySetup } from './replay.ts'

export type { Answer }

/** What is free beside the quantities of a scenario: by how much the log shows everything late [s]. */
export const DELAY = 'log.delay'

export const COULOMB = 'actuator.transmission.coulomb'
export const BREAKAWAY = 'actuator.transmission.breakaway'

export interface ReplayedLogs {
  scenario: Scenario
  /** Keys of the scenario, or `DELAY`. */
  paths: string[]
  logs: { measured: Measured; setup: ReplaySetup }[]
  /** Where Coulomb friction is free and break-away is not: by how much it stays above [N]; null: it stays where it is. */
  rise: number | null
  /** What is looked at; the other channels come back empty. Null: all. */
  shown: AnswerChannel[] | null
}

/** What the model shows of each log with given values; null where the rules of the format or the step forbid them. */
export function replaying(
  { scenario, paths, logs, rise, shown }: ReplayedLogs,
  core: Core,
): (values: number[]) => Answer[] | null {
  const replayers = logs.map(({ measured, setup }) => new Replayer(measured, setup))
  const own = paths.filter((path) => path !== DELAY)
  const vary = varying(scenario, rise === null ? own : [...own, BREAKAWAY])
  return (values) => {
    const given = values.filter((_, p) => paths[p] !== DELAY)
    const { scenario: next, faults } = vary(
      rise === null ? given : [...given, Math.max(0, rise) + values[paths.indexOf(COULOMB)]!],
    )
    if (faults.length > 0) return null
    const delay = values[paths.indexOf(DELAY)] ?? 0
    try {
      return replayers.map((replayer) => late(replayer.run(next, core, shown), replayer.measured.time, delay))
    } catch (error) {
      if (error instanceof Refusal) return null
      throw error
    }
  }
}

/** The same, seen so much later [s]. */
function late(answer: Answer, time: Float64Array, delay: number): Answer {
  if (delay === 0) return answer
  const before = time.map((t) => t - delay)
  return Object.fromEntries(
    Object.entries(answer).map(([channel, values]) => [
      channel,
      values.length > 0 ? interpolated(time, values, before) : values,
    ]),
  ) as unknown as Answer
}
