/** Drives a strategy without a plant: the axis follows a given path, sample by sample of the servo. */
import type { Scenario } from '../../sim/index.ts'
import type { Strategy, StrategyKind } from '../../sim/strategy/strategy.ts'

export interface Sample {
  time: number
  position: number
  command: number
  target: number
  engaged: number
}

/** `path` gives the position [m] from the time [s] and the strategy's last target [m]. */
export function drive(
  scenario: Scenario,
  kind: StrategyKind,
  path: (time: number, target: number) => number,
  force: (position: number) => number = () => 0,
): { samples: Sample[]; strategy: Strategy } {
  const strategy = kind.create(scenario)
  const samples: Sample[] = []
  for (let k = 0; k < scenario.run.duration * scenario.servo.rate; k++) {
    const time = k / scenario.servo.rate
    const position = path(time, strategy.target)
    const command = strategy.tick({ time, position, force: force(position) })
    samples.push({ time, position, command, target: strategy.target, engaged: strategy.engaged })
  }
  return { samples, strategy }
}

/** An axis that follows its profile until it stands before a wall [m]. */
export const wallAt = (wall: number) => (_: number, target: number) => Math.min(target, wall)
