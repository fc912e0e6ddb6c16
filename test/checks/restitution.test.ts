import { describe, expect, it } from 'vitest'
import { coastOnto } from './support.ts'

/**
 * F = k δⁿ (1 + a δ̇) thrown on at speed v leaves with e·v where a v (1 + e) = ln[(1 + a v)/(1 − a e v)], whatever k, m and n: the
 * phase-plane solution of Marhefka and Orin, IEEE Trans. Systems, Man, and Cybernetics A 29(6), 1999.
 */
function restitution(av: number): number {
  let low = 0
  let high = Math.min(1, 1 / av)
  for (let n = 0; n < 60; n++) {
    const e = (low + high) / 2
    if (av * (1 + e) > Math.log((1 + av) / (1 - av * e))) low = e
    else high = e
  }
  return (low + high) / 2
}

/** In the squeeze s of half a part λ·2ṡ is a·ṡ. */
const damped = (exponent: number, av: number, speed = 0.1) =>
  coastOnto(0.2, speed, {
    part: { exponent, stiffness: exponent === 1 ? 12500 : 2e6, damping: av / (2 * speed) },
  })

describe('Hunt and Crossley, J. Applied Mechanics 42, 1975: coefficient of restitution', () => {
  it.each([
    [0.1, 0.937476],
    [0.5, 0.748435],
    [1.5, 0.487741],
  ])('solves its own relation at a v = %f: e = %f (closed form)', (av, e) => {
    expect(restitution(av)).toBeCloseTo(e, 6)
  })

  it.each([
    [1, 0.05],
    [1, 0.3],
    [1, 1.5],
    [1.5, 0.05],
    [1.5, 0.3],
    [1.5, 0.75],
    [1.5, 3],
  ])('exponent %f, a v about %f: speed off the part over speed onto it', (exponent, av) => {
    const hit = damped(exponent, av)
    expect(hit.exitSpeed / hit.contactSpeed / restitution((av * hit.contactSpeed) / 0.1)).toBeCloseTo(1, 3)
  })

  it('depends on the product a·v only: twice the speed with half the damping', () => {
    const slow = damped(1.5, 0.5, 0.05)
    const fast = damped(1.5, 0.5, 0.1)
    expect(slow.exitSpeed / slow.contactSpeed).toBeCloseTo(fast.exitSpeed / fast.contactSpeed, 3)
  })

  it("for small damping e is 1 − α v with a = 1.5 α, the paper's own approximation", () => {
    const hit = damped(1.5, 0.06)
    const alphaV = (0.06 * hit.contactSpeed) / 0.1 / 1.5
    expect(Math.abs(1 - alphaV - hit.exitSpeed / hit.contactSpeed)).toBeLessThan(alphaV ** 2)
  })
})

it('greatest depth: δ^(n+1) = (n + 1)(m/k)[v/a − ln(1 + a v)/a²] (closed form, first half of the phase plane)', () => {
  for (const exponent of [1, 1.5]) {
    const hit = damped(exponent, 0.75)
    const v = hit.contactSpeed
    const a = 7.5
    const k = 2 * (exponent === 1 ? 12500 : 2e6) * 2 ** exponent
    const depth = Math.max(...hit.run.traces.travel) - 0.002
    const exact = ((exponent + 1) * (0.2 / k) * (v / a - Math.log(1 + a * v) / a ** 2)) ** (1 / (exponent + 1))
    expect(depth / exact).toBeCloseTo(1, 3)
  }
})
