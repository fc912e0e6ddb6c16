import { describe, expect, it } from 'vitest'
import { transmissionOf } from '../blocks.ts'
import { FRICTIONLESS, IDEAL, runOpenLoop, scenarioOf } from './support.ts'

describe('describing function of the free play, a dead zone of half-width D: 1 − (2/π)(asin r + r √(1 − r²)), r = D/A', () => {
  // Closed form: the first harmonic of a dead zone under a sine, integrated over the quarter in which it passes.
  it.each([
    [0.9, 0.0373861],
    [0.75, 0.144294],
    [0.5, 0.391002],
    [0.25, 0.685038],
    [0.1, 0.872889],
  ])('r = %f: %f', (r, gain) => {
    const k = 3e6
    const play = 20e-6
    const link = transmissionOf(k, 0, play)
    const amplitude = play / 2 / r
    const N = 100_000
    let first = 0
    for (let n = 0; n < N; n++) {
      const sine = Math.sin((2 * Math.PI * (n + 0.5)) / N)
      first += (2 / N) * link.force(amplitude * sine, 0) * sine
    }
    expect(first / (k * amplitude)).toBeCloseTo(gain, 6)
    expect(1 - (2 / Math.PI) * (Math.asin(r) + r * Math.sqrt(1 - r * r))).toBeCloseTo(gain, 6)
  })
})

describe('the motor side flies through the play and strikes the resting jaw (closed forms of elastic impact)', () => {
  const M = 0.3
  const m = 0.1
  const PLAY = 1e-3
  const STIFFNESS = 1e5
  const scenario = scenarioOf(IDEAL, {
    actuator: {
      kind: 'direct',
      motor: { movingMass: M, forceConstant: 1, peakCurrent: 1000 },
      transmission: {
        ...FRICTIONLESS,
        carriageMass: 0,
        bristleStiffness: 1000,
        stiffness: STIFFNESS,
        damping: 0,
        backlash: PLAY,
      },
    },
    jaws: { mass: m / 2, opening: 0.1, stroke: 0.05 },
    part: { width: 0.01 },
    events: { powerLoss: { time: 0.004, windings: 'open' } },
    run: { duration: 0.02 },
  })
  const { traces } = runOpenLoop(scenario, () => 6)
  const { time, motorTravel, travel, speed } = traces
  const lead = Array.from(motorTravel, (x, n) => x - travel[n]!)
  const touch = lead.findIndex((value) => value > PLAY / 2)
  const v = (motorTravel[touch - 2]! - motorTravel[touch - 12]!) / (time[touch - 2]! - time[touch - 12]!)
  const off = lead.findIndex((value, n) => n > touch && value < PLAY / 2)

  it('the jaw rests until the play is used up, half of it from the middle', () => {
    expect(time[touch]!).toBeGreaterThan(0.005)
    for (let n = 0; n < touch - 1; n++) expect(travel[n]).toBe(0)
  })

  it('winds the transmission up by v √(mr/k) over π √(mr/k), mr = M m/(M + m)', () => {
    const reduced = (M * m) / (M + m)
    expect((Math.max(...lead) - PLAY / 2) / (v * Math.sqrt(reduced / STIFFNESS))).toBeCloseTo(1, 2)
    // From row to row of the record.
    expect(Math.abs(time[off]! - time[touch]! - Math.PI * Math.sqrt(reduced / STIFFNESS))).toBeLessThan(
      time[off]! - time[off - 1]!,
    )
  })

  it('leaves the jaw with 2M/(M + m) and the motor side with (M − m)/(M + m) of the speed', () => {
    expect(speed[off + 5]! / ((2 * M * v) / (M + m))).toBeCloseTo(1, 3)
    const after = (motorTravel[off + 12]! - motorTravel[off + 2]!) / (time[off + 12]! - time[off + 2]!)
    expect(after / (((M - m) * v) / (M + m))).toBeCloseTo(1, 3)
  })
})
