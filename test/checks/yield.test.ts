import { describe, expect, it } from 'vitest'
import { sideOf } from '../blocks.ts'
import { coastOnto } from './support.ts'

/** Elastic, perfectly plastic contact (closed forms): the force stays at Fy, unloading is elastic, the dent stays. */
const FY = 15
const K = 5e4
const PAD = 2e5

const contact = (exponent: number) =>
  sideOf({
    exponent,
    stiffness: exponent === 1 ? K : 4e6,
    padStiffness: PAD,
    damping: 0,
    relaxationFraction: 0,
    relaxationTime: 1,
    yieldForce: FY,
    step: 1e-5,
  })

describe('squeezed past the yield force and let go', () => {
  it.each([1, 1.5])('exponent %f', (exponent) => {
    const side = contact(exponent)
    const most = 1.5e-3
    const flat = exponent === 1 ? FY / K : (FY / 4e6) ** (2 / 3)
    const force = (squeeze: number) => side.step(squeeze, 0)
    for (let n = 0; n <= 1000; n++) expect(force((most * n) / 1000)).toBeLessThanOrEqual(FY * (1 + 1e-9))
    expect(force(most)).toBeCloseTo(FY, 9)
    // squeeze = half the flattening + pad + half the dent
    const dent = 2 * (most - FY / PAD) - flat
    expect(side.state.dent / dent).toBeCloseTo(1, 9)
    // half-way back along the elastic line: part and pad share what is left
    const half = FY / 2
    const elastic = exponent === 1 ? half / K : (half / 4e6) ** (2 / 3)
    expect(force(dent / 2 + elastic / 2 + half / PAD)).toBeCloseTo(half, 6)
    expect(force(dent / 2 - 1e-9)).toBe(0)
    // reloading meets the dented surface and yields at the same force
    expect(force(most)).toBeCloseTo(FY, 6)
    expect(side.state.dent / dent).toBeCloseTo(1, 6)
  })
})

describe('jaws coast onto a part that dents: ½ m v² = 2 (Fy²/4K + Fy²/2kp) + Fy·dent (energy, closed form)', () => {
  const hit = coastOnto(0.4, 0.2, { part: { stiffness: K, yieldForce: FY }, jaws: { padStiffness: PAD } })
  const stored = 2 * (FY ** 2 / (4 * K) + FY ** 2 / (2 * PAD))
  const dent = (0.5 * 0.4 * hit.contactSpeed ** 2 - stored) / FY

  it('peaks at the yield force', () => {
    expect(hit.peak / FY).toBeCloseTo(1, 6)
  })

  it('comes back with what the springs stored', () => {
    expect((0.5 * 0.4 * hit.exitSpeed ** 2) / stored).toBeCloseTo(1, 2)
  })

  it('leaves the part narrower by the dent, and the trace says so', () => {
    const { travel, force, dent: recorded } = hit.run.traces
    expect(recorded.at(-1)! / dent).toBeCloseTo(1, 2)
    // the pads lose the part where it is narrower by half a dent a side
    let last = force.length - 1
    while (force[last] === 0) last--
    // From one row of the record to the next the jaws move on.
    expect(Math.abs(travel[last]! - 0.002 - dent / 2)).toBeLessThan(travel[last]! - travel[last + 1]!)
  })
})
