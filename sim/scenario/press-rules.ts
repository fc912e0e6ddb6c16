/** What the keys of a press demand of each other. */
import { type Rule, rule } from './rule.ts'
import type { Scenario } from './schema/index.ts'
import type { PressGroups } from './schema/press/index.ts'

const on = (scenario: Scenario) => scenario as unknown as PressGroups

const metres = (value: number | undefined) => `${value} m`

export const PRESS_RULES: Rule[] = [
  rule(
    ['bushing.innerDiameter', 'bushing.diameter'],
    (s) => on(s).bushing.innerDiameter < on(s).bushing.diameter,
    (s) => metres(on(s).bushing.innerDiameter),
    (s) => `less than the outer diameter of ${on(s).bushing.diameter} m`,
  ),
  rule(
    ['bore.outerDiameter', 'bushing.diameter'],
    (s) => on(s).bore.outerDiameter > on(s).bushing.diameter,
    (s) => metres(on(s).bore.outerDiameter),
    (s) => `more than the bushing's diameter of ${on(s).bushing.diameter} m`,
  ),
  rule(
    ['bushing.chamfer.length', 'bushing.chamfer.angle', 'bushing.interference'],
    (s) => on(s).bushing.chamfer.length >= leastChamfer(s),
    (s) => metres(on(s).bushing.chamfer.length),
    (s) => `at least ${Number(leastChamfer(s).toPrecision(4))} m, so that the cone takes up half of the interference`,
  ),
  rule(
    ['joint.friction.static', 'joint.friction.pressing'],
    (s) => on(s).joint.friction.static >= on(s).joint.friction.pressing,
    (s) => String(on(s).joint.friction.static),
    (s) => `at least the friction of pressing of ${on(s).joint.friction.pressing}`,
  ),
  rule(
    ['ram.stroke', 'ram.gap', 'bushing.length'],
    (s) => on(s).ram.stroke > on(s).ram.gap,
    (s) => metres(on(s).ram.stroke),
    (s) => `more than the way to the bore of ${on(s).ram.gap} m`,
  ),
  rule(
    ['approach.creepSpeed', 'approach.speed', 'approach.creepFrom', 'bushing.length'],
    (s) => s.approach.creepSpeed <= s.approach.speed || s.approach.creepFrom === 0,
    (s) => `${s.approach.creepSpeed} m/s`,
    (s) => `at most the approach speed of ${s.approach.speed} m/s`,
  ),
  rule(
    ['window.depth'],
    (s) => (on(s).window.depth.most ?? Infinity) >= on(s).window.depth.least,
    (s) => `a most of ${on(s).window.depth.most} m`,
    (s) => `at least the least depth of ${on(s).window.depth.least} m`,
  ),
  rule(
    ['window.seat'],
    (s) => (on(s).window.seat.most ?? Infinity) >= on(s).window.seat.least,
    (s) => `a most of ${on(s).window.seat.most} N`,
    (s) => `at least the least seating force of ${on(s).window.seat.least} N`,
  ),
  { reads: ['window.band'], check: bandFaults },
]

/** Half of the interference over tan θ [m]. */
function leastChamfer(scenario: Scenario): number {
  const { interference, chamfer } = on(scenario).bushing
  return Math.max(0, interference) / 2 / Math.tan(chamfer.angle)
}

function bandFaults(scenario: Scenario) {
  const { band } = on(scenario).window
  return band.flatMap(({ depth, least, most }, n) => {
    const before = band[n - 1]
    const path = `window.band[${n}]`
    return [
      ...(before && before.depth >= depth
        ? [
            {
              path: `${path}.depth`,
              given: `${depth} m`,
              allowed: `more than the ${before.depth} m of the point before`,
            },
          ]
        : []),
      ...(least > most
        ? [{ path: `${path}.most`, given: `${most} N`, allowed: `at least the least force of ${least} N` }]
        : []),
    ]
  })
}
