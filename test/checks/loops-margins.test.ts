/** Margins of textbook plants against the values that their books print, closed forms, and tuning rules against their papers. */
import { describe, expect, it } from 'vitest'
import { analyseLoops, PRESETS } from '../../sim/index.ts'
import { anglesFor, searchAngles } from '../../sim/loops/angles.ts'
import { Cascade } from '../../sim/loops/cascade.ts'
import {
  magnitudeOptimum,
  parallelPid,
  placePosition,
  placeVelocity,
  simcDoubleIntegrating,
  simcFirstOrder,
  simcIntegrating,
  symmetricOptimum,
} from '../../sim/loops/design/rules.ts'
import { examine } from '../../sim/loops/examine.ts'
import { type Margins, marginsOf } from '../../sim/loops/margins.ts'
import { Dense } from '../../sim/loops/matrix.ts'
import { closedPoles, closeWith } from '../../sim/loops/model.ts'
import { type FrequencyResponse, LoopResponse } from '../../sim/loops/response.ts'

/** num(s)/den(s)·e^(−delay·s) in continuous time, coefficients from the highest power down; the angle is ω itself. */
class Continuous implements FrequencyResponse {
  re = 0
  im = 0
  private readonly num: number[]
  private readonly den: number[]
  private readonly delay: number

  constructor(num: number[], den: number[], delay = 0) {
    this.num = num
    this.den = den
    this.delay = delay
  }

  at(omega: number): void {
    const value = (list: number[]) =>
      list.reduce(([re, im], c) => [-im! * omega + c, re! * omega] as [number, number], [0, 0] as [number, number])
    const [a, b] = value(this.num) as [number, number]
    const [c, d] = value(this.den) as [number, number]
    const size = c * c + d * d
    const re = (a * c + b * d) / size
    const im = (b * c - a * d) / size
    const [cos, sin] = [Math.cos(omega * this.delay), -Math.sin(omega * this.delay)]
    this.re = re * cos - im * sin
    this.im = re * sin + im * cos
  }

  get gain() {
    return Math.hypot(this.re, this.im)
  }

  get returned() {
    return Math.hypot(1 + this.re, this.im)
  }
}

const GRID = Float64Array.from({ length: 2001 }, (_, i) => 10 ** (-4 + i / 350))

const margins = (num: number[], den: number[], delay = 0): Margins =>
  marginsOf(new Continuous(num, den, delay), GRID, 1)

const factor = (decibels: number | null) => 10 ** (decibels! / 20)
const degrees = (radians: number) => (radians * 180) / Math.PI

