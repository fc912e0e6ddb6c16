import { describe, expect, it } from 'vitest'
import { lowerTorque, raiseTorque } from '../../sim/axis/kinds/screw.ts'
import { axisOf } from '../../sim/index.ts'
import { scenarioOf } from './support.ts'

const DEGREE = Math.PI / 180
const efficiency = (force: number, lead: number, torque: number) => (force * lead) / (2 * Math.PI * torque)

/** Mean torque of a flat collar under uniform wear: µ F d/2. */
const collar = (friction: number, diameter: number, force: number) => (friction * force * diameter) / 2

describe("Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., Example 8-1: square, d 32, p 4, double", () => {
  const thread = { lead: 0.008, pitchDiameter: 0.03, threadFriction: 0.08, flankAngle: 0 }
  const load = 6400
  const rim = collar(0.08, 0.04, load)

  it('raises with 15.94 + 10.24 = 26.18 N·m', () => {
    expect(raiseTorque(thread) * load).toBeCloseTo(15.94, 2)
    expect(raiseTorque(thread) * load + rim).toBeCloseTo(26.18, 2)
  })

  it('lowers with −0.466 + 10.24 = 9.77 N·m: the thread alone overhauls', () => {
    expect(lowerTorque(thread) * load).toBeCloseTo(-0.466, 3)
    expect(lowerTorque(thread) * load + rim).toBeCloseTo(9.77, 2)
  })

  it('has an overall efficiency of 0.311', () => {
    expect(efficiency(load, thread.lead, raiseTorque(thread) * load + rim)).toBeCloseTo(0.311, 3)
  })
})

// Numbers of the book's examples as worked in its Scilab textbook companion (FOSSEE), which prints more digits.
describe('Bhandari, Design of Machine Elements, ch. 6', () => {
  it('Example 6.1: square 50 × 8, triple, µ 0.15, collar 65/100, 15 kN: raise 204.644, lower 87.4015 N·m', () => {
    const thread = { lead: 0.024, pitchDiameter: 0.046, threadFriction: 0.15, flankAngle: 0 }
    const rim = collar(0.15, 0.0825, 15000)
    expect(raiseTorque(thread) * 15000 + rim).toBeCloseTo(204.644140833, 8)
    expect(lowerTorque(thread) * 15000 + rim).toBeCloseTo(87.401514671, 8)
  })

  it('Example 6.2: trapezoidal 100 × 12, double, µ 0.15, 300 kN: raise 3378.16, lower 1030.69 N·m, efficiency 33.92 %', () => {
    const thread = { lead: 0.024, pitchDiameter: 0.094, threadFriction: 0.15, flankAngle: 15 * DEGREE }
    expect(raiseTorque(thread) * 3e5).toBeCloseTo(3378.159205, 5)
    expect(lowerTorque(thread) * 3e5).toBeCloseTo(1030.68563, 5)
    expect(efficiency(3e5, thread.lead, raiseTorque(thread) * 3e5)).toBeCloseTo(0.33921302, 7)
  })

  it('Example 6.3: clamp with a square 22 × 5, µ 0.15, collar 45/55 µ 0.17, 125 N on 150 mm: presses with 2868.61 N', () => {
    const thread = { lead: 0.005, pitchDiameter: 0.0195, threadFriction: 0.15, flankAngle: 0 }
    const force = (125 * 0.15) / (raiseTorque(thread) + collar(0.17, 0.05, 1))
    expect(force).toBeCloseTo(2868.610857, 5)
    expect(efficiency(force, thread.lead, 125 * 0.15)).toBeCloseTo(0.12174763, 7)
  })

  it('Example 6.4: sluice gate, square 40 × 7, µ 0.15, washer 40/80 µ 0.12: 52.41 N at each arm up, 15.63 N down', () => {
    const thread = { lead: 0.007, pitchDiameter: 0.0365, threadFriction: 0.15, flankAngle: 0 }
    expect((raiseTorque(thread) * 7000 + collar(0.12, 0.06, 7000)) / (2 * 0.5)).toBeCloseTo(52.410253, 5)
    expect((lowerTorque(thread) * 3000 + collar(0.12, 0.06, 3000)) / (2 * 0.5)).toBeCloseTo(15.626055, 5)
  })

  it('Example 6.6: trapezoidal 52 × 8, µ 0.15, collar 60/100 µ 0.12, 2 kN, 30 rpm: 0.061838 kW, efficiency 12.937 %', () => {
    const thread = { lead: 0.008, pitchDiameter: 0.048, threadFriction: 0.15, flankAngle: 15 * DEGREE }
    const torque = raiseTorque(thread) * 2000 + collar(0.12, 0.08, 2000)
    expect((torque * 2 * Math.PI * 30) / 60 / 1000).toBeCloseTo(0.061838, 6)
    expect(efficiency(2000, thread.lead, torque)).toBeCloseTo(0.12937099, 8)
  })
})

