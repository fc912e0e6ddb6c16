/** What the keys of a closure demand of each other. */
import { type Rule, rule } from './rule.ts'
import type { CapGroups } from './schema/cap/index.ts'
import type { Scenario } from './schema/index.ts'

const on = (scenario: Scenario) => scenario as unknown as CapGroups

export const CAP_RULES: Rule[] = [
  rule(
    ['closure.threadFriction', 'closure.lead', 'closure.meanDiameter', 'closure.flankAngle'],
    (s) => turnsOn(on(s).closure),
    (s) => String(on(s).closure.threadFriction),
    () => 'less than what jams the thread: friction · lead < π · mean diameter · cos(flank half-angle)',
  ),
  rule(
    ['window.torque', 'closure.runDown'],
    (s) => (on(s).window.torque.most ?? Infinity) >= on(s).window.torque.least,
    (s) => `a most of ${on(s).window.torque.most} N·m`,
    (s) => `at least the least torque of ${on(s).window.torque.least} N·m`,
  ),
  rule(
    ['closure.stripTorque', 'closure.runDown'],
    (s) => (on(s).closure.stripTorque ?? Infinity) > on(s).closure.runDown,
    (s) => `${on(s).closure.stripTorque} N·m`,
    (s) => `none, or more than the run-down torque of ${on(s).closure.runDown} N·m`,
  ),
  rule(
    ['approach.creepSpeed', 'approach.speed', 'approach.creepFrom', 'closure.engagement'],
    (s) => s.approach.creepSpeed <= s.approach.speed || s.approach.creepFrom === 0,
    (s) => `${s.approach.creepSpeed} rad/s`,
    (s) => `at most the approach speed of ${s.approach.speed} rad/s`,
  ),
]

const turnsOn = ({ threadFriction, lead, meanDiameter, flankAngle }: CapGroups['closure']) =>
  threadFriction * lead < Math.PI * meanDiameter * Math.cos(flankAngle)
