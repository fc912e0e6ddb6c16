import { describe, expect, it } from 'vitest'
import { FRICTIONLESS, IDEAL, runOpenLoop, scenarioOf } from './support.ts'

const DEGREE = Math.PI / 180
const SCREW = { kind: 'screw', motor: { torqueConstant: 0.02, inertia: 3e-7 } }
const RACK = { kind: 'rack', motor: { torqueConstant: 0.05, inertia: 2e-6 } }
const DIRECT = { kind: 'direct', motor: { forceConstant: 12, movingMass: 0.2 } }

/** Closes with a current, loses the supply at 0.8 s, and says what is left of the force at 1.6 s. */
function left(
  actuator: object,
  transmission: object,
  windings: string,
  current: number | ((time: number) => number) = 1,
  extra: object = {},
) {
  const scenario = scenarioOf(
    IDEAL,
    {
      actuator,
      jaws: { opening: 0.074, stroke: 0.05 },
      part: { stiffness: 5e4, damping: 2 },
      events: { powerLoss: { time: 0.8, windings } },
      run: { duration: 1.6 },
    },
    // Stiff bristles, so that presliding gives back next to nothing of the squeeze.
    { actuator: { transmission: { ...FRICTIONLESS, viscous: 40, bristleStiffness: 3e8, ...transmission } } },
    { ...extra },
  )
  const { traces, metrics, events } = runOpenLoop(scenario, typeof current === 'number' ? () => current : current)
  expect(events.unstable).toBeNull()
  return { traces, settled: metrics.settledForce!, share: traces.force.at(-1)! / metrics.settledForce! }
}

const trapezoidal = (lead: number, pitchDiameter: number, threadFriction: number) => ({
  lead,
  pitchDiameter,
  threadFriction,
  flankAngle: 15 * DEGREE,
})

describe.each(['open', 'shorted'])(
  'supply lost, windings %s: a thread locks where µ > cos β · tan λ (Shigley, 9th ed., eq. 8-3)',
  (windings) => {
    it.each([
      // Tr 10 × 2 locks above µ 0.0683, Tr 8 × 2 above 0.0879 (ISO 2904 basic profile, d2 = d − P/2)
      ['Tr 10 × 2, µ 0.15', trapezoidal(0.002, 0.009, 0.15)],
      ['Tr 10 × 2, µ 0.075', trapezoidal(0.002, 0.009, 0.075)],
      ['Tr 8 × 2, µ 0.097', trapezoidal(0.002, 0.007, 0.097)],
    ])('%s keeps its force', (_name, thread) => {
      const { settled, share } = left(SCREW, thread, windings)
      expect(settled).toBeGreaterThan(5)
      expect(share).toBeGreaterThan(0.97)
      expect(share).toBeLessThan(1.01)
    })
  },
)

describe('supply lost: a thread lets go where µ < cos β · tan λ', () => {
  it.each([
    ['Tr 10 × 2, µ 0.062', trapezoidal(0.002, 0.009, 0.062)],
    ['Tr 8 × 2, µ 0.079', trapezoidal(0.002, 0.007, 0.079)],
    ['ball screw 5 × 10.5, µ 0.004', { lead: 0.005, pitchDiameter: 0.0105, threadFriction: 0.004 }],
  ])('%s, windings open', (_name, thread) => {
    expect(left(SCREW, thread, 'open').share).toBeLessThan(0.02)
  })

  it('shorted windings only slow it: the force of a ball screw decays as e^(−k t/(K²/R + b)) (closed form, overdamped)', () => {
    const thread = { lead: 0.005, pitchDiameter: 0.0105, threadFriction: 0 }
    // Two contacts of 2K·kp/(2K + kp) each, in series with the transmission.
    const contacts = (2 * 2 * 5e4 * 4e5) / (2 * 5e4 + 4e5)
    const k = (contacts * 8e6) / (contacts + 8e6)
    const K = (0.1 * 2 * Math.PI) / 0.005
    const { traces, settled } = left(
      { ...SCREW, motor: { torqueConstant: 0.1, inertia: 1e-7, inductance: 1e-4 } },
      thread,
      'shorted',
      1,
      { part: { damping: 0 } },
    )
    const at = (time: number) => traces.force[traces.time.findIndex((t) => t >= time)]!
    const rate = k / (K ** 2 / 1.1 + 40)
    expect(at(0.8) / settled).toBeCloseTo(1, 2)
    expect(Math.log(at(0.82) / at(0.9)) / (0.08 * rate)).toBeCloseTo(1, 2)
  })
})

describe('a gear locks below an efficiency of one half (2 − 1/η < 0; Niemann and Winter, Maschinenelemente, from memory)', () => {
  it.each([
    [0.48, 1],
    [0.52, 0],
  ])('η %f keeps %f', (efficiency, share) => {
    // The bristles of the friction give way a little before they hold.
    const { share: kept } = left(RACK, { pinionRadius: 0.008, gearRatio: 3, efficiency }, 'open')
    expect(Math.abs(kept - share)).toBeLessThan(0.02)
  })
})

describe('a back-drivable axis keeps what its friction can carry (statics)', () => {
  it('direct drive without friction lets go', () => {
    expect(left(DIRECT, {}, 'open').share).toBe(0)
  })

  it.each([2, 7])(
    '%f N of friction hold half of it at each of two contacts, where the axis creeps back',
    (friction) => {
      const { settled, share } = left(DIRECT, { coulomb: friction, breakaway: friction, viscous: 3000 }, 'open', 3)
      expect(settled / ((36 - friction) / 2)).toBeCloseTo(1, 2)
      expect((share * settled) / (friction / 2)).toBeCloseTo(1, 2)
    },
  )

  it('where it springs back, a first swing beyond the balance ends at 2 f − F, if friction then holds (closed form)', () => {
    // The motor creeps up to 36 N, so that the part is left with F a little above 36 − f; no damping but that of the friction.
    const { settled, share } = left(
      DIRECT,
      { coulomb: 16, breakaway: 16, viscous: 0 },
      'open',
      (time) => Math.min(3, 1.4 + Math.max(0, time - 0.15) * 4),
      { part: { damping: 0 } },
    )
    const total = 2 * settled
    expect(total).toBeGreaterThan(18)
    expect(total).toBeLessThan(30)
    expect((2 * settled * share) / (32 - total)).toBeCloseTo(1, 2)
  })
})

it('a locked axis keeps position, not force: the part between locked jaws relaxes (standard linear solid)', () => {
  // Hard pads, so that the part stays at the width it had; the share of the fresh force fades with the relaxation time.
  const relaxation = { fraction: 0.4, time: 0.4 }
  const { traces } = left(SCREW, trapezoidal(0.002, 0.009, 0.15), 'open', 1, {
    part: { relaxation },
    jaws: { padStiffness: 1e7 },
  })
  const at = (time: number) => traces.force[traces.time.findIndex((t) => t >= time)]!
  // Whatever the force is made of at the loss, what fades does so by e^(−t/τ): three instants at equal distance.
  const [a, b, c] = [at(0.82), at(1.17), at(1.52)]
  expect(Math.abs((b - c) / (a - b) / Math.exp(-0.35 / 0.4) - 1)).toBeLessThan(0.01) // hard pads give way too
  expect(c).toBeLessThan(a * 0.98)
})
