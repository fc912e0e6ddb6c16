import { describe, expect, it } from 'vitest'
import { Hertz } from '../../sim/job/grip/contact/hertz.ts'
import { sideOf } from '../blocks.ts'
import { coastOnto } from './support.ts'

/** F = k δ^1.5 between a sphere and a plane: k = 4/3 E* √R, E* = E/(2(1 − ν²)) for equal bodies (Johnson, Contact Mechanics, 1985, ch. 4). */
const E_STAR = 206e9 / (2 * (1 - 0.3 ** 2))
const RADIUS = 0.01
const STEEL = (4 / 3) * E_STAR * Math.sqrt(RADIUS)

/** Hertz's theory of impact: T = 2.943 δ/v with 2√π Γ(7/5)/Γ(9/10) (Johnson 1985, §11.4; Γ from tables). */
const CONTACT_TIME = (2 * Math.sqrt(Math.PI) * 0.887263817503075) / 1.068628702119319

/** A mass thrown on one contact that carries k δ^1.5 with δ the squeeze of the part's half: K = k/2^1.5. */
function collide(k: number, mass: number, speed: number, step: number) {
  const side = sideOf({
    exponent: 1.5,
    stiffness: k / 2 ** 1.5,
    padStiffness: 1e17,
    damping: 0,
    relaxationFraction: 0,
    relaxationTime: 1,
    yieldForce: Infinity,
    step,
  })
  let x = 0
  let v = speed
  let peak = 0
  let depth = 0
  let time = 0
  do {
    const force = side.step(x, v)
    peak = Math.max(peak, force)
    v -= (step * force) / mass
    x += step * v
    depth = Math.max(depth, x)
    time += step
  } while (x > 0)
  return { peak, depth, time }
}

describe('steel ball of 10 mm radius on a steel plane (Johnson, Contact Mechanics, 1985, §4.2 and §11.4)', () => {
  it('static, 10 N: approach 0.760 µm and stiffness 2 E* a = 19.7 N/µm with a = 87.18 µm', () => {
    const contact = sideOf({
      exponent: 1.5,
      stiffness: STEEL / 2 ** 1.5,
      padStiffness: 1e17,
      damping: 0,
      relaxationFraction: 0,
      relaxationTime: 1,
      yieldForce: Infinity,
      step: 1e-5,
    })
    const a = ((3 * 10 * RADIUS) / (4 * E_STAR)) ** (1 / 3)
    expect(a).toBeCloseTo(87.181e-6, 9)
    const approach = (a * a) / RADIUS
    expect(approach).toBeCloseTo(0.760053e-6, 11)
    expect(contact.step(approach, 0)).toBeCloseTo(10, 5)
    const slope = (contact.step(approach * 1.0001, 0) - contact.step(approach * 0.9999, 0)) / (0.0002 * approach)
    expect(slope / (2 * E_STAR * a)).toBeCloseTo(1, 4)
  })

  it('thrown at 1 m/s: 1737 N, 23.66 µm, 69.6 µs', () => {
    const mass = 7850 * (4 / 3) * Math.PI * RADIUS ** 3
    const hit = collide(STEEL, mass, 1, 1e-9)
    expect(hit.peak / 1737.06).toBeCloseTo(1, 3)
    expect(hit.depth / 23.6621e-6).toBeCloseTo(1, 3)
    expect(hit.time / 69.6441e-6).toBeCloseTo(1, 3)
    // the book's own rounded form, eq. 11.24
    expect(hit.time / (2.87 * (mass ** 2 / (RADIUS * E_STAR ** 2)) ** 0.2)).toBeCloseTo(1, 2)
  })
})

describe('jaws coast onto a rounded part: δ = (5 m v²/4k)^0.4, peak k δ^1.5, contact time 2.943 δ/v (Hertz 1882, as in Johnson 1985, §11.4)', () => {
  it.each([
    [0.2, 1e6],
    [1.2, 1e7],
  ])('jaws of %f kg', (mass, stiffness) => {
    const hit = coastOnto(mass, 0.1, { part: { exponent: 1.5, stiffness } })
    const k = 2 * stiffness * 2 ** 1.5 // both contacts on the jaw coordinate, squeeze of half a part each
    const depth = ((5 * mass * hit.contactSpeed ** 2) / (4 * k)) ** 0.4
    expect((2 * hit.peak) / (k * depth ** 1.5)).toBeCloseTo(1, 3)
    expect(hit.contactTime / ((CONTACT_TIME * depth) / hit.contactSpeed)).toBeCloseTo(1, 3)
    expect(hit.exitSpeed / hit.contactSpeed).toBeCloseTo(1, 3)
  })
})

describe('the pad in series: part and pad carry the same force and share the squeeze (statics)', () => {
  it.each([1, 1.5])('exponent %f, over four decades of squeeze', (exponent) => {
    const K = 2e6
    const pad = 3e4
    for (const squeeze of [1e-6, 1e-5, 1e-4, 1e-3, 1e-2]) {
      const side = sideOf({
        exponent,
        stiffness: K,
        padStiffness: pad,
        damping: 0,
        relaxationFraction: 0,
        relaxationTime: 1,
        yieldForce: Infinity,
        step: 1e-5,
      })
      const force = side.step(squeeze, 0)
      const share = force / pad + (force / K) ** (1 / exponent) / 2
      expect(share / squeeze).toBeCloseTo(1, 10)
    }
  })

  it('inverts its own shape', () => {
    for (const e of [1e-9, 1e-4, 1, 1e3]) expect(new Hertz().inverse(new Hertz().shape(e)) / e).toBeCloseTo(1, 12)
  })
})
