/** Random presses that keep every rule: drawn from the whole ranges of the schema, or within a decade of a press that seats. */
import fc from 'fast-check'
import { checkScenario, faultLine, type GripKind, type Scenario } from '../../../sim/index.ts'
import { JOBS } from '../../../sim/scenario/schema/index.ts'
import type { PressGroups } from '../../../sim/scenario/schema/press/index.ts'
import { valuesOf } from '../../scenario/random.ts'
import { isQuantity, KINDS, type Node } from '../../scenario/schema-walk.ts'
import { pressOf } from './support.ts'

type Open<T> = T extends object ? { -readonly [K in keyof T]: Open<T[K]> } : T
type Press = Open<Scenario> & Open<PressGroups>

const frame = fc.record({
  rate: fc.integer({ min: 1100, max: 20_000 }),
  n: fc.integer({ min: 1, max: 10 }),
  m: fc.integer({ min: 1, max: 2 }),
  duration: fc.integer({ min: 10, max: 80 }).map((ms) => ms / 1000),
  gap: fc.double({ min: -7, max: -3.5, noNaN: true }).map((decade) => 10 ** decade),
  instant: fc.double({ min: 0, max: 0.99, noNaN: true }),
  quiet: fc.boolean(),
})

type Frame = typeof frame extends fc.Arbitrary<infer T> ? T : never

/** Bends a press that is sound by the schema until it keeps the rules between keys. */
function bend(input: object, { rate, n, m, duration, gap, instant, quiet }: Frame): Scenario {
  const press = structuredClone(input) as Press
  const { bushing, bore, joint, ram, window, actuator, drive, servo, strategies, approach, arm, events, run } = press
  Object.assign(run, { duration, cycle: null, step: null })
  drive.currentRate = Math.round(rate / (n * m)) * n * m
  servo.rate = drive.currentRate / n
  strategies.sensedForce.rate = servo.rate / m
  bushing.innerDiameter = Math.min(bushing.innerDiameter, 0.98 * bushing.diameter)
  bore.outerDiameter = Math.min(5, Math.max(bore.outerDiameter, 1.02 * bushing.diameter))
  const { length, angle } = bushing.chamfer
  bushing.interference = Math.min(bushing.interference, 1.99 * length * Math.tan(angle))
  joint.friction.static = Math.max(joint.friction.static, joint.friction.pressing)
  ram.gap = gap
  ram.stroke = Math.max(ram.stroke, 2 * gap)
  if (window.depth.most !== undefined) window.depth.most = Math.max(window.depth.most, window.depth.least)
  if (window.seat.most !== undefined) window.seat.most = Math.max(window.seat.most, window.seat.least)
  window.band.sort((a, b) => a.depth - b.depth)
  window.band.forEach((point, k) => {
    point.depth = k === 0 ? Math.min(point.depth, 0.5) : Math.max(point.depth, window.band[k - 1]!.depth + 1e-6)
    point.most = Math.max(point.most, point.least)
  })
  if (window.band.some(({ depth }) => depth > 1)) window.band = []
  bendAxis(press)
  approach.creepSpeed = Math.min(approach.creepSpeed, approach.speed)
  if (actuator.kind !== 'direct') actuator.motor.openLoop &&= actuator.family === 'step-screw'
  arm.moves = []
  arm.lift = null
  if (quiet) Object.assign(events, { powerLoss: null, release: null })
  if (events.powerLoss) events.powerLoss.time = instant * duration
  if (events.release) events.release.time = (0.8 + 0.19 * instant) * duration
  const checked = checkScenario(press)
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

function bendAxis({ actuator, servo, strategies }: Press): void {
  const { motor, transmission } = actuator
  motor.peakCurrent = Math.max(motor.peakCurrent, motor.continuousCurrent)
  servo.currentLimit = Math.min(servo.currentLimit, motor.peakCurrent)
  strategies.currentClamp.limit = Math.min(strategies.currentClamp.limit, motor.peakCurrent)
  transmission.breakaway = Math.max(transmission.breakaway, transmission.coulomb)
  if (actuator.kind !== 'screw') return
  const t = actuator.transmission
  t.threadFriction = Math.min(t.threadFriction, (0.9 * Math.PI * t.pitchDiameter * Math.cos(t.flankAngle)) / t.lead)
}

const sound = (kind: GripKind) => {
  const { requirements: _, spread: __, ...properties } = JOBS.press[kind]!.properties
  return valuesOf({ type: 'object', properties } as unknown as Node, false) as fc.Arbitrary<object>
}

const absurd = (kind: GripKind) => fc.tuple(sound(kind), frame).map(([input, how]) => bend(input, how))

/** Every quantity up to a decade off one that seats, in short runs that begin just before the bore. */
const near = (kind: GripKind) => {
  const base = pressOf({
    actuator: { kind },
    bushing: { mostForce: 400, tilt: 0.05 },
    bore: { shoulder: { depth: 0.0005 } },
    window: {
      mostForce: 500,
      depth: { least: 0.0004 },
      band: [
        { depth: 0.0001, least: 1, most: 8 },
        { depth: 0.0004, least: 4, most: 14 },
      ],
    },
    approach: { overtravel: 0.001, acceleration: 50, jerk: 20_000 },
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
    return bend(scaled(JOBS.press[kind] as unknown as Node, base) as object, how)
  })
}

/** Half of them anywhere in the allowed ranges. */
export const drawnPresses: fc.Arbitrary<Scenario> = fc.oneof(...KINDS.flatMap((kind) => [absurd(kind), near(kind)]))
