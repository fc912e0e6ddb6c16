import { describe, expect, it } from 'vitest'
import { lawOf } from '../../sim/job/grip/contact/laws.ts'
import type { Side } from '../../sim/job/grip/contact/side.ts'
import { sideOf, transmissionOf } from '../blocks.ts'
import { bareJaws, held, runOpenLoop, scenarioOf } from './support.ts'

const M = 0.3
const m = 0.1
const LINK = 2e4
const K = 2e4

/**
 * Motor side and jaw on the transmission, the jaw between two contacts so that it cannot leave; no damping. In the order of
 * the grip's loop: forces, speeds, positions.
 */
class Bench {
  x = 3e-4
  v = 0.1
  y = 0
  w = -0.05
  private readonly link = transmissionOf(LINK, 0, 0)
  private readonly right: Side
  private readonly left: Side
  private readonly step: number
  private readonly exponent: number

  constructor(exponent: number, step: number) {
    this.step = step
    this.exponent = exponent
    const side = () =>
      sideOf({
        exponent,
        stiffness: exponent === 1 ? K : K * 300,
        padStiffness: 1e15,
        damping: 0,
        relaxationFraction: 0,
        relaxationTime: 1,
        yieldForce: Infinity,
        step,
      })
    this.right = side()
    this.left = side()
  }

  advance(): void {
    const link = this.link.force(this.x - this.y, this.v - this.w)
    const wall = this.right.step(this.y, this.w) - this.left.step(-this.y, -this.w)
    this.v += (this.step * -link) / M
    this.w += (this.step * (link - wall)) / m
    this.x += this.step * this.v
    this.y += this.step * this.w
  }

  get energy(): number {
    const n = this.exponent
    const e = 2 * Math.abs(this.y)
    const contact = ((n === 1 ? K : K * 300) * lawOf(n).shape(e) * e) / (2 * (n + 1)) // ∫ K (2s)ⁿ ds
    return 0.5 * M * this.v ** 2 + 0.5 * m * this.w ** 2 + 0.5 * LINK * (this.x - this.y) ** 2 + contact
  }
}

/** Largest relative energy error and mean energy in the first and in the last tenth of a million steps. */
function drift(exponent: number, step: number) {
  const bench = new Bench(exponent, step)
  const start = bench.energy
  const parts = [0, 1].map(() => ({ worst: 0, sum: 0 }))
  for (let n = 0; n < 1e6; n++) {
    bench.advance()
    const part = n < 1e5 ? parts[0]! : n >= 9e5 ? parts[1]! : null
    if (!part) continue
    part.worst = Math.max(part.worst, Math.abs(bench.energy / start - 1))
    part.sum += bench.energy / start / 1e5
  }
  return parts
}

describe('semi-implicit Euler without damping (Hairer, Lubich and Wanner, Geometric Numerical Integration, 2nd ed., ch. I and VI)', () => {
  it.each([1, 1.5])('exponent %f: a million steps neither gain nor lose energy', (exponent) => {
    const [early, late] = drift(exponent, 5e-5) // stiffest mode times step about 0.05
    expect(early!.worst).toBeGreaterThan(1e-4)
    expect(early!.worst).toBeLessThan(0.05)
    expect(late!.worst).toBeLessThan(1.1 * early!.worst)
    expect(Math.abs(late!.sum - early!.sum)).toBeLessThan(1e-3)
  })

  it.each([1, 1.5])('exponent %f: the error of the energy halves with the step', (exponent) => {
    const coarse = drift(exponent, 5e-5)[0]!.worst
    const fine = drift(exponent, 2.5e-5)[0]!.worst
    expect(coarse / fine).toBeGreaterThan(1.7)
    expect(coarse / fine).toBeLessThan(2.3)
  })

  it('the positions converge to the exact solution with the first order', () => {
    const end = 0.05
    const wall = 2 * K // K·2s on either side
    const exact = held(
      [
        [0, 1, 0, 0],
        [-LINK / M, 0, LINK / M, 0],
        [0, 0, 0, 1],
        [LINK / m, 0, -(LINK + wall) / m, 0],
      ],
      [0, 0, 0, 0],
      end,
    ).next([3e-4, 0.1, 0, -0.05], 0)
    const error = (step: number) => {
      const bench = new Bench(1, step)
      for (let n = 0; n < Math.round(end / step); n++) bench.advance()
      return Math.hypot(bench.x - exact[0]!, bench.y - exact[2]!)
    }
    expect(error(1e-6) / Math.hypot(exact[0]!, exact[2]!)).toBeLessThan(1e-3)
    expect(error(2e-5) / error(1e-5)).toBeGreaterThan(1.8)
    expect(error(2e-5) / error(1e-5)).toBeLessThan(2.2)
  })
})

describe('a whole grip without any damping, pressed against the part', () => {
  it.each([1, 1.5])('exponent %f: swings to the same peak after 2 s, some 450 cycles', (exponent) => {
    const scenario = scenarioOf(bareJaws(0.4), {
      part: { exponent, stiffness: exponent === 1 ? 2e5 : 3e7, width: 0.07 },
      jaws: { opening: 0.07 + 2e-7, stroke: 0.02 },
      // 0.1 N/A: next to no back-EMF, which would damp through the winding; and that one stays cold.
      actuator: {
        motor: { forceConstant: 0.1, thermal: { windingResistance: 0.001, windingTime: 1e5, housingTime: 1e6 } },
        transmission: { damping: 0 },
      },
      run: { duration: 2 },
    })
    // From half the force on, growing, so that the swing keeps clear of the end stop behind the jaws, which damps.
    const { traces } = runOpenLoop(scenario, (time) => Math.min(200, 100 + 1000 * time))
    const rows = traces.force.length
    const early = Math.max(...traces.force.slice(rows / 10, rows / 5))
    const late = Math.max(...traces.force.slice((9 * rows) / 10))
    expect(early).toBeGreaterThan(12) // 10 N a side at rest
    expect(late / early).toBeGreaterThan(0.995)
    expect(late / early).toBeLessThan(1.005)
  })
})
