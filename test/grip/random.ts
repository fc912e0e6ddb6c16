/** Random scenarios that pass every rule: drawn from the whole ranges of the schema, or within a decade of the defaults. */
import fc from 'fast-check'
import { checkScenario, faultLine, type GripKind, type Scenario } from '../../sim/index.ts'
import { make } from '../scenario/make.ts'
import { soundInput } from '../scenario/random.ts'
import { full, quantitiesOf } from '../scenario/schema-walk.ts'

type Open<T> = { -readonly [K in keyof T]: Open<T[K]> }
type Tree = Record<string, unknown>
const at = (tree: Tree, key: string) => tree[key] as Tree

const rates = fc
  .tuple(fc.integer({ min: 1050, max: 20_000 }), fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 2 }))
  .map(([current, n, m]) => ({ current: Math.round(current / (n * m)) * n * m, n, m }))

interface Frame {
  rates: { current: number; n: number; m: number }
  duration: number
  gap: number
  coarse: number | null
  instants: number[]
  quiet: boolean[]
}

/** Drawn evenly, where a double of the library is most often next to nothing. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((n) => min + (n / 10_000) * (max - min))

const frameOf = (lively: boolean): fc.Arbitrary<Frame> =>
  fc.record({
    rates,
    duration: lively ? between(0.02, 0.08) : fc.double({ min: 0.01, max: 0.02, noNaN: true }),
    /** Gap between part and pads at the start [m]: small, so that short runs touch. */
    gap: lively ? between(-7, -3.5).map((decade) => 10 ** decade) : fc.double({ min: 1e-5, max: 1e-3, noNaN: true }),
    /** Plant steps in a period of the current loop where the scenario names its step; mostly too few to be stable. */
    coarse: fc.option(fc.integer({ min: 1, max: 10 }), { freq: lively ? 1 : 5 }),
    instants: fc.array(lively ? between(0, 0.99) : fc.double({ min: 0, max: 0.99, noNaN: true }), {
      minLength: 5,
      maxLength: 5,
    }),
    /** No power loss, no release. */
    quiet: fc.tuple(
      fc.boolean().map((quiet) => quiet && lively),
      fc.boolean().map((quiet) => quiet && lively),
    ),
  })

/** Opening of the jaws [m]. */
const NARROWEST = 2e-4

/** Bends a scenario that is sound by the schema until it keeps the rules between keys. */
function bend(input: Tree, { rates, duration, gap, coarse, instants, quiet }: Frame): Scenario {
  const scenario = structuredClone(input) as unknown as Open<Scenario>
  const { actuator, jaws, part, drive, servo, approach, strategies, arm, events, run } = scenario
  const { motor, transmission } = actuator
  run.duration = duration
  run.cycle = null
  drive.currentRate = rates.current
  servo.rate = rates.current / rates.n
  strategies.sensedForce.rate = servo.rate / rates.m
  run.step = coarse === null ? null : 1 / rates.current / coarse
  part.width = Math.min(part.width, 1)
  jaws.opening = Math.max(part.width + gap, NARROWEST)
  motor.peakCurrent = Math.max(motor.peakCurrent, motor.continuousCurrent)
  servo.currentLimit = Math.min(servo.currentLimit, motor.peakCurrent)
  strategies.currentClamp.limit = Math.min(strategies.currentClamp.limit, motor.peakCurrent)
  transmission.breakaway = Math.max(transmission.breakaway, transmission.coulomb)
  jaws.friction.sliding = Math.min(jaws.friction.sliding, jaws.friction.static)
  approach.creepSpeed = Math.min(approach.creepSpeed, approach.speed)
  if (actuator.kind !== 'direct') actuator.motor.openLoop &&= actuator.family === 'step-screw'
  if (actuator.kind === 'screw') {
    const t = actuator.transmission
    t.threadFriction = Math.min(t.threadFriction, (0.9 * Math.PI * t.pitchDiameter * Math.cos(t.flankAngle)) / t.lead)
  }
  arm.moves.forEach((move, k) => {
    move.start = (0.5 + 0.25 * instants[k]!) * duration
  })
  if (arm.lift !== null) arm.lift = 0.5 * instants[3]! * duration
  if (quiet[0]) events.powerLoss = null
  if (quiet[1]) events.release = null
  if (events.powerLoss) events.powerLoss.time = instants[4]! * duration
  if (events.release) events.release.time = (0.8 + 0.19 * instants[3]!) * duration
  const checked = checkScenario(scenario)
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

/** Anything that the format allows. */
export const absurd = (kind: GripKind, lively = false): fc.Arbitrary<Scenario> =>
  fc.tuple(soundInput(kind, false), frameOf(lively)).map(([input, how]) => bend(input, how))

/** Every quantity within a decade of its default, with arm moves, limits and events; `lively`: from anywhere in a part of it, for longer. */
export const plausible = (kind: GripKind, lively = false): fc.Arbitrary<Scenario> => {
  const base = make({ ...full(kind), part: { markForce: 20, yieldForce: 40, crackForce: 60 } })
  const names = quantitiesOf(kind)
  const decade = lively ? between(-1, 1) : fc.double({ min: -1, max: 1, noNaN: true })
  return fc
    .tuple(
      fc.array(decade, { minLength: names.length, maxLength: names.length }),
      lively ? fc.constantFrom(0.1, 0.3, 1) : fc.constant(1),
      frameOf(lively),
    )
    .map(([decades, reach, how]) => {
      const input = structuredClone(base) as unknown as Tree
      names.forEach(({ path, schema }, k) => {
        const keys = path.split(/[.[\]]+/).filter((key) => key !== '')
        const last = keys.pop()!
        const parent = keys.reduce(at, input)
        const value = parent[last]
        if (typeof value !== 'number' || schema.type === 'integer') return
        parent[last] = Math.min(schema.maximum, Math.max(schema.minimum, value * 10 ** (reach * decades[k]!)))
      })
      return bend(input, how)
    })
}
