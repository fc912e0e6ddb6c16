import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestOf, nextSettings, type Tried } from '../../../sim/ask/spread/best.ts'
import { normalQuantile, normalShare } from '../../../sim/ask/spread/distributions.ts'
import { shareInterval } from '../../../sim/ask/spread/intervals.ts'
import { pointsOf } from '../../../sim/ask/spread/points.ts'

/** Parts that drop below a force of their own and break above another. */
const parts = (seed: number, count: number) => {
  const points = pointsOf({ sampling: 'sobol', dimension: 2, seed })
  return Array.from({ length: count }, (_, k) => {
    const [drop, damage] = points(k)
    return { drop: 20 + 3 * normalQuantile(drop!), damage: 40 + 5 * normalQuantile(damage!) }
  })
}
const tryAt =
  (all: readonly { drop: number; damage: number }[]) =>
  (setting: number): Tried => ({
    setting,
    held: all.map(({ drop, damage }) => (setting > drop && setting < damage ? 1 : 0)),
  })
/** Closed form of its share. */
const truth = (setting: number) => normalShare((setting - 20) / 3) * (1 - normalShare((setting - 40) / 5))

describe('the best setting', () => {
  const all = parts(1, 1000)
  const search = (step: number) => {
    let tried = Array.from({ length: 9 }, (_, k) => 10 + 5 * k).map(tryAt(all))
    let rounds = 0
    for (;;) {
      const best = bestOf('sobol', tried)
      const next = nextSettings(best, step)
      if (next.length === 0) return { best, tried: tried.length, rounds }
      tried = [...tried, ...next.map(tryAt(all))]
      rounds++
    }
  }

  it('is found from coarse to fine, with few settings tried', () => {
    const { best, tried, rounds } = search(0.1)
    // The share is 0.988 at most, at 27.9 (closed form, searched in steps of 0.01).
    const settings = Array.from({ length: 4001 }, (_, k) => 10 + k / 100)
    const most = Math.max(...settings.map(truth))
    expect(truth(best.setting)).toBeGreaterThan(most - 0.003)
    expect(best.low < most && most < best.high).toBe(true)
    // 400 of 0.1 lie in the range.
    expect(tried).toBeLessThan(50)
    expect(rounds).toBeLessThan(12)
  })

  it('may drift as far as no fewer of the same parts hold', () => {
    const { best } = search(0.1)
    expect(best.drift.low).toBeLessThan(best.setting)
    expect(best.drift.high).toBeGreaterThan(best.setting)
    // Of 1,000 parts, about a hundredth fails at the best: some 8 more are significant (exact McNemar: 8 of 8, 10 of 11).
    for (const edge of [best.drift.low, best.drift.high]) {
      const lost = truth(best.setting) - truth(edge)
      expect(lost).toBeGreaterThan(0.001)
      expect(lost).toBeLessThan(0.02)
    }
    // A step beyond either end is significantly less.
    const at = best.curve.findIndex(({ setting }) => setting === best.drift.high)
    expect(best.curve[at + 1]!.less).toBe(true)
    expect(best.curve[at + 1]!.setting - best.drift.high).toBeLessThanOrEqual(0.1 + 1e-9)
    expect(best.open).toEqual({ low: false, high: false })
  })

  it('has the share and limits of its own count', () => {
    const best = bestOf('sobol', [tryAt(all)(27)])
    const { held } = tryAt(all)(27)
    const counts = Array.from({ length: 10 }, (_, scrambling) =>
      Array.from(held).reduce((sum, each, k) => sum + (Math.floor(k / 20) % 10 === scrambling ? each : 0), 0),
    )
    expect(best).toMatchObject(shareInterval('sobol', counts, new Array(10).fill(100)))
    expect(best).toMatchObject({ setting: 27, drift: { low: 27, high: 27 }, open: { low: true, high: true } })
    expect(nextSettings(best, 1)).toEqual([])
  })
})

describe('settings that hold the same', () => {
  const flat = (...counts: number[]): Tried[] =>
    counts.map((count, setting) => ({ setting, held: Array.from({ length: 40 }, (_, k) => (k < count ? 1 : 0)) }))

  it('give way to the middle of the widest run', () => {
    expect(bestOf('random', flat(5, 40, 5, 40, 40, 40, 5)).setting).toBe(4)
    expect(bestOf('random', flat(40, 40, 40, 40, 40)).setting).toBe(2)
  })

  it('of which none holds anything are all as good', () => {
    const best = bestOf('random', flat(0, 0, 0))
    expect(best).toMatchObject({ setting: 1, share: 0, drift: { low: 0, high: 2 }, open: { low: true, high: true } })
  })

  it('are told apart by the parts that only one holds: six of six are enough, five are not (sign test, closed form)', () => {
    expect(bestOf('random', flat(34, 40)).curve[0]!.less).toBe(true)
    expect(bestOf('random', flat(35, 40)).curve[0]!.less).toBe(false)
  })

  it('are compared on the same parts', () => {
    expect(() => bestOf('random', [])).toThrow(RangeError)
    expect(() => bestOf('random', [{ setting: 1, held: [] }])).toThrow(RangeError)
    expect(() =>
      bestOf('random', [
        { setting: 1, held: [1] },
        { setting: 2, held: [1, 0] },
      ]),
    ).toThrow(RangeError)
  })
})

describe('a comparison', () => {
  it('calls one of two equally good settings less in no more than 5 % of studies', () => {
    // Which of two halves holds a part is a throw of a coin: the shares are the same.
    let wrong = 0
    for (let seed = 0; seed < 2000; seed++) {
      const points = pointsOf({ sampling: 'random', dimension: 2, seed })
      const us = Array.from({ length: 60 }, (_, k) => points(k))
      const tried = [0, 1].map((setting) => ({ setting, held: us.map((u) => (u[setting]! < 0.8 ? 1 : 0)) }))
      if (bestOf('random', tried).curve.some(({ less }) => less)) wrong++
    }
    expect(wrong / 2000).toBeLessThan(0.05)
    expect(wrong).toBeGreaterThan(0)
  })

  it('does not ask what order the settings come in', () => {
    const counts = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 2, maxLength: 6 })
    fc.assert(
      fc.property(counts, (counts) => {
        const tried = counts.map((count, setting) => ({
          setting,
          held: Array.from({ length: 12 }, (_, k) => (k < count ? 1 : 0)),
        }))
        expect(bestOf('random', [...tried].reverse())).toEqual(bestOf('random', tried))
      }),
      { numRuns: 50 },
    )
  })
})
