/** Random webs that keep every rule: drawn from the whole ranges of the schema, or within a decade of one that is taut. */
import fc from 'fast-check'
import { checkScenario, faultLine, type Scenario } from '../../../sim/index.ts'
import { JOBS } from '../../../sim/scenario/schema/index.ts'
import type { WebGroups } from '../../../sim/scenario/schema/web/index.ts'
import { valuesOf } from '../../scenario/random.ts'
import { isQuantity, type Node } from '../../scenario/schema-walk.ts'
import { webOf } from './support.ts'

type Open<T> = T extends object ? { -readonly [K in keyof T]: Open<T[K]> } : T
type Web = Open<Scenario> & Open<WebGroups>

const frame = fc.record({
  rate: fc.integer({ min: 1100, max: 20_000 }),
  n: fc.integer({ min: 1, max: 10 }),
  m: fc.integer({ min: 1, max: 2 }),
  duration: fc.integer({ min: 30, max: 120 }).map((ms) => ms / 1000),
  slack: fc.double({ min: -7, max: -3.5, noNaN: true }).map((decade) => 10 ** decade),
  instant: fc.double({ min: 0, max: 0.99, noNaN: true }),
  quiet: fc.boolean(),
})

type Frame = typeof frame extends fc.Arbitrary<infer T> ? T : never

/** Bends a web that is sound by the schema until it keeps the rules between keys. */
function bend(input: object, { rate, n, m, duration, slack, instant, quiet }: Frame): Scenario {
  const open = structuredClone(input) as Web
  const { web, roll, line, idlers, window, drive, servo, strategies, approach, arm, events, run } = open
  Object.assign(run, { duration, cycle: null, step: null })
  drive.currentRate = Math.round(rate / (n * m)) * n * m
  servo.rate = drive.currentRate / n
  strategies.sensedForce.rate = servo.rate / m
  web.slack = slack
  roll.coreRadius = Math.min(roll.coreRadius, roll.radius)
  roll.runout = Math.min(roll.runout, roll.radius / 2)
  line.runout = Math.min(line.runout, line.radius / 2)
  line.ramps = line.ramps.slice(0, 1)
  for (const ramp of line.ramps) ramp.start = Math.min(ramp.start, duration / 2)
  idlers.breakaway = Math.max(idlers.breakaway, idlers.coulomb)
  window.least = Math.min(window.least, 0.99 * window.most)
  window.from = Math.min(window.from, 0.7 * duration)
  bendAxis(open)
  approach.creepSpeed = Math.min(approach.creepSpeed, approach.speed)
  Object.assign(arm, { moves: [], lift: null })
  events.release = null
  if (quiet) events.powerLoss = null
  if (events.powerLoss) events.powerLoss.time = instant * duration
  const checked = checkScenario(open)
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

function bendAxis({ actuator, servo, strategies }: Web): void {
  const { motor, transmission } = actuator
  motor.peakCurrent = Math.max(motor.peakCurrent, motor.continuousCurrent)
  servo.currentLimit = Math.min(servo.currentLimit, motor.peakCurrent)
  strategies.currentClamp.limit = Math.min(strategies.currentClamp.limit, motor.peakCurrent)
  transmission.breakaway = Math.max(transmission.breakaway, transmission.coulomb)
  if (actuator.kind === 'spindle') actuator.motor.openLoop &&= actuator.family === 'step-spindle'
}

function absurd() {
  const { requirements: _, spread: __, ...properties } = JOBS.web.spindle!.properties
  const drawn = valuesOf({ type: 'object', properties } as unknown as Node, false) as fc.Arbitrary<object>
  return fc.tuple(drawn, frame).map(([input, how]) => bend(input, how))
}

/** Every quantity up to a decade off one that is taut, in short runs with little slack. */
function near() {
  const base = webOf({
    web: { slack: 1e-5, breakTension: 60, damping: 0.01 },
    span: { length: 0.3 },
    idlers: { coulomb: 0.1, breakaway: 0.12 },
    roll: { radius: 0.02, coreRadius: 0.01, inertia: 1e-4 },
    line: { ramps: [{ start: 0.05, speed: 0.1, acceleration: 2, jerk: 100 }] },
    window: { least: 0.3, most: 50, from: 0.04 },
    approach: { speed: 2, acceleration: 100, jerk: 20_000, overtravel: 0.05 },
    strategies: { sensedForce: { target: 5, contactForce: 0.5 } },
    run: { duration: 0.1 },
  })
  const decades = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 200, maxLength: 200 })
  return fc.tuple(decades, fc.constantFrom(0.05, 0.3, 1), frame).map(([drawn, reach, how]) => {
    let k = 0
    const scaled = (node: Node, value: unknown): unknown => {
      if (typeof value === 'number' && isQuantity(node) && node.type !== 'integer')
        return Math.min(node.maximum, Math.max(node.minimum, value * 10 ** (reach * drawn[k++ % drawn.length]!)))
      const inner = (node.anyOf as Node[] | undefined)?.find(({ type }) => type !== 'null') ?? node
      if (Array.isArray(value)) return value.map((each) => scaled(inner.items as Node, each))
      if (typeof value !== 'object' || value === null) return value
      const known = inner.properties as Record<string, Node>
      return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, scaled(known[key]!, each)]))
    }
    return bend(scaled(JOBS.web.spindle as unknown as Node, base) as object, how)
  })
}

/** Half of them anywhere in the allowed ranges. */
export const drawnWebs: fc.Arbitrary<Scenario> = fc.oneof(absurd(), near())