describe('textbook plants', () => {
  it('3/(s + 1)³: gain margin 2.67, phase margin 41.7°', () => {
    // Closed forms: (1 + ω²)^1.5 = 3 at the crossover, three lags of 60° where the phase is −180°; Ms = 2.2 recomputed.
    const m = margins([3], [1, 3, 3, 1])
    expect(factor(m.gainMargin)).toBeCloseTo(8 / 3, 6)
    expect(m.phaseMargin).toBeCloseTo(180 - 3 * degrees(Math.atan(Math.sqrt(3 ** (2 / 3) - 1))), 3)
    expect(m.phaseMargin!.toFixed(1)).toBe('41.7')
    expect(m.crossover).toBeCloseTo(1.03927, 4)
    expect(m.peakSensitivity).toBeCloseTo(2.2, 5)
    expect(m.modulusMargin).toBeCloseTo(0.454545, 5)
  })

  it('1/(s(s + 1)²): gain margin 2, phase margin 22°', () => {
    // Closed forms: ω + ω³ = 1 at the crossover, ω = 1 where the phase is −180°.
    const m = margins([1], [1, 2, 1, 0])
    expect(factor(m.gainMargin)).toBeCloseTo(2, 6)
    expect(m.crossover! + m.crossover! ** 3).toBeCloseTo(1, 5)
    expect(m.phaseMargin).toBeCloseTo(90 - 2 * degrees(Math.atan(m.crossover!)), 3)
    expect(Math.abs(m.phaseMargin! - 22)).toBeLessThan(1)
  })

  it('1/(2Ts(1 + Ts)): phase margin 65.5°', () => {
    // Magnitude optimum; closed form: 4ω²(1 + ω²) = 1 at the crossover.
    const m = margins([1], [2, 2, 0])
    expect(m.phaseMargin).toBeCloseTo(90 - degrees(Math.atan(Math.sqrt((Math.SQRT2 - 1) / 2))), 3)
    expect(m.phaseMargin!.toFixed(1)).toBe('65.5')
    expect(m.peakSensitivity).toBeCloseTo(1.27202, 4)
    expect(m.gainMargin).toBeNull()
  })

  it('(1 + 4Ts)/(8T²s²(1 + Ts)): phase margin 37°', () => {
    // Symmetric optimum; closed form: the crossover lies at 1/(2T), midway between the corners.
    const m = margins([4, 1], [8, 8, 0, 0])
    expect(m.phaseMargin).toBeCloseTo(degrees(Math.atan(2) - Math.atan(0.5)), 3)
    expect(m.phaseMargin!.toFixed(0)).toBe('37')
    expect(m.crossover).toBeCloseTo(0.5, 6)
    expect(m.peakSensitivity).toBeCloseTo(1.68235, 4)
  })

  it('SIMC on a delay with and without integrator: GM 3.14 and 2.96, PM 61.4° and 46.9°, Ms 1.59 and 1.70, Mt 1.00 and 1.30', () => {
    // Skogestad, J. Process Control 13 (2003) 291–309, table of robustness margins for τc = θ (values from memory).
    const delay = margins([0.5], [1, 0], 1)
    expect(factor(delay.gainMargin)).toBeCloseTo(Math.PI, 5)
    expect(delay.phaseMargin!.toFixed(1)).toBe('61.4')
    expect(delay.peakSensitivity).toBeCloseTo(1.59, 2)
    expect(delay.delayMargin).toBeCloseTo(2.14, 2)
    expect(factor(delay.peaking)).toBeCloseTo(1, 2)
    const integrating = margins([0.5 * 8, 0.5], [8, 0, 0], 1)
    expect(factor(integrating.gainMargin)).toBeCloseTo(2.96, 2)
    expect(integrating.phaseMargin!.toFixed(1)).toBe('46.9')
    expect(integrating.peakSensitivity).toBeCloseTo(1.7, 2)
    expect(factor(integrating.peaking)).toBeCloseTo(1.3, 2)
    expect(integrating.delayMargin).toBeCloseTo(1.59, 2)
  })

  it('10/(s(s + 1)(s + 5)): gain margin 3 at √5 rad/s', () => {
    // Closed form of an exercise in Ogata, Modern Control Engineering; the book reads 21° and 8 dB off asymptotes.
    const m = margins([10], [1, 6, 5, 0])
    expect(factor(m.gainMargin)).toBeCloseTo(3, 6)
    expect(m.gainMarginFrequency).toBeCloseTo(Math.sqrt(5), 6)
    expect(m.phaseMargin).toBeCloseTo(25.3898, 3)
  })

  it('a triple pole on a double integrator bears a ninth of its gain and no less', () => {
    // (3s² + 3s + 1)/s³: Im L = 0 at ω = 1/√3, where L = −9.
    const m = margins([3, 3, 1], [1, 0, 0, 0])
    expect(factor(m.lowerGainMargin)).toBeCloseTo(1 / 9, 6)
    expect(m.gainMargin).toBeNull()
    expect(m.phaseMargin).toBeCloseTo(71.2499, 3)
  })
})

