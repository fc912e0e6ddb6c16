/** Whether an output that moves is still on the way that its drive is told to go, or only settles at the end of it. */
import type { Scenario } from '../scenario/index.ts'

/** Share of the slowest speed of its way from which on it counts as on it; common practice, no source. */
const ON_ITS_WAY = 0.5

/** `speed` [m/s or rad/s] */
export function isDriven({ approach }: Scenario, speed: number): boolean {
  const slowest = approach.creepFrom > 0 ? Math.min(approach.speed, approach.creepSpeed) : approach.speed
  return speed > ON_ITS_WAY * slowest
}
