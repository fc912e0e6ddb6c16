import { clampLimit, fillFollower } from '../follow.ts'
import { MachineId } from '../machines.ts'
import { currentFor, forceBand } from '../newtons.ts'
import type { StrategyKind } from '../strategy.ts'
import { CurrentClamp } from './machine.ts'

export const currentClamp: StrategyKind = {
  id: 'current-clamp',
  label: 'Current clamp',
  summary: 'Follows the profile into the part with limited current, and presses with that limit.',
  machine: MachineId.currentClamp,
  fill(machine, scenario, work) {
    if (!(machine instanceof CurrentClamp)) throw new TypeError('not the machine of current clamp')
    fillFollower(machine.follower, scenario, work)
    machine.limit = clampLimit(scenario)
    machine.limitBefore = scenario.servo.currentLimit
    machine.from = work.clampFrom
  },
  sensed: false,
  setting: { path: 'strategies.currentClamp.limit', label: 'Clamp current', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) => forceBand(scenario, clampLimit(scenario)),
}
