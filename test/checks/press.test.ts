/** Pressing in against worked examples and closed forms: pressure, stresses, wedge, frame, and the run as a whole. */
import { describe, expect, it } from 'vitest'
import { boreHoop, type Fit, pressurePerOverlap, yieldPressure } from '../../sim/job/press/lame.ts'
import type { PressJudgement } from '../../sim/job/press/result.ts'
import { jointOf, pushOutForce, slidingForce } from '../../sim/job/press/window.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { PSI, ringsOf, run50 } from '../job/press/support.ts'

const INCH = 0.0254

/** Pressure [Pa] of two rings for a radial overlap [m]. */
const pressureOf = (fit: Fit, overlap: number) => overlap * pressurePerOverlap(fit)

describe('pressure of a press fit (Lamé)', () => {
  it('of one metal does not know Poisson’s ratio, and is that of a solid shaft or a thin hub in the limit (closed form)', () => {
    const [inside, joint, outside, modulus, overlap] = [8e-3, 20e-3, 40e-3, 2e11, 1e-5]
    const closed =
      ((modulus * overlap) / (2 * joint ** 3)) *
      (((outside ** 2 - joint ** 2) * (joint ** 2 - inside ** 2)) / (outside ** 2 - inside ** 2))
    for (const poisson of [0, 0.3, 0.49]) {
      const fit = ringsOf({ inside, joint, outside, moduli: [modulus, modulus], poisson: [poisson, poisson] })
      expect(pressureOf(fit, overlap) / closed).toBeCloseTo(1, 12)
    }
    const solid = ringsOf({ inside: 0, joint, outside, moduli: [modulus, modulus] })
    expect(pressureOf(solid, overlap)).toBeCloseTo(
      ((modulus * overlap) / (2 * joint)) * (1 - (joint / outside) ** 2),
      3,
    )
    const thin = ringsOf({ inside: 0, joint, outside: joint * 1.0001, moduli: [1e20, modulus] })
    const shell = (modulus * overlap * joint * 0.0001) / joint ** 2
    expect(pressureOf(thin, overlap) / shell).toBeCloseTo(1, 3)
  })

  // Brown, Marks' Calculations for Machine Design, chapter 3, example 6: prints 2,100 psi and 12.6 MPa.
  it.each([
    [
      'in psi',
      ringsOf({ inside: 0, joint: 2 * INCH, outside: 3 * INCH, moduli: [30e6 * PSI, 30e6 * PSI] }),
      0.0005 * INCH,
      2083.33 * PSI,
      2100 * PSI,
    ],
    ['in MPa', ringsOf({ inside: 0, joint: 0.05, outside: 0.08, moduli: [207e9, 207e9] }), 1e-5, 12.6141e6, 12.6e6],
  ])('of a solid steel shaft in steel, %s', (_, fit, overlap, expected, printed) => {
    expect(pressureOf(fit, overlap) / expected).toBeCloseTo(1, 5)
    expect(Math.abs(pressureOf(fit, overlap) / printed - 1)).toBeLessThan(0.01) // the print rounds 1 − 0.444 to 0.56
  })

  // Budynas and Nisbett, Shigley's Mechanical Engineering Design, 8th ed., solutions of 3-68, 3-64, 3-66 and 5-34(b).
  it.each([
    ['3-68', 0.5, 1, 0.001, 22_500, 37_500],
    ['5-34 (b)', 1, 1.5, 0.0005, 4167, 10_830],
  ])('and hoop stress of the hub, %s', (_, joint, outside, overlap, pressure, stress) => {
    const fit = ringsOf({ inside: 0, joint: joint * INCH, outside: outside * INCH, moduli: [30e6 * PSI, 30e6 * PSI] })
    const found = pressureOf(fit, overlap * INCH)
    expect(Math.abs(found / (pressure * PSI) - 1)).toBeLessThan(0.001) // printed to four digits
    expect(Math.abs(boreHoop(fit, found) / (stress * PSI) - 1)).toBeLessThan(0.001)
  })

  it.each([
    [29.5, 114.5],
    [9, 34.9],
    [38, 147.5],
    [17.5, 67.9],
  ])('at a limit of size, %f µm: %f MPa', (overlap, printed) => {
    const fit = ringsOf({ inside: 0, joint: 0.02, outside: 0.04, moduli: [207e9, 207e9] })
    expect(Math.abs(pressureOf(fit, overlap * 1e-6) / (printed * 1e6) - 1)).toBeLessThan(0.002) // printed to three digits
  })

  // Teaching problem with a worked answer: 53.3 MPa, hoop 88.8 MPa in the steel.
  it('of a bronze bush in steel', () => {
    const fit = ringsOf({ inside: 0.02, joint: 0.03, outside: 0.06, moduli: [105e9, 210e9], poisson: [0.3, 0.3] })
    const pressure = pressureOf(fit, 50e-6) // its interference is that of the radii
    expect(Math.abs(pressure / 53.2995e6 - 1)).toBeLessThan(1e-5)
    expect(Math.abs(boreHoop(fit, pressure) / 88.832e6 - 1)).toBeLessThan(1e-4)
  })

  // Inputs of Mott, Machine Elements in Mechanical Design, chapter on tolerances and fits; recomputed, the print not seen.
  it('of bronze in steel, for each thousandth of an inch of diameter', () => {
    const fit = ringsOf({
      inside: INCH,
      joint: 1.25 * INCH,
      outside: 1.75 * INCH,
      moduli: [17e6 * PSI, 30e6 * PSI],
      poisson: [0.27, 0.27],
    })
    const pressure = pressureOf(fit, 0.0005 * INCH)
    expect(pressure / (1099.3 * PSI)).toBeCloseTo(1, 5)
    expect(boreHoop(fit, pressure) / (3389.5 * PSI)).toBeCloseTo(1, 5)
  })

  // Inputs of Shigley, 9th ed., problem 5-73, Poisson's ratios of its table A-5; 2613 psi from memory.
  it('of a steel shaft in a cast-iron hub', () => {
    const fit = ringsOf({
      inside: 0,
      joint: INCH,
      outside: 2 * INCH,
      moduli: [30e6 * PSI, 14.5e6 * PSI],
      poisson: [0.292, 0.211],
    })
    const pressure = pressureOf(fit, 0.0004 * INCH)
    expect(Math.abs(pressure / (2613 * PSI) - 1)).toBeLessThan(0.001)
    expect(Math.abs(boreHoop(fit, pressure) / (4354.62 * PSI) - 1)).toBeLessThan(0.001)
  })

  it.each([
    [0, 48.75],
    [0.01, 43.68],
    [0.015, 36.3055],
    [0.02, 23.4],
  ])('weakens with the bore of the shaft, %f m: %f MPa (closed form)', (inside, expected) => {
    const fit = ringsOf({ inside, joint: 0.025, outside: 0.04, moduli: [2e11, 2e11] })
    expect(pressureOf(fit, 2e-5) / (expected * 1e6)).toBeCloseTo(1, 5) // told to six digits
  })

  // DIN 7190-1, eq. 15: (1 − Q²)/√3 of the yield stress.
  it.each([
    [0.3, 186.513],
    [0.5, 153.72],
    [0.625, 124.897],
    [0.8, 73.785],
  ])('lets a hub of Q = %f of 355 MPa flow at %f MPa', (q, expected) => {
    const fit = ringsOf({ inside: 0, joint: q * 0.05, outside: 0.05, moduli: [2e11, 2e11] })
    expect(yieldPressure(fit, 355e6) / (expected * 1e6)).toBeCloseTo(1, 5)
  })
})