describe('the sampled current loop β/(z(z − 1))', () => {
  // Poles of z² − z + β; L(e^(jθ)) = β·e^(−1.5jθ)/(2j·sin(θ/2)), so PM = 90° − 3·asin(β/2) and the gain may rise to β = 1.
  const loop = (beta: number) => {
    const a = new Dense(2, 2, Float64Array.from([1, 1, 0, 0]))
    const plant = {
      a,
      b: Float64Array.from([0, 1]),
      value: Float64Array.from([1, 0]),
      slope: new Float64Array(2),
      poles: [
        { re: 1, im: 0 },
        { re: 0, im: 0 },
      ],
    }
    return closeWith(plant, { gain: beta, step: 0, kd: 0, forward: 0 }, 1)
  }

  for (const [beta, margin] of [
    [1 / 4, 68.4576],
    [1 / 3, 61.2178],
    [1 / 2, 46.567],
  ] as const) {
    it(`β = ${beta}`, () => {
      const model = loop(beta)
      const poles = closedPoles(model)
      const response = new LoopResponse(poles, model.openPoles)
      const m = marginsOf(response, anglesFor(poles, model.openPoles, 240), 1)
      expect(m.phaseMargin).toBeCloseTo(90 - (3 * Math.asin(beta / 2) * 180) / Math.PI, 6)
      expect(m.phaseMargin).toBeCloseTo(margin, 2)
      expect(factor(m.gainMargin)).toBeCloseTo(1 / beta, 6)
      const root = Math.sqrt(Math.max(0, beta - 0.25))
      for (const pole of poles) expect(Math.abs(pole.im)).toBeCloseTo(root, 6)
    })
  }
})

