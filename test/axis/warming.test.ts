import fc from 'fast-check'
import { Solver } from 'odex'
import { describe, expect, it } from 'vitest'
import { timeToLimit } from '../../sim/axis/warming.ts'

const coil = {
  windingResistance: 1.5,
  windingTime: 15,
  housingResistance: 3,
  housingTime: 600,
  ambient: 25,
  limit: 130,
}
const cold = { winding: 25, housing: 25 }
/** Of annealed copper (IEC 60028), taken from 25 °C on. */
const ALPHA = 0.00393

/** Winding after `time` by a general-purpose integrator on the two heat balances; both temperatures over the ambient. */
function wound(of: typeof coil, resistance: number, current: number, from: typeof cold, time: number): number {
  const [winding, housing] = [of.windingTime / of.windingResistance, of.housingTime / of.housingResistance]
  const solver = new Solver(2)
  solver.absoluteTolerance = 1e-9
  solver.relativeTolerance = 1e-9
  solver.maxSteps = 1e6
  const { y } = solver.solve(
    (_, [w = 0, h = 0]) => {
      const loss = current * current * resistance * (1 + ALPHA * (w + of.ambient - 25))
      const inwards = (w - h) / of.windingResistance
      return [(loss - inwards) / winding, (inwards - h / of.housingResistance) / housing]
    },
    0,
    [from.winding - of.ambient, from.housing - of.ambient],
    time,
  )
  return of.ambient + y[0]!
}

describe('time to the winding limit', () => {
  it('under a housing that stays cold is that of one node: ln((w∞ − w0)/(w∞ − w1))/rate (closed form)', () => {
    const heavy = { ...coil, housingTime: 1e12 }
    const [current, resistance] = [9, 1.1]
    const rate = (1 - coil.windingResistance * current ** 2 * resistance * ALPHA) / coil.windingTime
    const steady = (coil.windingResistance * current ** 2 * resistance) / (rate * coil.windingTime)
    const time = Math.log(steady / (steady - 105)) / rate
    expect(timeToLimit(heavy, resistance, current, cold) / time).toBeCloseTo(1, 6)
  })

  it('is for ever up to the current whose loss the limit carries off, and not beyond it (closed form)', () => {
    const resistance = 1.1
    const hot = resistance * (1 + ALPHA * (coil.limit - 25))
    const lasting = Math.sqrt((coil.limit - coil.ambient) / ((coil.windingResistance + coil.housingResistance) * hot))
    expect(timeToLimit(coil, resistance, 0.999 * lasting, cold)).toBe(Number.POSITIVE_INFINITY)
    expect(timeToLimit(coil, resistance, 1.001 * lasting, cold)).toBeGreaterThan(coil.housingTime)
    expect(timeToLimit(coil, resistance, 0, cold)).toBe(Number.POSITIVE_INFINITY)
  })

  it('is nothing where the winding is there already, and counts a peak that a hot housing makes', () => {
    expect(timeToLimit(coil, 1.1, 0, { winding: 130, housing: 25 })).toBe(0)
    const time = timeToLimit(coil, 1.1, 0, { winding: 25, housing: 160 })
    expect(wound(coil, 1.1, 0, { winding: 25, housing: 160 }, time)).toBeCloseTo(130, 3)
    expect(timeToLimit(coil, 1.1, 0, { winding: 25, housing: 130 })).toBe(Number.POSITIVE_INFINITY)
  })

  it('is when a general-purpose integrator of the heat balances gets there, from any temperatures (odex)', () => {
    const share = fc.double({ min: 0.1, max: 10, noNaN: true })
    const over = fc.double({ min: 0, max: 100, noNaN: true })
    fc.assert(
      fc.property(share, share, share, share, share, over, over, (a, b, c, d, e, winding, housing) => {
        const of = {
          ...coil,
          windingResistance: 1.5 * a,
          windingTime: 15 * b,
          housingResistance: 3 * c,
          housingTime: 600 * d,
        }
        const from = { winding: 25 + winding, housing: 25 + housing }
        const time = timeToLimit(of, 1.1, 3 * e, from)
        if (time === Number.POSITIVE_INFINITY) return
        expect(wound(of, 1.1, 3 * e, from, time)).toBeCloseTo(130, 2)
        for (const part of [0.3, 0.6, 0.9]) expect(wound(of, 1.1, 3 * e, from, part * time)).toBeLessThan(130)
      }),
      { numRuns: 60, seed: 1 },
    )
  })
})
