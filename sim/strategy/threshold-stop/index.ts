import { clampLimit } from '../current-clamp/limit.ts'
import { fillFollower } from '../follow.ts'
import { MachineId } from '../machine-id.ts'
import { currentFor, forceBand } from '../newtons.ts'
import { POSITION_CAUSES, POSITION_SEARCH, readable, set } from '../position.ts'
import type { StrategyKind } from '../strategy.ts'
import type { ThresholdStop } from './machine.ts'

const THRESHOLD = 'strategies.thresholdStop.threshold'
const CONFIRM = 'strategies.thresholdStop.confirmTime'
const FILTER = 'strategies.thresholdStop.filter'
const AFTERWARDS = 'strategies.thresholdStop.afterwards'
const CLAMP = 'strategies.currentClamp.limit'

export const thresholdStop: StrategyKind<ThresholdStop> = {
  id: 'threshold-stop',
  label: 'Threshold stop',
  summary: 'Halts the move when the current stands above a threshold, and holds that position.',
  machine: MachineId.thresholdStop,
  fill(machine, scenario, work) {
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
  setting: { brief: 'stops at', path: THRESHOLD, label: 'Threshold', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) => {
    const { threshold, afterwards } = scenario.strategies.thresholdStop
    return forceBand(scenario, afterwards === 'press' ? clampLimit(scenario) : threshold)
  },
  set: (current) => [set(THRESHOLD, current), set(CLAMP, current)], // it presses with the clamp where it does after a stop
  search: {
    ...POSITION_SEARCH,
    settings: [THRESHOLD, CONFIRM, FILTER],
    first: { [CONFIRM]: ({ servo }) => 1 / servo.rate, [FILTER]: ({ servo }) => 1 / servo.rate },
  },
  causes: {
    ...POSITION_CAUSES,
    detection: () => [set(CONFIRM, 0), set(FILTER, 0)],
    /** After the stop the axis presses with the threshold's current instead of holding the position where the stop was commanded. */
    stopping({ strategies }) {
      const { afterwards, threshold } = strategies.thresholdStop
      return afterwards === 'press' ? [] : [set(AFTERWARDS, 'press'), set(CLAMP, threshold)]
    },
  },
  feels: 'effort',
  ground(facts) {
    const { openLoop, impact, wanted, share } = facts
    if (openLoop) return { kind: 'fixed current' }
    if (!facts.readable || impact === null) return readable(facts)
    return impact > wanted
      ? { kind: 'impact above wanted', impact, wanted }
      : { kind: 'impact below wanted', impact, share }
  },
  sheet: [
    { path: THRESHOLD, label: 'Threshold', unit: 'A', gives: 'current' },
    { path: CONFIRM, label: 'Confirm time, samples', unit: 's', gives: 'time' },
  ],
  look: {
    dash: [],
    border: 'solid',
    light: { line: '#0072b2', text: '#006ba8' },
    dark: { line: '#4aa8e0', text: '#4aa8e0' },
  },
}
