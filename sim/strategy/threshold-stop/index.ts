import { clampLimit, fillFollower } from '../follow.ts'
import { MachineId } from '../machines.ts'
import { currentFor, forceBand } from '../newtons.ts'
import type { StrategyKind } from '../strategy.ts'
import { ThresholdStop } from './machine.ts'

export const thresholdStop: StrategyKind = {
  id: 'threshold-stop',
  label: 'Threshold stop',
  summary: 'Halts the move when the current stands above a threshold, and holds that position.',
  machine: MachineId.thresholdStop,
  fill(machine, scenario, work) {
    if (!(machine instanceof ThresholdStop)) throw new TypeError('not the machine of threshold stop')
    const { threshold, confirmTime, filter, afterwards } = scenario.strategies.thresholdStop
    const period = 1 / scenario.servo.rate
    fillFollower(machine.follower, scenario, work)
    machine.threshold = threshold
    machine.confirm = confirmTime
    machine.period = period
    machine.limit = scenario.servo.currentLimit
    machine.press = afterwards === 'press' ? clampLimit(scenario) : Number.NaN
    machine.filter.set(filter, period)
  },
  sensed: false,
  setting: { path: 'strategies.thresholdStop.threshold', label: 'Threshold', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) => {
    const { threshold, afterwards } = scenario.strategies.thresholdStop
    return forceBand(scenario, afterwards === 'press' ? clampLimit(scenario) : threshold)
  },
}
