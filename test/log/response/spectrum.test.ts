import { describe, expect, it } from 'vitest'
import { responseOf, spreadOf, unrelatedBelow } from '../../../sim/log/response/spectrum.ts'
import { normals } from '../normals.ts'

const rows = (count: number, value: (k: number) => number) => Float64Array.from({ length: count }, (_, k) => value(k))

describe('frequency response from a log', () => {
  const count = 1 << 17
  const normal = normals(3)
  const u = rows(count, () => normal())
  const y = new Float64Array(count)
  for (let k = 1; k < count; k++) y[k] = 0.9 * y[k - 1]! + 0.1 * u[k - 1]!
  const time = rows(count, (k) => k)

  // Closed form of y(k) = 0.9 y(k − 1) + 0.1 u(k − 1) at z = e^jω: 0.1/(z − 0.9).
  it.each([
    [0.1 * Math.PI, 0.319278, -80.6182],
    [0.5 * Math.PI, 0.0743294, -131.987],
  ])('of a known filter at %d rad a sample: |H| %d, %d°', (omega, gain, phase) => {
    const found = responseOf(time, u, y, 1024)
    const k = found.frequency.findIndex((w) => w >= omega - 1e-9)
    const at = found.frequency[k]!
    expect(at).toBeCloseTo(omega, 2)
    expect(Math.abs(Math.hypot(found.re[k]!, found.im[k]!) / gain - 1)).toBeLessThan(0.02)
    expect(Math.abs((Math.atan2(found.im[k]!, found.re[k]!) * 180) / Math.PI - phase)).toBeLessThan(1)
    expect(found.coherence![k]!).toBeGreaterThan(0.99)
  })

  // Closed form: S/(1 + S) with noise on the output, S the ratio of signal to noise power.
  it.each([
    [1, 0.5],
    [9, 0.9],
    [99, 0.99],
  ])('coherence with a signal %d times the noise is %d', (ratio, expected) => {
    const other = normals(11)
    const noisy = u.map((value) => Math.sqrt(ratio) * value + other())
    const { coherence } = responseOf(time, u, noisy, 1024)
    const mean = coherence!.reduce((sum, each) => sum + each, 0) / coherence!.length
    expect(mean).toBeCloseTo(expected, 2)
  })

  // Bendat and Piersol, Random Data: σ(|H|)/|H| = √((1 − γ²)/(2 n γ²)).
  it.each([
    [0.9, 16, 0.0589256],
    [0.99, 16, 0.0177667],
    [0.5, 64, 0.0883883],
  ])('spread at coherence %d and %d blocks is %d', (coherence, blocks, expected) => {
    expect(spreadOf(coherence, blocks)).toBeCloseTo(expected, 6)
  })

  // Closed form: 1 − 0.05^(1/(n − 1)).
  it.each([
    [4, 0.631597],
    [16, 0.181036],
    [64, 0.046438],
  ])('unrelated signals stay below their level with %d blocks', (blocks, expected) => {
    expect(unrelatedBelow(blocks)).toBeCloseTo(expected, 6)
  })

  it('a single block always shows 1, and counts as nothing', () => {
    expect(unrelatedBelow(1)).toBe(1)
    expect(() =>
      responseOf(
        rows(80, (k) => k),
        rows(80, Math.sin),
        rows(80, Math.cos),
      ),
    ).toThrow('short-response')
  })

  // D: a delay of d in a block of T biases gain by 1 − d/T and coherence by its square, with a window without taper; Hann's does less.
  it('a delay within the block biases the gain by little', () => {
    const late = u.map((_, k) => (k < 50 ? 0 : u[k - 50]!))
    const { re, im } = responseOf(time, u, late, 1024)
    const mean = re.reduce((sum, each, k) => sum + Math.hypot(each, im[k]!), 0) / re.length
    expect(mean).toBeLessThan(1)
    expect(mean).toBeGreaterThan(1 - 50 / 1024)
  })
})
