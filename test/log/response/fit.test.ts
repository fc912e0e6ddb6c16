import { describe, expect, it } from 'vitest'
import { checkScenario } from '../../../sim/index.ts'
import { LogReader } from '../../../sim/log/read/reader.ts'
import { axisResponse } from '../../../sim/log/response/axis.ts'
import { fitResponse } from '../../../sim/log/response/fit.ts'
import { responseIn } from '../../../sim/log/response/table.ts'
import { normals } from '../normals.ts'

const T = 'actuator.transmission.'

function made(transmission: object) {
  const checked = checkScenario({
    format: 'jawbench-scenario',
    version: 2,
    actuator: {
      kind: 'direct',
      motor: { forceConstant: 20, movingMass: 0.3, resistance: 2, inductance: 0.001 },
      transmission: {
        carriageMass: 0.2,
        coulomb: 2,
        breakaway: 2,
        viscous: 10,
        stiffness: 2e6,
        damping: 60,
        ...transmission,
      },
    },
    jaws: { layout: 'anvil', mass: 0.4, opening: 0.1, stroke: 0.05 },
    part: { width: 0.05 },
    drive: { currentRate: 20000, currentBandwidth: 6000 },
  })
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

const scenario = made({})
const GRID = Float64Array.from({ length: 120 }, (_, k) => 2 * Math.PI * 10 * 10 ** ((2 * k) / 119))

describe('the axis as a frequency response', () => {
  it('is a mass at low frequencies and two at high ones: closed forms', () => {
    const slow = axisResponse(made({ viscous: 0 }), 'speed')(1)
    expect(Math.hypot(slow.re, slow.im)).toBeCloseTo(20 / 0.9, 4)
    // Far above the resonance of 2·10⁶ N/m between 0.5 and 0.4 kg only the motor side moves; the current loop is 6000 rad/s.
    const omega = 2e5
    const fast = axisResponse(made({ viscous: 0, damping: 0 }), 'speed')(omega)
    const lag = 1 / Math.hypot(1, omega / 6000)
    expect(Math.hypot(fast.re, fast.im) / ((20 / (0.5 * omega)) * lag)).toBeCloseTo(1, 2)
  })

  it('is silent where the output swings against the motor: √(k/m₂)', () => {
    const at = axisResponse(made({ damping: 0 }), 'speed')
    const silent = at(Math.sqrt(2e6 / 0.4))
    expect(Math.hypot(silent.re, silent.im)).toBeLessThan(1e-6)
  })

  it('is damped where the two swing against each other: √(k·(1/m₁ + 1/m₂)), the relative motion by itself', () => {
    // F/m₁ drives x₁ − x₂, which has the reduced mass μ; at its resonance |x₁ − x₂| = F·μ/(m₁·d·ω), and x₂ = −(x₁ − x₂)·(k + jωd)/(m₂·ω²).
    const [m1, m2, k, d] = [0.5, 0.4, 2e6, 60]
    const reduced = (m1 * m2) / (m1 + m2)
    const omega = Math.sqrt(k / reduced)
    const apart = (20 * reduced) / (m1 * d * omega) // lags the force by a quarter of a turn
    const taken = { re: -(omega * d) / (m2 * omega ** 2), im: k / (m2 * omega ** 2) } // of x₂ by −j·apart
    const first = Math.hypot(apart * taken.re, apart * (taken.im - 1))
    const at = axisResponse(made({ viscous: 0 }), 'speed', 0, 'current')(omega)
    expect(Math.hypot(at.re, at.im) / (first * omega)).toBeCloseTo(1, 6)
  })
})

describe('fit of a frequency response', () => {
  const truth: Record<string, number> = {
    [`${T}carriageMass`]: 0.2,
    [`${T}stiffness`]: 2e6,
    [`${T}damping`]: 60,
    [`${T}viscous`]: 10,
    'log.delay': 0.0004,
  }

  function noisy(seed: number, sigma: number) {
    const normal = normals(seed)
    const at = axisResponse(scenario, 'speed', 0.0004)
    const points = Array.from(GRID, (omega) => {
      const { re, im } = at(omega)
      const gain = Math.hypot(re, im) * Math.exp(sigma * normal())
      const phase = Math.atan2(im, re) + sigma * normal()
      return { re: gain * Math.cos(phase), im: gain * Math.sin(phase) }
    })
    const column = (key: 're' | 'im') => Float64Array.from(points, (point) => point[key])
    return { frequency: GRID, re: column('re'), im: column('im'), coherence: null, blocks: 0 }
  }

  it('has the truth in its interval in 95 of 100 cases, from a file that is off by half', { timeout: 0 }, () => {
    const off = made({ carriageMass: 0.35, stiffness: 1e6, damping: 150, viscous: 25 })
    const inside: Record<string, number> = {}
    const runs = 100
    for (let seed = 1; seed <= runs; seed++)
      for (const { path, low, high } of fitResponse(off, noisy(seed, 0.03), 'speed').values)
        inside[path] = (inside[path] ?? 0) + (truth[path]! >= low! && truth[path]! <= high! ? 1 : 0)
    // 95 of 100; below 89 in 1 of 100 cases.
    for (const [path, count] of Object.entries(inside)) {
      expect(count, path).toBeGreaterThanOrEqual(89)
    }
  })

  it('gives back the resonance', () => {
    const off = made({ stiffness: 1.2e6, damping: 100 })
    const { resonance, after } = fitResponse(off, noisy(5, 0.01), 'speed')
    expect(resonance! / Math.sqrt(2e6 * (1 / 0.5 + 1 / 0.4)) - 1).toBeCloseTo(0, 2)
    expect(after).toBeLessThan(0.015)
  })

  it('leaves out what may be unrelated', () => {
    const measured = noisy(7, 0.01)
    const coherence = measured.frequency.map((_, k) => (k % 4 === 0 ? 0.05 : 0.98))
    const { used, leftOut } = fitResponse(scenario, { ...measured, coherence, blocks: 16 }, 'speed')
    expect(leftOut).toBe(30)
    expect(used).toBe(90)
  })

  it('says nothing of a spring whose resonance was not reached', () => {
    const at = axisResponse(scenario, 'speed', 0.0004)
    const slow = Float64Array.from({ length: 60 }, (_, k) => 20 * 10 ** (k / 59))
    const normal = normals(9)
    const points = Array.from(slow, (omega) => {
      const { re, im } = at(omega)
      const size = 1 + 0.03 * normal()
      return { re: size * re, im: size * im }
    })
    const column = (key: 're' | 'im') => Float64Array.from(points, (point) => point[key])
    const measured = { frequency: slow, re: column('re'), im: column('im'), coherence: null, blocks: 0 }
    const { untold, resonance } = fitResponse(scenario, measured, 'speed')
    expect(untold.flatMap(({ paths }) => [...paths])).toContain(`${T}stiffness`)
    expect(resonance).toBeNull()
  })

  it('refuses a response that is none of such an axis', () => {
    const noise = normals(2)
    const wild = Float64Array.from(GRID, () => 10 ** (2 * noise()))
    const other = { frequency: GRID, re: wild, im: wild.map((value) => value * noise()), coherence: null, blocks: 0 }
    expect(() => fitResponse(scenario, other, 'speed')).toThrow('another-response')
  })

  it('refuses too few frequencies', () => {
    const few = {
      ...noisy(1, 0),
      frequency: GRID.slice(0, 4),
      re: new Float64Array(4).fill(1),
      im: new Float64Array(4),
    }
    expect(() => fitResponse(scenario, few, 'speed')).toThrow('few-frequencies')
  })
})

describe('a measured response as CSV', () => {
  const read = (text: string) => {
    const reader = new LogReader()
    reader.push(new TextEncoder().encode(text))
    return responseIn(reader.finish())
  }
  const lines = (line: (f: number) => string) => [10, 20, 50, 100, 200].map(line).join('\n')

  it.each([
    ['Hz, dB and degrees', `frequency [Hz],magnitude [dB],phase [deg]\n${lines((f) => `${f},-20,-90`)}`],
    ['a ratio and radians', `Frequency (Hz);Gain;Phase (rad)\n${lines((f) => `${f};0.1;-1.5707963`)}`],
    ['real and imaginary', `f [Hz],re,im\n${lines((f) => `${f},0,-0.1`)}`],
    ['rad/s', `omega [rad/s],magnitude [dB],phase [deg]\n${lines((f) => `${f * 2 * Math.PI},-20,-90`)}`],
  ])('in %s', (_, text) => {
    const { response } = read(text)!
    expect(response.frequency[0]).toBeCloseTo(20 * Math.PI, 6)
    expect(response.re[0]).toBeCloseTo(0, 6)
    expect(response.im[0]).toBeCloseTo(-0.1, 6)
  })

  it('is none where words only look like those of a response', () => {
    // A target is no argument, a magnet no magnitude, a speed in rad/s no frequency.
    expect(read('time [s],target [m],magnet [°C],speed [rad/s]\n0,0,20,1\n1,1,20,2\n2,2,21,3\n')).toBeNull()
  })

  it('is none where there is no frequency', () => {
    expect(read('time [s],position [m]\n0,0\n1,1\n2,2\n')).toBeNull()
  })
})