it('Mott, Machine Elements in Mechanical Design, 4th ed., Example Problem 17-1: Acme 1½-4, 12 500 lb: 1809 lb·in, 0.275', () => {
  // The book rounds cosines and tangents to three digits on the way; the formula gives 1814.4 lb·in.
  const thread = { lead: 0.25, pitchDiameter: 1.3429, threadFriction: 0.15, flankAngle: 14.5 * DEGREE }
  const torque = raiseTorque(thread) * 12500
  expect(Math.abs(torque / 1809 - 1)).toBeLessThan(0.005)
  expect(efficiency(12500, thread.lead, torque)).toBeCloseTo(0.275, 2)
})

describe('self-locking of a thread: µ > cos β · tan λ (Shigley, 9th ed., eq. 8-3 with 8-5; basic profiles of ISO 2904: d2 = d − P/2)', () => {
  it.each([
    ['Tr 8 × 1.5', 0.0015, 0.00725, 0.06361],
    ['Tr 10 × 2', 0.002, 0.009, 0.06833],
    ['Tr 10 × 3', 0.003, 0.0085, 0.10852],
    ['Tr 16 × 4', 0.004, 0.014, 0.08785],
  ])(
    '%s locks above µ %#: the least friction on the way down just carries the load',
    (_name, lead, pitchDiameter, limit) => {
      const lower = (threadFriction: number) =>
        axisOf(
          scenarioOf({ actuator: { transmission: { lead, pitchDiameter, threadFriction, flankAngle: 15 * DEGREE } } })
            .actuator,
        ).lower
      expect(limit).toBeCloseTo((Math.cos(15 * DEGREE) * lead) / (Math.PI * pitchDiameter), 5)
      expect(lower(limit + 1e-5)).toBeGreaterThan(1)
      expect(lower(limit - 1e-5)).toBeLessThan(1)
    },
  )
})

describe('reflection to the jaw (closed forms: F = 2π T/lead, M = J (2π/lead)²; rack F = T i/r, M = J i²/r²)', () => {
  it('2 mm lead: 1e-6 kg·m² counts as 9.8696 kg, 0.05 N·m as 157.08 N', () => {
    const axis = axisOf(
      scenarioOf({
        actuator: {
          motor: { inertia: 1e-6, torqueConstant: 0.05 },
          transmission: { lead: 0.002, threadFriction: 0, carriageMass: 0 },
        },
      }).actuator,
    )
    expect(axis.mass).toBeCloseTo(9.8696044, 6)
    expect(axis.forcePerAmpere).toBeCloseTo(50 * Math.PI, 9)
    expect(axis.raise).toBeCloseTo(0, 12)
    expect(axis.lower).toBeCloseTo(0, 12)
  })

  it('5 mm pinion: 1e-6 kg·m² counts as 0.04 kg; a gear of 0.8 takes 1/0.8 forward and gives 2 − 1/0.8 back', () => {
    const axis = axisOf(
      scenarioOf({
        actuator: {
          kind: 'rack',
          motor: { inertia: 1e-6, torqueConstant: 0.05 },
          transmission: { pinionRadius: 0.005, gearRatio: 1, efficiency: 0.8, carriageMass: 0 },
        },
      }).actuator,
    )
    expect(axis.mass).toBeCloseTo(0.04, 9)
    expect(axis.forcePerAmpere).toBeCloseTo(10, 9)
    expect(1 / (1 + axis.raise)).toBeCloseTo(0.8, 9)
    // Niemann and Winter, Maschinenelemente, vol. 3 (from memory): efficiency of the way back 2 − 1/η
    expect(1 - axis.lower).toBeCloseTo(0.75, 9)
  })
})
