/**
 * Shares by the axioms of Shapley (1953) and against the value's own formula by subsets, written here without a line of the simulator's
 * code: φᵢ = Σ |S|!(n−|S|−1)!/n! · (v(S∪i) − v(S)), over the sets S of the others that are there.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FEW, shapley, type Value } from '../../sim/ask/shapley.ts'

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1))

/** By subsets, of who is *there*, and a set as a list of names. */
function bySubsets(names: number[], worth: (there: number[]) => number): number[] {
  return names.map((name) => {
    const others = names.filter((other) => other !== name)
    let sum = 0
    for (let code = 0; code < 2 ** others.length; code++) {
      const set = others.filter((_, k) => Math.floor(code / 2 ** k) % 2 === 1)
      const weight = (factorial(set.length) * factorial(names.length - set.length - 1)) / factorial(names.length)
      sum += weight * (worth([...set, name]) - worth(set))
    }
    return sum
  })
}

/** A table of worths by who is there, in the words of the simulator, which asks by who is gone. */
const game =
  (count: number, table: readonly number[]): Value =>
  (gone) =>
    table[2 ** count - 1 - gone]!
const worthIn = (table: readonly number[]) => (there: number[]) => table[there.reduce((code, k) => code + 2 ** k, 0)]!
const players = (count: number) => Array.from({ length: count }, (_, k) => k)

const worth = fc.double({ min: -1e3, max: 1e3, noNaN: true })
const tables = (count: number) => fc.array(worth, { minLength: 2 ** count, maxLength: 2 ** count })
const games = fc.integer({ min: 1, max: FEW }).chain((count) => fc.tuple(fc.constant(count), tables(count)))

describe('every order', () => {
  it('is the formula by subsets', () => {
    fc.assert(
      fc.property(games, ([count, table]) => {
        const expected = bySubsets(players(count), worthIn(table))
        shapley(count, game(count, table))!.shares.forEach((share, k) => {
          expect(share).toBeCloseTo(expected[k]!, 8)
        })
      }),
      { numRuns: 60 },
    )
  })

  it('adds up (efficiency), treats equals alike (symmetry), gives nothing for nothing (dummy)', () => {
    fc.assert(
      fc.property(games, worth, ([count, table], own) => {
        // A dummy joins as player `count`: it brings `own` whoever is there. Player 0 gets a twin as the last.
        const more = players(2 ** (count + 1)).map((code) => table[code % 2 ** count]! + (code >= 2 ** count ? own : 0))
        if (count < FEW) {
          const { shares } = shapley(count + 1, game(count + 1, more))!
          expect(shares[count]).toBeCloseTo(own, 8)
          expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(more.at(-1)! - more[0]!, 7)
          const alike = players(2 ** (count + 1)).map((code) => {
            const twins = (code % 2) + Math.floor(code / 2 ** count)
            return table[(code % 2 ** count) - (code % 2)]! + twins * own + twins ** 2
          })
          const equal = shapley(count + 1, game(count + 1, alike))!.shares
          expect(equal[count]).toBeCloseTo(equal[0]!, 8)
        }
        const { shares } = shapley(count, game(count, table))!
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(table.at(-1)! - table[0]!, 7)
      }),
      { numRuns: 60 },
    )
  })

  it('follows its players when they are renamed', () => {
    fc.assert(
      fc.property(games, ([count, table]) => {
        const value = game(count, table)
        const mirrored: Value = (gone) =>
          value(players(count).reduce((code, k) => code + (Math.floor(gone / 2 ** k) % 2) * 2 ** (count - 1 - k), 0))
        const shares = shapley(count, value)!.shares
        shapley(count, mirrored)!.shares.forEach((share, k) => {
          expect(share).toBeCloseTo(shares[count - 1 - k]!, 8)
        })
      }),
      { numRuns: 40 },
    )
  })
})

describe('drawn orders', () => {
  const count = FEW + 2

  it('add up, and are exact where no three act together: a pair of orders cancels what two make', () => {
    const pairs = fc.array(worth, { minLength: count * count, maxLength: count * count })
    fc.assert(
      fc.property(pairs, fc.integer({ min: 1, max: 99 }), (terms, seed) => {
        const worthOf = (there: number[]) =>
          there.reduce((sum, a) => sum + there.reduce((part, b) => part + terms[a * count + b]!, 0), 0)
        const value: Value = (gone) => worthOf(players(count).filter((k) => Math.floor(gone / 2 ** k) % 2 === 0))
        const { shares, errors, orders } = shapley(count, value, seed)!
        expect(orders).toBeGreaterThan(2)
        const expected = bySubsets(players(count), worthOf)
        shares.forEach((share, k) => {
          expect(share).toBeCloseTo(expected[k]!, 6)
          expect(errors![k]).toBeLessThan(1e-6)
        })
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(worthOf(players(count)), 6)
      }),
      { numRuns: 10 },
    )
  })

  it('are right in the mean over seeds, and as far off as their standard error says', () => {
    const table = players(2 ** count).map((code) => Math.sin(code * code))
    const expected = bySubsets(players(count), worthIn(table))
    const seeds = 600
    const drawn = Array.from({ length: seeds }, (_, seed) => shapley(count, game(count, table), seed)!)
    for (const k of players(count)) {
      const mean = drawn.reduce((sum, { shares }) => sum + shares[k]!, 0) / seeds
      const variance = drawn.reduce((sum, { shares }) => sum + (shares[k]! - mean) ** 2, 0) / (seeds - 1)
      const told = drawn.reduce((sum, { errors }) => sum + errors![k]! ** 2, 0) / seeds
      expect(Math.abs(mean - expected[k]!)).toBeLessThan(4 * Math.sqrt(variance / seeds))
      expect(told / variance).toBeGreaterThan(0.75)
      expect(told / variance).toBeLessThan(1.33)
    }
  })

  it('are the same for the same seed', () => {
    const table = players(2 ** count).map((code) => Math.sin(code * code))
    expect(shapley(count, game(count, table), 5)).toEqual(shapley(count, game(count, table), 5))
    expect(shapley(count, game(count, table), 5)).not.toEqual(shapley(count, game(count, table), 6))
  })
})

describe('where some combinations give nothing', () => {
  // Gone: bit 0 is a, bit 1 is b. Without a there is nothing to tell unless b is gone as well.
  const value: Value = (gone) => [10, null, 7, 4][gone]!

  it('who cannot go yet waits for its turn', () => {
    expect(shapley(2, value)).toEqual({ shares: [3, 3], errors: null, orders: 2 })
  })

  it('there is no answer where no order has one', () => {
    expect(shapley(1, (gone) => (gone === 0 ? 1 : null))).toBeNull()
    expect(shapley(2, () => null)).toBeNull()
  })
})
