/** What the keys of a web demand of each other. */

import type { Fault } from './fault.ts'
import { type LineRamp, rampEnd } from './line-ramps.ts'
import { type Rule, rule } from './rule.ts'
import type { Scenario } from './schema/index.ts'
import type { WebGroups } from './schema/web/index.ts'

const on = (scenario: Scenario) => scenario as unknown as WebGroups

const metres = (value: number | undefined) => `${value} m`

export const WEB_RULES: Rule[] = [
  rule(
    ['roll.radius', 'roll.coreRadius', 'roll.kind'],
    (s) => on(s).roll.kind === 'draws' || on(s).roll.radius >= on(s).roll.coreRadius,
    (s) => metres(on(s).roll.radius),
    (s) => `at least the core's radius of ${on(s).roll.coreRadius} m`,
  ),
  rule(
    ['roll.runout', 'roll.radius'],
    (s) => on(s).roll.runout <= on(s).roll.radius / 2,
    (s) => metres(on(s).roll.runout),
    (s) => `at most half of the radius of ${on(s).roll.radius} m`,
  ),
  rule(
    ['line.runout', 'line.radius'],
    (s) => on(s).line.runout <= on(s).line.radius / 2,
    (s) => metres(on(s).line.runout),
    (s) => `at most half of the radius of ${on(s).line.radius} m`,
  ),
  rule(
    ['idlers.breakaway', 'idlers.coulomb'],
    (s) => on(s).idlers.breakaway >= on(s).idlers.coulomb,
    (s) => `${on(s).idlers.breakaway} N`,
    (s) => `at least the running drag of ${on(s).idlers.coulomb} N`,
  ),
  rule(
    ['window.most', 'window.least', 'window.from'],
    (s) => on(s).window.most > on(s).window.least,
    (s) => `${on(s).window.most} N`,
    (s) => `more than the least tension of ${on(s).window.least} N`,
  ),
  rule(
    ['window.from', 'run.duration'],
    (s) => on(s).window.from < s.run.duration,
    (s) => `${on(s).window.from} s`,
    (s) => `a time within the run of ${s.run.duration} s`,
  ),
  rule(
    ['approach.creepSpeed', 'approach.speed', 'approach.creepFrom', 'web.slack'],
    (s) => s.approach.creepSpeed <= s.approach.speed || s.approach.creepFrom === 0,
    (s) => `${s.approach.creepSpeed} rad/s`,
    (s) => `at most the speed of drawing taut of ${s.approach.speed} rad/s`,
  ),
  rule(
    ['events.release', 'web'],
    (s) => s.events.release === null,
    () => 'a release',
    () => 'null: a web is not let go on purpose, stop its line instead',
  ),
  { reads: ['line.ramps', 'run.duration'], check: rampFaults },
]

function rampFaults(scenario: Scenario): Fault[] {
  const { ramps } = on(scenario).line
  const { duration } = scenario.run
  let end = 0
  let speed = 0
  return ramps.flatMap((ramp: LineRamp, n) => {
    const path = `line.ramps[${n}].start`
    const given = `${ramp.start} s`
    const early = n > 0 && ramp.start < end - 1e-9
    const faults = early
      ? [{ path, given, allowed: `at least the ${Number(end.toPrecision(6))} s at which the ramp before is over` }]
      : ramp.start >= duration
        ? [{ path, given, allowed: `a time within the run of ${duration} s` }]
        : []
    end = rampEnd(ramp, speed)
    speed = ramp.speed
    return faults
  })
}