describe('crossovers that no chart shows', () => {
  // β/(z − 1): |L| = β/(2·sin(θ/2)) is 1 at θ = 2·asin(β/2), where 90° − θ/2 are left; at θ = π it is −β/2. Closed form.
  for (const beta of [0.5, 1e-3, 1e-6, 1e-9]) {
    it(`an integrator of ${beta} a sample crosses where it must`, () => {
      const open = [{ re: 1, im: 0 }]
      const response = new LoopResponse([{ re: 1 - beta, im: 0 }], open)
      const m = marginsOf(response, searchAngles(response, [{ re: 1 - beta, im: 0 }, ...open]), 0.01)
      const theta = 2 * Math.asin(beta / 2)
      expect(m.crossover! / (theta / 0.01)).toBeCloseTo(1, 6)
      expect(m.phaseMargin).toBeCloseTo(90 - (theta / 2) * (180 / Math.PI), 6)
      // A loop gain of 1e-9 is known to seven digits only: it is the difference of two numbers near 1.
      expect((factor(m.gainMargin) * beta) / 2).toBeCloseTo(1, 6)
      expect(m.delayMargin! / ((Math.PI / 2 - theta / 2) / (theta / 0.01))).toBeCloseTo(1, 6)
    })
  }

  it('a notch narrower than any grid is found between two crossings', () => {
    // Poles and zeros of L = k·(z − n)(z − n*)/((z − p)(z − p*)) a hair apart about 1 rad: |L| = k away from it and near 0 at the notch.
    const at = (size: number, angle: number) => [
      { re: size * Math.cos(angle), im: size * Math.sin(angle) },
      { re: size * Math.cos(angle), im: -size * Math.sin(angle) },
    ]
    const open = at(0.9995, 1)
    // k = 3: closed poles are the roots of (z − p)(z − p*) + 3(z − n)(z − n*), over 4; with n on the circle at the same angle.
    const [sum, product] = [(2 * 0.9995 * Math.cos(1) + 3 * 2 * Math.cos(1)) / 4, (0.9995 ** 2 + 3) / 4]
    const im = Math.sqrt(product - (sum / 2) ** 2)
    const closed = [
      { re: sum / 2, im },
      { re: sum / 2, im: -im },
    ]
    const response = new LoopResponse(closed, open)
    // 1 + L = 4·(…): the list of poles gives the quotient of two monic polynomials, so L there is 4·quotient − 1.
    const scaled: FrequencyResponse = {
      re: 0,
      im: 0,
      gain: 0,
      returned: 1,
      at(angle: number) {
        response.at(angle)
        const made = this as { -readonly [K in keyof FrequencyResponse]: FrequencyResponse[K] }
        made.re = 4 * (response.re + 1) - 1
        made.im = 4 * response.im
        made.gain = Math.hypot(made.re, made.im)
        made.returned = Math.hypot(made.re + 1, made.im)
      },
    }
    const m = marginsOf(scaled, searchAngles(scaled, [...open, ...closed]), 1)
    expect(m.crossings).toHaveLength(2)
    for (const crossing of m.crossings) expect(Math.abs(crossing - 1)).toBeLessThan(1e-3)
  })

  it('a brute grid of 100 000 angles finds no other crossover and no higher peak, on every loop of every preset', () => {
    const angles = Float64Array.from({ length: 100_000 }, (_, i) => 1e-7 * (Math.PI / 1e-7) ** (i / 99_999))
    for (const { scenario } of PRESETS) {
      const { workingPoints } = analyseLoops(scenario, { loops: ['force'] })
      for (const point of workingPoints) {
        const cascade = new Cascade(scenario, point)
        for (const loop of ['position', 'velocity', 'force'] as const) {
          const { response, margins, period } = examine(cascade, loop)
          let [crossover, peak, before] = [0, 0, Number.NaN]
          const count = { crossings: 0 }
          for (const angle of angles) {
            response.at(angle)
            if (before > 1 !== response.gain > 1 && !Number.isNaN(before)) {
              count.crossings++
              if (before > 1) crossover = angle / period
            }
            before = response.gain
            peak = Math.max(peak, 1 / response.returned)
          }
          const name = `${scenario.name} ${loop} ${point.id}`
          expect(margins.crossings.length, name).toBe(count.crossings)
          expect(Math.abs((margins.crossover ?? 0) - crossover), name).toBeLessThanOrEqual(2e-4 * crossover)
          expect(margins.peakSensitivity, name).toBeGreaterThanOrEqual(peak * (1 - 1e-9))
          expect(margins.peakSensitivity, name).toBeLessThan(peak * 1.001)
        }
      }
    }
  })
})

describe('bandwidth', () => {
  it('ωn²/(s(s + 2ζωn)): ωn·√(1 − 2ζ² + √(2 − 4ζ² + 4ζ⁴))', () => {
    // Closed form: |T|² = ωn⁴/((ωn² − ω²)² + (2ζωnω)²) set to one half.
    for (const zeta of [0.3, 0.5, Math.SQRT1_2, 1]) {
      const square = zeta * zeta
      const expected = 4 * Math.sqrt(1 - 2 * square + Math.sqrt(2 - 4 * square + 4 * square * square))
      expect(margins([16], [1, 8 * zeta, 0]).bandwidth).toBeCloseTo(expected, 5)
    }
  })

  it('is absolute: 5/(s + 1) follows by 5/6, and falls to −3 dB where ω² = 2·5² − 6²', () => {
    expect(margins([5], [1, 1]).bandwidth).toBeCloseTo(Math.sqrt(2 * 5 ** 2 - 6 ** 2), 5)
  })

  it('does not exist where the closed loop never comes up to −3 dB, and says so', () => {
    expect(margins([0.5], [1, 1])).toMatchObject({ bandwidth: null, noBandwidth: 'below' })
    // One sample of delay and no more: L = 0.9/(z − 0.9) makes L/(1 + L) = 0.9/z.
    const [closed, open] = [[{ re: 0, im: 0 }], [{ re: 0.9, im: 0 }]]
    const response = new LoopResponse(closed, open)
    const m = marginsOf(response, searchAngles(response, [...closed, ...open]), 1)
    expect(m).toMatchObject({ bandwidth: null, noBandwidth: 'above' })
  })

  it('is the first fall: a resonance that brings the closed loop up again does not count', () => {
    // 0.1/s with a lightly damped mode at 10 rad/s, which lifts |T| above −3 dB once more.
    const m = margins([10], [1, 0.2, 100, 0])
    expect(m.bandwidth).toBeCloseTo(0.1, 3)
  })
})

