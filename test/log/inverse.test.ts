import { Matrix, pseudoInverse } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { inverseModel } from '../../sim/log/inverse.ts'

const STEP = 1e-3
const TRUE = { mass: 2, viscous: 4, coulomb: 1.5, offset: -0.4 }

/** Three sines, so that mass, viscous and Coulomb friction can be told apart; closed forms of speed and acceleration. */
function motion(length = 6000) {
  const waves = [
    [0.03, 2.1],
    [0.02, 5.3],
    [0.05, 0.7],
  ] as const
  const sum = (f: (a: number, w: number, t: number) => number) =>
    Float64Array.from({ length }, (_, k) => waves.reduce((all, [a, w]) => all + f(a, 2 * Math.PI * w, k * STEP), 0))
  const time = Float64Array.from({ length }, (_, k) => k * STEP)
  const position = sum((a, w, t) => a * Math.sin(w * t))
  const speed = sum((a, w, t) => a * w * Math.cos(w * t))
  const acceleration = sum((a, w, t) => -a * w * w * Math.sin(w * t))
  return { time, position, speed, acceleration }
}

describe('inverse model by least squares', () => {
  it('gives back what made the force', () => {
    const { time, position, speed, acceleration } = motion()
    const force = speed.map(
      (v, k) => TRUE.mass * acceleration[k]! + TRUE.viscous * v + TRUE.coulomb * Math.sign(v) + TRUE.offset,
    )
    const found = inverseModel([{ time, position, force }])
    // Around each reversal the low pass spreads the step of Coulomb friction over a few rows: below 1 %.
    expect(Math.abs(found.mass / TRUE.mass - 1)).toBeLessThan(0.01)
    expect(Math.abs(found.viscous / TRUE.viscous - 1)).toBeLessThan(0.01)
    expect(Math.abs(found.coulomb / TRUE.coulomb - 1)).toBeLessThan(0.01)
    expect(Math.abs(found.offset / TRUE.offset - 1)).toBeLessThan(0.01)
    expect(found.relative).toBeLessThan(0.02)
  })

  it('parts friction by direction', () => {
    const { time, position, speed, acceleration } = motion()
    const force = speed.map((v, k) => 2 * acceleration[k]! + (v > 0 ? 3 * v + 1 : 5 * v - 2))
    const found = inverseModel([{ time, position, force }], { viscousByDirection: true, coulombByDirection: true })
    expect(found.viscous / 3 - 1).toBeCloseTo(0, 1)
    expect(found.viscousBack / 5 - 1).toBeCloseTo(0, 1)
    expect(found.coulomb).toBeCloseTo(1, 1)
    expect(found.coulombBack).toBeCloseTo(2, 1)
    expect(found.offset).toBe(0)
  })

  // The mirrored axis has the mirrored friction: a law.
  it('turns with the sign of the position', () => {
    const { time, position, speed, acceleration } = motion()
    const force = speed.map((v, k) => 2 * acceleration[k]! + (v > 0 ? 3 * v + 1 : 5 * v - 2))
    const options = { viscousByDirection: true, coulombByDirection: true }
    const a = inverseModel([{ time, position, force }], options)
    const b = inverseModel([{ time, position: position.map((x) => -x), force: force.map((f) => -f) }], options)
    expect(b.mass).toBeCloseTo(a.mass, 9)
    expect(b.viscous).toBeCloseTo(a.viscousBack, 9)
    expect(b.coulomb).toBeCloseTo(a.coulombBack, 9)
  })

  // A general-purpose library's pseudo-inverse (by singular values) over regressors in closed form, where sliding is clear.
  it('agrees with a pseudo-inverse on the same motion', () => {
    const { time, position, speed, acceleration } = motion()
    const noise = Float64Array.from({ length: time.length }, (_, k) => 0.1 * Math.sin(k * 12.9898 + k * k))
    const force = speed.map((v, k) => 2 * acceleration[k]! + 4 * v + 1.5 * Math.sign(v) - 0.4 + noise[k]!)
    const most = Math.max(...speed.map(Math.abs))
    const rows = [...time.keys()].slice(50, -50).filter((k) => Math.abs(speed[k]!) > 0.02 * most)
    const w = new Matrix(rows.map((k) => [acceleration[k]!, speed[k]!, Math.sign(speed[k]!), 1]))
    const y = Matrix.columnVector(rows.map((k) => force[k]!))
    const other = pseudoInverse(w).mmul(y)
    const found = inverseModel([{ time, position, force }])
    expect(found.mass / other.get(0, 0) - 1).toBeCloseTo(0, 2)
    expect(found.viscous / other.get(1, 0) - 1).toBeCloseTo(0, 1.5)
    expect(found.coulomb / other.get(2, 0) - 1).toBeCloseTo(0, 1.5)
  })

  it('refuses what does not move, and what moves too plainly', () => {
    const still = { time: motion().time, position: new Float64Array(6000), force: new Float64Array(6000) }
    expect(() => inverseModel([still])).toThrow('nothing moves')
    const { time } = motion()
    const steady = { time, position: time.map((t) => 0.1 * t), force: time.map(() => 1) }
    expect(() => inverseModel([steady])).toThrow('too plain')
  })
})
