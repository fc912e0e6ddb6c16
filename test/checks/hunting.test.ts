import { describe, expect, it } from 'vitest'
import { deadBand } from '../../sim/control/dead-band.ts'
import { frictionOf } from '../blocks.ts'

/**
 * A mass of 1 kg under u = −6 v − 3 e − 4∫e with friction, the case of Canudas de Wit, Olsson, Åström and Lischinsky (IEEE TAC
 * 40(3), 1995, position control). With Fs > Fc an integral always hunts, with an amplitude proportional to Fs − Fc (Armstrong and
 * Amin, Automatica 32(5), 1996); with Fs = Fc it does not, which the describing function of Coulomb friction, 4M/πA, says too: the
 * loop's locus crosses the real axis at +0.214 only, so no negative inverse of it is met. Amplitude 0.1344803·(Fs − Fc) and
 * period 23.369 s for Fs = 1.5 N are the exact event-driven solution with ideal friction.
 */
const STEP = 1e-4

function hunt({ breakaway, band = 0, time = 200 }: { breakaway: number; band?: number; time?: number }) {
  const friction = frictionOf(
    { coulomb: 1, breakaway, stribeckSpeed: 0.001, viscous: 0, bristleStiffness: 1e5 },
    1,
    0,
    0,
    STEP,
  )
  let x = 0
  let v = 0
  let integral = 0
  const errors: number[] = []
  for (let n = 0; n * STEP < time; n++) {
    const error = deadBand(x - 1, band)
    integral += error * STEP
    v += STEP * (-6 * v - 3 * error - 4 * integral - friction.force(v, 0))
    x += STEP * v
    if (n * STEP > time / 2 && n % 10 === 0) errors.push(x - 1)
  }
  const ups = errors.flatMap((e, n) => (n > 0 && errors[n - 1]! <= 0 && e > 0 ? [n * 10 * STEP] : []))
  const last = errors.slice(-5000)
  return {
    amplitude: (Math.max(...errors) - Math.min(...errors)) / 2,
    period: ups.length > 1 ? (ups.at(-1)! - ups[0]!) / (ups.length - 1) : Number.NaN,
    stillMoves: Math.max(...last) - Math.min(...last),
  }
}

describe('integral control against friction', () => {
  it('hunts with the amplitude and the period of the exact solution where break-away exceeds Coulomb', () => {
    const { amplitude, period } = hunt({ breakaway: 1.5 })
    expect(amplitude / (0.1344803 * 0.5)).toBeGreaterThan(0.85)
    expect(amplitude / (0.1344803 * 0.5)).toBeLessThan(1.05)
    expect(period / 23.369).toBeGreaterThan(0.95)
    expect(period / 23.369).toBeLessThan(1.1)
  })

  it('with an amplitude proportional to the difference', () => {
    const ratio = hunt({ breakaway: 2 }).amplitude / hunt({ breakaway: 1.5 }).amplitude
    expect(ratio).toBeGreaterThan(1.8)
    expect(ratio).toBeLessThan(2.2)
  })

  it('does not hunt with Coulomb friction alone: successive stops shrink', () => {
    expect(hunt({ breakaway: 1, time: 200 }).amplitude).toBeLessThan(0.01)
  })

  it('a dead band wider than the jump ends it, a narrower one does not', () => {
    // Half widths by an exact run with ideal friction: with 0.15 it goes on from edge to edge, with 0.2 it rests at 1.1926.
    expect(hunt({ breakaway: 1.5, band: 0.2 }).stillMoves).toBeLessThan(1e-6)
    expect(hunt({ breakaway: 1.5, band: 0.15 }).stillMoves).toBeGreaterThan(0.01)
    expect(hunt({ breakaway: 1.5, band: 0.01, time: 400 }).amplitude).toBeGreaterThan(0.02)
  })
})
