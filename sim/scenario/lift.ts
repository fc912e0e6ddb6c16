import type { Scenario } from './schema/index.ts'

/** When the support under the part goes [s]: as named, with the first move, or at two thirds of the run. */
export function liftTime({ arm, run }: Pick<Scenario, 'arm' | 'run'>): number {
  if (arm.lift !== null) return arm.lift
  const starts = arm.moves.map((move) => move.start)
  return starts.length > 0 ? Math.min(...starts) : (2 / 3) * run.duration
}
