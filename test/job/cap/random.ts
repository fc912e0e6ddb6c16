/** Random closures that keep every rule: drawn from the whole ranges of the schema, or within a decade of one that is tight. */
import fc from 'fast-check'
import { checkScenario, faultLine, type Scenario } from '../../../sim/index.ts'
import type { CapGroups } from '../../../sim/scenario/schema/cap/index.ts'
import { JOBS } from '../../../sim/scenario/schema/index.ts'
import { valuesOf } from '../../scenario/random.ts'
import { isQuantity, type Node } from '../../scenario/schema-walk.ts'
import { capOf } from './support.ts'

type Open<T> = T extends object ? { -readonly [K in keyof T]: Open<T[K]> } : T
type Cap = Open<Scenario> & Open<CapGroups>

const frame = fc.record({
  rate: fc.integer({ min: 1100, max: 20_000 }),
  n: fc.integer({ min: 1, max: 10 }),
  m: fc.integer({ min: 1, max: 2 }),
  duration: fc.integer({ min: 10, max: 160 }).map((ms) => ms / 1000),
  gap: fc.double({ min: -5, max: -0.5, noNaN: true }).map((decade) => 10 ** decade),
  instant: fc.double({ min: 0, max: 0.99, noNaN: true }),
  quiet: fc.boolean(),
})

type Frame = typeof frame extends fc.Arbitrary<infer T> ? T : never

/** Bends a closure that is sound by the schema until it keeps the rules between keys. */
function bend(input: object, { rate, n, m, duration, gap, instant, quiet }: Frame): Scenario {
  const drawn = structuredClone(input) as Cap
  const { closure, chuck, window, actuator, drive, servo, strategies, approach, arm, events, run } = drawn
  Object.assign(run, { duration, cycle: null, step: null })
  drive.currentRate = Math.round(rate / (n * m)) * n * m
  servo.rate = drive.currentRate / n
  strategies.sensedForce.rate = servo.rate / m
  const jams = (Math.PI * closure.meanDiameter * Math.cos(closure.flankAngle)) / closure.lead
  closure.threadFriction = Math.min(closure.threadFriction, 0.9 * jams)
  if (closure.stripTorque !== undefined) closure.stripTorque = Math.max(closure.stripTorque, 1.01 * closure.runDown)
  closure.runDown = Math.min(closure.runDown, (closure.stripTorque ?? Infinity) / 1.005)
  if (window.torque.most !== undefined) window.torque.most = Math.max(window.torque.most, window.torque.least)
  chuck.startAngle = gap
  if (quiet) closure.engagement = Math.min(closure.engagement, gap)
  const { motor, transmission } = actuator
  motor.peakCurrent = Math.max(motor.peakCurrent, motor.continuousCurrent)
  servo.currentLimit = Math.min(servo.currentLimit, motor.peakCurrent)
  strategies.currentClamp.limit = Math.min(strategies.currentClamp.limit, motor.peakCurrent)
  transmission.breakaway = Math.max(transmission.breakaway, transmission.coulomb)
  if (actuator.kind === 'spindle') actuator.motor.openLoop &&= actuator.family === 'step-spindle'
  approach.creepSpeed = Math.min(approach.creepSpeed, approach.speed)
  arm.moves = []
  if (quiet) Object.assign(events, { powerLoss: null, release: null })
  if (events.powerLoss) events.powerLoss.time = instant * duration
  if (events.release) events.release.time = (0.8 + 0.19 * instant) * duration
  const checked = checkScenario(drawn)
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

const FORMAT = JOBS.cap.spindle!

const absurd = (): fc.Arbitrary<Scenario> => {
  const { requirements: _, spread: __, ...properties } = FORMAT.properties
  const sound = valuesOf({ type: 'object', properties } as unknown as Node, false) as fc.Arbitrary<object>
  return fc.tuple(sound, frame).map(([input, how]) => bend(input, how))
}

/** Every quantity up to a decade off one that is tight, in short runs that begin just before the thread. */
const near = (): fc.Arbitrary<Scenario> => {
  const base = capOf({
    actuator: { motor: { peakCurrent: 9 }, transmission: { gearRatio: 10 } },
    strategies: { thresholdStop: { threshold: 2.5 }, currentClamp: { limit: 2.5 }, sensedForce: { target: 1, kp: 20 } },
    servo: { kp: 20, ki: 20, kd: 0.2 },
    closure: { engagement: 0.1, stripTorque: 2.5, misstart: { after: 0.15 } },
    liner: { stiffness: 3e6 },
    window: { torque: { least: 0.3, most: 2 }, leastTurns: 0.05 },
    approach: { overtravel: 4, acceleration: 3000, jerk: 500_000, speed: 30 },
  })
  const decades = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 200, maxLength: 200 })
  const jammed = fc.boolean()
  return fc.tuple(decades, fc.constantFrom(0.05, 0.3, 1), jammed, frame).map(([drawn, reach, jams, how]) => {
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
    const given = scaled(FORMAT as unknown as Node, base) as Cap
    if (!jams) given.closure.misstart = null
    return bend(given, how)
  })
}

/** Half of them anywhere in the allowed ranges. */
export const drawnCaps: fc.Arbitrary<Scenario> = fc.oneof(absurd(), near())
