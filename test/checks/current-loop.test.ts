import { EVD, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { currentGains } from '../../sim/control/gains.ts'
import { currentLoop } from '../control/support.ts'

const R = 0.8
const L = 3e-3

/** A winding R, L behind a voltage held over each period: exact, so that only the controller is on trial. */
class Winding {
  current = 0
  private readonly decay: number
  private readonly gain: number

  constructor(resistance: number, inductance: number, period: number) {
    this.decay = Math.exp((-resistance * period) / inductance)
    this.gain = resistance > 0 ? -Math.expm1((-resistance * period) / inductance) / resistance : period / inductance
  }

  step(voltage: number): void {
    this.current = this.decay * this.current + this.gain * voltage
  }
}

interface Trial {
  resistance?: number
  bandwidth: number
  period: number
  delay?: number
  samples: number
  voltageLimit?: number
  target?: number
}

/** Current at each sample after a step of the target, the voltage coming `delay` samples late. */
function stepResponse({ resistance = R, bandwidth, period, delay = 0, samples, ...rest }: Trial): Float64Array {
  const winding = new Winding(resistance, L, period)
  const gains = currentGains(resistance, L, bandwidth)
  const loop = currentLoop({ ...gains, period, voltageLimit: rest.voltageLimit ?? Infinity, backEmf: 0 })
  const currents = new Float64Array(samples)
  const voltages = new Float64Array(samples)
  for (let n = 0; n < samples; n++) {
    currents[n] = winding.current
    voltages[n] = loop.tick(rest.target ?? 1, winding.current, 0)
    winding.step(n >= delay ? voltages[n - delay]! : 0)
  }
  return currents
}

/** Time at which the samples first reach `level`, on the straight line between two samples. */
function reaches(samples: Float64Array, level: number, period: number): number {
  const n = samples.findIndex((sample) => sample >= level)
  return (n - (samples[n]! - level) / (samples[n]! - samples[n - 1]!)) * period
}

/**
 * Poles of the sampled loop with one sample of delay: each state (current, waiting voltage, integral) is set to one in
 * turn and the blocks are stepped once, which gives the columns of the closed loop's matrix.
 */
function poles(resistance: number, beta: number, period: number): { re: number; im: number }[] {
  const gains = currentGains(resistance, L, beta / period)
  const columns = [0, 1, 2].map((state) => {
    const winding = new Winding(resistance, L, period)
    const loop = currentLoop({ ...gains, period, voltageLimit: Infinity, backEmf: 0 })
    winding.current = state === 0 ? 1 : 0
    loop.state.integral = state === 2 ? 1 : 0
    const voltage = loop.tick(0, winding.current, 0)
    winding.step(state === 1 ? 1 : 0)
    return [winding.current, voltage, loop.state.integral]
  })
  const { realEigenvalues, imaginaryEigenvalues } = new EVD(new Matrix(columns).transpose())
  return realEigenvalues.map((re, k) => ({ re, im: imaginaryEigenvalues[k]! }))
}

const nearest = (list: { re: number; im: number }[], re: number, im: number) =>
  Math.min(...list.map((pole) => Math.hypot(pole.re - re, pole.im - im)))

describe('RL step: i = V/R (1 − exp(−t R/L)), the step response of a first-order lag (closed form)', () => {
  const period = 5e-6
  const currents = stepResponse({ bandwidth: 1e4, period, samples: 6000, voltageLimit: 20, target: 1000 })

  it.each([
    [1e-3, 5.8518],
    [3.75e-3, 15.803],
  ])('with the output at its limit of 20 V the current at %f s is %f A', (time, current) => {
    expect(currents[Math.round(time / period)]).toBeCloseTo(current, 4)
  })

  it('rises from 10 to 90 % of V/R in ln 9 · L/R = 8.2396 ms', () => {
    const rise = reaches(currents, 0.9 * 25, period) - reaches(currents, 0.1 * 25, period)
    expect(rise).toBeCloseTo(8.2396e-3, 7)
  })
})

describe('PI by pole-zero cancellation: kp = L ωc, ki = R ωc, closed loop 1/(1 + s/ωc) (closed form)', () => {
  const bandwidth = 2 * Math.PI * 500
  const period = 1e-7

  it('gives 9.42478 V/A and 2513.27 V/(A·s) for 0.8 Ω, 3 mH, 500 Hz', () => {
    const { kp, ki } = currentGains(R, L, bandwidth)
    expect(kp).toBeCloseTo(9.42478, 5)
    expect(ki).toBeCloseTo(2513.27, 2)
  })

  it('rises in 0.69940 ms, settles within 2 % in 1.24524 ms and does not overshoot', () => {
    const currents = stepResponse({ bandwidth, period, samples: 40_000 })
    const rise = reaches(currents, 0.9, period) - reaches(currents, 0.1, period)
    expect(Math.abs(rise / 0.6994e-3 - 1)).toBeLessThan(1e-3)
    expect(Math.abs(reaches(currents, 0.98, period) / 1.24524e-3 - 1)).toBeLessThan(1e-3)
    expect(Math.max(...currents)).toBeLessThan(1 + 1e-9)
  })
})

describe("loop with dead time, y' = ωc (1 − y(t − Td)), solved by the method of steps (recomputed)", () => {
  // The voltage held over a period delays by half a period more than the whole samples of dead time.
  const delay = 1000
  it.each([
    [0.4, 0.071, 7.379],
    [0.5, 4.052, 3.74],
    [Math.PI / 6, 5.643, 3.473],
    [Math.PI / 4, 28.739, 2.311],
    [1, 50, 2],
  ])('ωc Td = %f overshoots by %f percent, %f Td after the current starts to rise', (product, overshoot, peakTime) => {
    const period = 1 / (delay + 0.5)
    const currents = stepResponse({ resistance: 0, bandwidth: product, period, delay, samples: 10 * delay })
    const peak = Math.max(...currents)
    expect(Math.abs((peak - 1) * 100 - overshoot)).toBeLessThan(1e-3 * overshoot + 5e-4)
    expect(Math.abs((currents.indexOf(peak) - delay) * period - peakTime)).toBeLessThan(1e-3 * peakTime + 5e-4)
  })
})

describe('sampled loop with one sample of computation, L(z) = β/(z (z − 1)), poles of z² − z + β (closed form)', () => {
  const period = 50e-6
  it.each([
    [1 / 4, 0.5, 0],
    [1 / 3, 0.5, 0.2886751346],
    [1 / 2, 0.5, 0.5],
    [1, 0.5, 0.8660254038],
  ])('β = %f has its poles at %f ± %f j', (beta, re, im) => {
    const list = poles(0, beta, period)
    // A double pole moves by the square root of a rounding error.
    const tolerance = im === 0 ? 1e-7 : 1e-9
    expect(nearest(list, re, im)).toBeLessThan(tolerance)
    expect(nearest(list, re, -im)).toBeLessThan(tolerance)
  })

  it('keeps these poles on the winding with resistance, whose own pole exp(−R Ts/L) is cancelled', () => {
    const list = poles(R, 1 / 3, period)
    expect(nearest(list, 0.5, 0.2886751346)).toBeLessThan(2e-5)
    // The trapezoidal rule puts the controller's zero x³/12 beside exp(−x), x = R Ts/L.
    const x = (R * period) / L
    expect(nearest(list, Math.exp(-x), 0)).toBeLessThan(x ** 3 / 10)
  })

  it.each([
    [1 / 4, 0],
    [1 / 3, 100 / 27],
    [1 / 2, 25],
  ])('β = %f overshoots by %f percent', (beta, overshoot) => {
    const ideal = stepResponse({ resistance: 0, bandwidth: beta / period, period, delay: 1, samples: 200 })
    expect((Math.max(...ideal) - 1) * 100).toBeCloseTo(overshoot, 9)
    const real = stepResponse({ bandwidth: beta / period, period, delay: 1, samples: 200 })
    expect(Math.abs((Math.max(...real) - 1) * 100 - overshoot)).toBeLessThan(0.003)
  })

  it('β = 1/3 peaks at the sixth sample after the target; β = 1 swings for ever between the same values', () => {
    const third = stepResponse({ resistance: 0, bandwidth: 1 / 3 / period, period, delay: 1, samples: 50 })
    expect(third.indexOf(Math.max(...third))).toBe(6)
    const limit = stepResponse({ resistance: 0, bandwidth: 1 / period, period, delay: 1, samples: 606 })
    for (let n = 600; n < 606; n++) expect(limit[n]).toBeCloseTo(limit[n - 600]!, 9)
    expect(Math.max(...limit.subarray(600))).toBeCloseTo(2, 9)
  })
})
