/** Drives a strategy without a plant: the axis follows a given path, sample by sample of the servo. */
import type { Scenario } from '../../sim/index.ts'
import { jobOf } from '../../sim/job/index.ts'
import type { Machine } from '../../sim/strategy/machine.ts'
import { machineOf } from '../../sim/strategy/machines.ts'
import type { StrategyKind } from '../../sim/strategy/strategy.ts'

export interface Sample {
  time: number
  position: number
  command: number
  target: number
  engaged: number
  wantedSpeed: number
}

/** The machine of a strategy under a scenario, set out from `travel` [m] at `time` [s]. */
export function machineFor(scenario: Scenario, kind: StrategyKind, travel = 0, time = 0): Machine {
  const machine = machineOf(kind.machine)
  kind.fill(machine, scenario, jobOf(scenario).workOf(scenario))
  machine.begin(travel, time)
  return machine
}

/** `path` gives the position [m] from the time [s], the strategy's last target [m] and its last wanted speed [m/s]. */
export function drive(
  scenario: Scenario,
  kind: StrategyKind,
  path: (time: number, target: number, wantedSpeed: number) => number,
  force: (position: number) => number = () => 0,
): { samples: Sample[]; engaged: number } {
  const machine = machineFor(scenario, kind)
  const samples: Sample[] = []
  for (let k = 0; k < scenario.run.duration * scenario.servo.rate; k++) {
    const time = k / scenario.servo.rate
    const position = path(time, machine.state.target, machine.state.wantedSpeed)
    const command = machine.tick(time, position, force(position))
    samples.push({ time, position, command, ...machine.state })
  }
  return { samples, engaged: machine.state.engaged }
}

/** An axis that follows its profile until it stands before a wall [m]. */
export const wallAt = (wall: number) => (_: number, target: number) => Math.min(target, wall)
