import { describe, expect, it } from 'vitest'
import { GRAVITY } from '../../sim/axis/arm.ts'
import { axisOf } from '../../sim/index.ts'
import { FRICTIONLESS, IDEAL, runOpenLoop, scenarioOf } from './support.ts'

const PART = 0.4
const JAW = 0.6
const CARRIAGE = 0.15
const ACCELERATION = 8

const AXES = {
  direct: { kind: 'direct', motor: { movingMass: 0.2, forceConstant: 10, inductance: 0.004 } },
  screw: {
    kind: 'screw',
    motor: { inertia: 1e-7, torqueConstant: 0.01 },
    transmission: { lead: 0.01, threadFriction: 0 },
  },
}
type Kind = keyof typeof AXES

/** A slow rise of the acceleration, so that what is left is statics. */
function grip(kind: Kind, layout: string, arm: object) {
  const scenario = scenarioOf(
    IDEAL,
    {
      actuator: AXES[kind],
      jaws: { layout, mass: JAW, padStiffness: 2e5, stroke: 0.05, opening: 0.074, friction: { static: 3 } },
      part: { mass: PART, damping: 1, stiffness: 5e4 },
      arm,
      run: { duration: 3.1 },
    },
    { actuator: { transmission: { ...FRICTIONLESS, viscous: 150, carriageMass: CARRIAGE } } },
  )
  const current = (layout === 'mirrored' ? 60 : 30) / axisOf(scenario.actuator).forcePerAmpere
  return runOpenLoop(scenario, () => current)
}

const move = (axis: string, acceleration = ACCELERATION) => ({
  start: 0.6,
  axis,
  acceleration,
  duration: 2.4,
  jerk: 16,
})

/** Driven masses that move in a straight line: a rotor behind a screw does not feel the arm. */
const driven = (kind: Kind) => JAW + CARRIAGE + (kind === 'direct' ? 0.2 : 0)

describe('arm acceleration along the grip, 30 N a side on an axis without friction (statics)', () => {
  it.each(['direct', 'screw'] as const)(
    'mirrored, %s: ± m a/2 at the two contacts, whatever the jaws weigh',
    (kind) => {
      const { metrics } = grip(kind, 'mirrored', { gravity: 'none', moves: [move('along')] })
      expect(metrics.settledForce).toBeCloseTo(30, 2)
      expect(metrics.minForceInMove! / (30 - (PART * ACCELERATION) / 2)).toBeCloseTo(1, 2)
      expect(metrics.maxForceInMove! / (30 + (PART * ACCELERATION) / 2)).toBeCloseTo(1, 2)
    },
  )

  it.each(['direct', 'screw'] as const)('anvil, %s: the far contact carries jaw, carriage and part', (kind) => {
    const { metrics } = grip(kind, 'anvil', { gravity: 'none', moves: [move('along')] })
    const swing = (driven(kind) + PART) * ACCELERATION
    expect(metrics.settledForce).toBeCloseTo(30, 2)
    expect(metrics.minForceInMove! / (30 - swing)).toBeCloseTo(1, 2)
    expect(metrics.maxForceInMove! / (30 + swing)).toBeCloseTo(1, 2)
  })

  it.each(['direct', 'screw'] as const)('anvil, %s: the near contact carries jaw and carriage only', (kind) => {
    const { traces } = grip(kind, 'anvil', { gravity: 'none', moves: [move('along')] })
    const row = traces.time.findIndex((time) => time > 1.2) // on the plateau
    expect(traces.force[row]! / (30 - driven(kind) * ACCELERATION)).toBeCloseTo(1, 2)
    expect(traces.farForce[row]! / (30 - (driven(kind) + PART) * ACCELERATION)).toBeCloseTo(1, 2)
    // the part shifts towards the contact that loads: force over its pad and half part in series
    expect(traces.partShift[row]! / (traces.farForce[row]! * (1 / 2e5 + 1 / 1e5))).toBeCloseTo(1, 2)
  })

  it('the opposite acceleration swaps the two contacts of a mirrored pair', () => {
    const rows = [ACCELERATION, -ACCELERATION].map((a) => {
      const { traces } = grip('direct', 'mirrored', { gravity: 'none', moves: [move('along', a)] })
      const row = traces.time.findIndex((time) => time > 1.2)
      return [traces.force[row]!, traces.farForce[row]!]
    })
    expect(rows[0]![0]! / rows[1]![1]!).toBeCloseTo(1, 3)
    expect(rows[0]![0]!).toBeGreaterThan(rows[0]![1]!) // the jaw behind the part pushes it
  })
})

describe('gravity along the grip, towards which the driven jaw closes (statics)', () => {
  it.each(['direct', 'screw'] as const)(
    'anvil, %s: jaw and carriage weigh on both contacts, the lifted part on the far one',
    (kind) => {
      const { traces, metrics } = grip(kind, 'anvil', { gravity: 'along', lift: 1 })
      const near = 30 + driven(kind) * GRAVITY
      expect(metrics.settledForce! / near).toBeCloseTo(1, 2)
      const last = traces.time.length - 1
      expect(traces.force[last]! / near).toBeCloseTo(1, 2)
      expect(traces.farForce[last]! / (near + PART * GRAVITY)).toBeCloseTo(1, 2)
    },
  )

  it('mirrored: the jaws balance each other and the part weighs half on each contact', () => {
    const { traces, metrics } = grip('direct', 'mirrored', { gravity: 'along', lift: 1 })
    const last = traces.time.length - 1
    expect(metrics.settledForce! / 30).toBeCloseTo(1, 2)
    expect(traces.force[last]! / (30 - (PART * GRAVITY) / 2)).toBeCloseTo(1, 2)
    expect(traces.farForce[last]! / (30 + (PART * GRAVITY) / 2)).toBeCloseTo(1, 2)
  })
})

describe('hold margin µ·2F/(m |g − a|) − 1 (statics)', () => {
  it.each([
    ['up', GRAVITY + ACCELERATION],
    ['across', Math.hypot(GRAVITY, ACCELERATION)],
  ])('move %s', (axis, pull) => {
    const { metrics } = grip('direct', 'mirrored', { gravity: 'across', moves: [move(axis)] })
    expect(metrics.requiredForce! / ((PART * pull) / (2 * 3))).toBeCloseTo(1, 3)
    expect((metrics.holdMargin! + 1) / ((3 * 2 * 30) / (PART * pull))).toBeCloseTo(1, 2)
  })
})