describe('press-in force', () => {
  // Two public calculators: Ø 50 in Ø 80, 40 µm, 200 GPa, 40 mm, µ 0.15: 48.75 MPa, 45.95 kN, hub 111.3 MPa.
  it('of a shaft of 50 mm', () => {
    const { metrics } = simulate<PressJudgement>(run50(), 'threshold-stop').result
    expect(metrics.jointPressure! / 48.75e6).toBeCloseTo(1, 9)
    expect(metrics.boreStress! / 111.25e6).toBeCloseTo(1, 9)
    const joint = jointOf(run50())
    expect((joint.sliding * joint.straight(joint.engaged(1))) / 45_945.8).toBeCloseTo(1, 5)
  })

  // Closed form from its inputs: a pin of 8 mm, 108.150 MPa, 3914.07 N, a tenth of it for each micrometre.
  it('of a pin of 8 mm', () => {
    const joint = jointOf(
      run50({
        bushing: { diameter: 0.008, interference: 1e-5, length: 0.012, modulus: 206e9 },
        bore: { outerDiameter: 0.02, modulus: 206e9 },
        joint: { friction: { pressing: 0.12, static: 0.12 } },
      }),
    )
    expect((joint.sliding * joint.straight(joint.engaged(1))) / 3914.07).toBeCloseTo(1, 5) // told to six digits
  })

  // Teaching problem: tightest Ø 60 +30/0 µm, OD 100, 210 GPa, width 10, µ 0.3: 33.6 MPa, 19,000.4 N.
  it('of a ring of 10 mm at its tightest', () => {
    const scenario = run50({
      bushing: { diameter: 0.06, interference: 30e-6, length: 0.01, modulus: 210e9 },
      bore: { outerDiameter: 0.1, modulus: 210e9 },
      joint: { friction: { pressing: 0.3, static: 0.3 } },
    })
    const joint = jointOf(scenario)
    expect((joint.overlap * joint.pressure) / 33.6e6).toBeCloseTo(1, 5)
    expect((joint.sliding * joint.straight(joint.engaged(1))) / 19_000.4).toBeCloseTo(1, 5)
  })

  // Closed form: axial over radial on a cone of half-angle θ is tan(θ + atan µ); pulled back out, tan(θ − atan µ).
  it.each([
    [5, 0.08, 0.168669],
    [5, 0.15, 0.240647],
    [15, 0.12, 0.400838],
    [30, 0.08, 0.689182],
    [30, 0.15, 0.796313],
  ])('on a cone of %f° with µ %f: %f', (degrees, friction, expected) => {
    const angle = (degrees * Math.PI) / 180
    const joint = jointOf(
      run50({
        bushing: { chamfer: { angle } },
        joint: { friction: { pressing: friction, static: friction } },
      }),
    )
    expect(joint.climb + joint.inwards).toBeCloseTo(expected, 6)
    expect(joint.climb - joint.outwards).toBeCloseTo(Math.tan(angle - Math.atan(friction)), 9)
  })

  it('grows straight with depth, at 1148.64 N/mm, as a run', () => {
    const scenario = run50()
    const { result, traces } = simulate<PressJudgement>(scenario, 'threshold-stop')
    const { depth, force } = traces as unknown as Record<string, Float64Array>
    const at = (wanted: number) => depth!.findIndex((value) => value >= wanted)
    const [a, b] = [at(0.01), at(0.035)]
    const slope = (force![b]! - force![a]!) / (depth![b]! - depth![a]!)
    expect(Math.abs(slope / 1.14864e6 - 1)).toBeLessThan(0.001)
    expect(result.verdict).toBe('seated')
    // Energy: work is the area under the sliding force, a triangle behind the short cone (closed form).
    const deepest = result.metrics.depth!
    const triangle = (1.148644e6 * deepest ** 2) / 2
    expect(Math.abs(result.metrics.work! / triangle - 1)).toBeLessThan(0.01) // the cone's 0.1 mm and the ram's last swing
  })

  it('is less than what pushes it out again, by the ratio of the coefficients (DIN 7190-1: 0.11 over 0.08)', () => {
    const scenario = run50({
      joint: { friction: { pressing: 0.08, static: 0.11 } },
      bushing: { chamfer: { angle: 1.4 } },
    })
    const joint = jointOf(scenario)
    const slide = joint.sliding * joint.straight(joint.engaged(0.04))
    expect(pushOutForce(scenario, 0.04) / slide).toBeCloseTo(1.375, 12)
  })

  it('through a soft frame reads deeper at the ram by force over stiffness (closed form, 0.91892 mm at 45.946 kN)', () => {
    const scenario = run50({ ram: { stiffness: 5e7 } })
    const { metrics } = simulate<PressJudgement>(scenario, 'threshold-stop').result
    const over = metrics.ramTravel! - 0.005 - metrics.depth!
    expect(Math.abs(over / (metrics.settledForce! / 5e7) - 1)).toBeLessThan(1e-3)
    expect(metrics.springBack! / over).toBeCloseTo(1, 3)
    // The joint's own slope in series with the frame: the part makes k/(k + s) of the ram's way.
    const slope = slidingForce(scenario, 0.03) - slidingForce(scenario, 0.029)
    const share = 5e7 / (5e7 + slope / 0.001)
    expect(share).toBeCloseTo(0.977543, 4)
    expect(Math.abs(metrics.depth! / (metrics.ramTravel! - 0.005) - share)).toBeLessThan(2e-3)
  })
})
