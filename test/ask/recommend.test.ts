import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  inPlainSpaces,
  type Metrics,
  PRESETS,
  recommend,
  recommendSentences,
  STRATEGIES,
  VERDICTS,
  wordingOf,
} from '../../sim/index.ts'

const [stop, clamp, sensed] = STRATEGIES.map(({ id }) => id)
const result = (
  strategy: string,
  verdict: string,
  holdMargin: number | null,
  damageMargin: number | null,
  gripTime = 0.1,
) =>
  ({
    strategy,
    verdict,
    metrics: { holdMargin, damageMargin, gripTime } as Metrics,
    overloads: [],
    requirements: [],
    doubt: null,
  }) as never
const words = wordingOf('si')
const { scenario } = PRESETS[0]!

describe('the recommended strategy', () => {
  it('is the one that keeps farthest from its nearest edge of the window', () => {
    const answer = recommend(scenario, [
      result(stop!, 'held', 3, 0.1),
      result(clamp!, 'held', 0.5, 0.6),
      result(sensed!, 'crushed', 9, 9),
    ])
    expect(answer.best?.strategy).toBe(clamp)
    expect(answer.next.map(({ strategy }) => strategy)).toEqual([stop])
    expect(recommendSentences(scenario, answer, words).map(inPlainSpaces)).toEqual([
      '50 % more hold than needed, 60 % before damage; no other that can be recommended keeps as far from its nearest edge of the window.',
      'With threshold stop the part is held too: 300 % more hold than needed, 10 % before damage.',
      'Sensed force is out: crushed.',
      'Cycle time, cost and wear are not weighed.',
    ])
  })

  it('is the quicker of two that keep as far', () => {
    const answer = recommend(scenario, [result(stop!, 'held', 0.5, null, 0.4), result(clamp!, 'held', 0.499, 2, 0.2)])
    expect(answer.best?.strategy).toBe(clamp)
    expect(recommendSentences(scenario, answer, words)[0]).toContain(
      'as far from its nearest edge of the window as threshold stop, and sooner there',
    )
  })

  it('claims no quicker grip where none of the two times is known', () => {
    const never = null as never
    const answer = recommend(scenario, [
      result(stop!, 'held', 0.5, null, never),
      result(clamp!, 'held', 0.5, null, never),
    ])
    expect(recommendSentences(scenario, answer, words)[0]).toMatch(/as far .* as current clamp\.$/)
    expect(recommendSentences(scenario, recommend(scenario, [result(stop!, 'held', 0.5, null)]), words)[0]).toMatch(
      /no damage limit is stated\.$/,
    )
    const overloaded = { ...(result(clamp!, 'held', 3, 3) as object), overloads: [{}] } as never
    expect(
      recommendSentences(scenario, recommend(scenario, [result(stop!, 'held', 0.5, null), overloaded]), words)[0],
    ).toMatch(/the only one shown that can be recommended\.$/)
  })

  it('is none that loses or damages the part, has nothing to spare or a hold that cannot be stated', () => {
    const outs = [result(stop!, 'held', null, 1), result(clamp!, 'held', -0.01, 1), result(sensed!, 'slipped', 1, 1)]
    const answer = recommend(scenario, outs)
    expect(answer.best).toBeNull()
    expect(recommendSentences(scenario, answer, words)[0]).toContain('none is recommended')
    expect(recommend(scenario, []).best).toBeNull()
  })

  it('is none that overloads motor or drive, or whose verdict is in doubt', () => {
    const good = result(stop!, 'held', 1, 1) as object
    const outs = [
      { ...good, overloads: [{}] },
      { ...good, strategy: clamp, doubt: { ground: 'margin' } },
    ] as never[]
    const answer = recommend(scenario, outs)
    expect(answer.best).toBeNull()
    expect(recommendSentences(scenario, answer, words).slice(1)).toEqual([
      'Threshold stop is out: held, but above a rating of motor or drive.',
      'Current clamp is out: held, but in doubt by its step.',
    ])
  })

  it('always holds undamaged, and no other that does keeps clearly farther away', () => {
    const margin = fc.option(fc.double({ min: -1, max: 5, noNaN: true }))
    const any = fc.tuple(fc.constantFrom(...VERDICTS), margin, margin)
    fc.assert(
      fc.property(any, any, any, (...all) => {
        const results = all.map(([verdict, hold, damage], i) =>
          result([stop, clamp, sensed][i]!, verdict, hold, damage),
        )
        const { best, next, out } = recommend(scenario, results)
        expect(next.length + out.length + (best ? 1 : 0)).toBe(3)
        if (best) expect(best.result.verdict).toBe('held')
        for (const other of next) expect(other.spare!).toBeLessThan(best!.spare! + 0.005)
        for (const {
          result: { verdict },
          spare,
        } of out)
          expect(verdict !== 'held' || spare === null).toBe(true)
      }),
    )
  })
})
