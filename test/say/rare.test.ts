import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../sim/ask/spread/rare.ts'
import { tailOf } from '../../sim/ask/spread/run-rare.ts'
import { type RareGrips, rareSentences } from '../../sim/index.ts'

const found = { evaluations: 0, levels: [] }
const likeliest = new Float64Array(1)
const say = (rare: RareGrips['rare'], refused = 0) =>
  rareSentences('grip', { rare, grips: 2620, refused, likeliest: null })

describe('how rare a failure is', () => {
  it('is said with odds, share, limits and what may be missed', () => {
    const [answer, far] = say({ kind: 'share', share: 8.1e-5, variation: 0.1, likeliest, ...found })
    expect(answer).toBe(
      'About 1 in 12,346 parts fails: 0.0081 % (0.0067 to 0.0098 %; coefficient of variation 10 %), told from 2,620 grips.',
    )
    expect(far).toContain('a second way to fail')
    expect(say({ kind: 'share', share: 0.4, variation: 0.05, likeliest, ...found })[0]).toMatch(/^Not so rare: 40\.0 %/)
  })

  it('is said where it is too rare to be told, and where nothing shows the way', () => {
    const below = say({ kind: 'below', share: 1e-7, nearest: 1, point: likeliest, ...found }, 3)
    expect(below[0]).toBe('Fewer than 1 in 10,000,000 parts fail, as far as 2,620 grips can tell.')
    expect(below.at(-1)).toBe('3 parts broke a rule of the format and count as holding.')
    const flat = say({ kind: 'flat', at: 1, share: 0.01, failed: 0, ...found })
    expect(flat[0]).toContain('from 1.0 % of all parts on')
    expect(flat.join()).not.toContain('a second way')
  })

  // Closed forms: the logarithm's deviation is √ln(1 + v²); a normal score of 1.6449 leaves 5 % above it.
  it('has limits even about it by their ratio, and tails by the normal law', () => {
    const { low, high } = limitsOf(1e-4, 0.2)
    expect(Math.log(high / 1e-4)).toBeCloseTo(1.96 * Math.sqrt(Math.log(1.04)), 9)
    expect(low * high).toBeCloseTo(1e-8, 20)
    expect(limitsOf(0.9, 0.5).high).toBe(1)
    expect(tailOf(1.6448536)).toBeCloseTo(0.05, 6)
    expect(tailOf(-1.6448536)).toBeCloseTo(0.05, 6)
  })
})