describe('tuning rules', () => {
  it('SIMC on examples of its paper', () => {
    // Skogestad, J. Process Control 13 (2003), table 4 (from memory): 1/((s + 1)(0.2s + 1)) by the half rule is k = 1, θ = 0.1,
    // τ = 1.1, and gives Kc = 5.5, τI = 0.8; e^(−s)/s gives 0.5 and 8; e^(−s)/s² gives 0.0625, 8 and 8.
    const first = simcFirstOrder(1, 1.1, 0.1)
    expect(first.gain).toBeCloseTo(5.5, 10)
    expect(first.integralTime).toBeCloseTo(0.8, 10)
    expect(simcIntegrating(1, 1)).toEqual({ gain: 0.5, integralTime: 8 })
    expect(simcDoubleIntegrating(1, 1)).toEqual({ gain: 0.0625, integralTime: 8, derivativeTime: 8 })
    expect(simcFirstOrder(1e9, 1e9, 1).gain).toBeCloseTo(simcIntegrating(1, 1).gain, 10)
  })

  it('series and parallel form are one controller', () => {
    // Kc(1 + 1/(τI s))(1 + τD s) at s = 2: both forms.
    const series = { gain: 0.3, integralTime: 4, derivativeTime: 1.5 }
    const { kp, ki, kd } = parallelPid(series)
    expect(kp + ki / 2 + kd * 2).toBeCloseTo(0.3 * (1 + 1 / 8) * (1 + 3), 12)
  })

  it('magnitude optimum makes 1/(2σs(1 + σs)), symmetric optimum a phase margin of atan((a − 1/a)/2)', () => {
    const { gain, integralTime } = magnitudeOptimum(2, 5, 0.1)
    const m = margins(
      [gain * 2 * integralTime, gain * 2],
      [integralTime * 5 * 0.1, integralTime * 5.1, integralTime, 0],
    )
    expect(m.phaseMargin).toBeCloseTo(90 - degrees(Math.atan(Math.sqrt((Math.SQRT2 - 1) / 2))), 3)
    for (const a of [2, 1 + Math.SQRT2]) {
      const pi = symmetricOptimum(3, 0.2, a)
      const s = margins([pi.gain * 3 * pi.integralTime, pi.gain * 3], [pi.integralTime * 0.2, pi.integralTime, 0, 0])
      expect(s.phaseMargin).toBeCloseTo((Math.atan((a - 1 / a) / 2) * 180) / Math.PI, 4)
      expect(s.crossover).toBeCloseTo(1 / (a * 0.2), 5)
    }
  })

  it('placement puts the poles where they are wanted', () => {
    const [k, d, w, zeta, alpha] = [7, 0.8, 3, 0.6, 1.7]
    const { kp, ki, kd } = placePosition(k, d, w, zeta, alpha)
    // s³ + (d + k kd)s² + k kp s + k ki against (s² + 2ζω s + ω²)(s + αω).
    expect(d + k * kd).toBeCloseTo(2 * zeta * w + alpha * w, 12)
    expect(k * kp).toBeCloseTo(w * w + 2 * zeta * w * alpha * w, 12)
    expect(k * ki).toBeCloseTo(w * w * alpha * w, 12)
    const pi = placeVelocity(k, d, w, zeta)
    expect(d + k * pi.kp).toBeCloseTo(2 * zeta * w, 12)
    expect(k * pi.ki).toBeCloseTo(w * w, 12)
  })
})
