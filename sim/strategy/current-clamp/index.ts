import { fillFollower } from '../follow.ts'
import { MachineId } from '../machine-id.ts'
import { currentFor, forceBand } from '../newtons.ts'
import { POSITION_CAUSES, POSITION_SEARCH, readable, set } from '../position.ts'
import type { StrategyKind } from '../strategy.ts'
import { clampLimit } from './limit.ts'
import type { CurrentClamp } from './machine.ts'

const LIMIT = 'strategies.currentClamp.limit'

export const currentClamp: StrategyKind<CurrentClamp> = {
  id: 'current-clamp',
  label: 'Current clamp',
  summary: 'Follows the profile into the part with limited current, and presses with that limit.',
  machine: MachineId.currentClamp,
  fill(machine, scenario, work) {
    fillFollower(machine.follower, scenario, work)
    machine.limit = clampLimit(scenario)
    machine.limitBefore = scenario.servo.currentLimit
    machine.from = work.travelAt(scenario.strategies.currentClamp.from)
  },
  sensed: false,
  setting: { brief: 'clamps at', path: LIMIT, label: 'Clamp current', unit: 'A' },
  settingFor: currentFor,
  forceOf: (scenario) => forceBand(scenario, clampLimit(scenario)),
  set: (current) => [set(LIMIT, current)],
  search: { ...POSITION_SEARCH, settings: [LIMIT], first: {} },
  causes: POSITION_CAUSES,
  feels: 'limit',
  ground(facts) {
    const { openLoop, continuous, wanted, impact, limit } = facts
    if (openLoop) return { kind: 'stalled rotor' }
    if (continuous < wanted) return { kind: 'too weak', continuous, wanted }
    return impact !== null && impact > limit ? { kind: 'impact damages', impact, limit } : readable(facts)
  },
  sheet: [{ path: LIMIT, label: 'Clamp current', unit: 'A', gives: 'current' }],
  look: {
    dash: [7, 4],
    border: 'dashed',
    light: { line: '#c77f00', text: '#8a5600' },
    dark: { line: '#e69f00', text: '#e69f00' },
  },
}
