import { describe, expect, it } from 'vitest'
import { drawing, lawOf } from '../../../sim/ask/spread/draw.ts'
import { quantileOf } from '../../../sim/ask/spread/laws.ts'
import { pointsOf, SAMPLINGS, SCRAMBLINGS, scramblingOf } from '../../../sim/ask/spread/points.ts'
import { runSpread } from '../../../sim/ask/spread/run.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import {
  gainInterval,
  joinTightened,
  runTightened,
  tightenedOf,
  tightLaw,
  tightScenario,
} from '../../../sim/ask/spread/tighten.ts'
import { run } from '../../../sim/cli/core.ts'
import { tightSentence, tightText, type Varied } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

const law = (sizes: Partial<Varied>) => ({ path: 'part.mass', share: false, ...sizes }) as Varied

describe('a law drawn together', () => {
  it.each<[string, Varied, number]>([
    ['normal', law({ law: 'normal', sd: 0.2, within: 0.5 }), 3],
    ['of a tolerance', law({ law: 'normal', tolerance: 0.6, cpk: 1.1 }), 3],
    ['uniform', law({ law: 'uniform', half: 0.4, share: true }), 3],
    ['triangular', law({ law: 'triangular', low: 1, mode: 3.5, high: 4 }), 3.5],
    ['measured', law({ law: 'measured', values: [2, 3, 7] }), 4],
  ])('%s: every quantile is half as far from the middle', (_, varied, middle) => {
    const half = lawOf(tightLaw(varied, 0.5))
    for (const u of [0.02, 0.3, 0.5, 0.9])
      expect(quantileOf(half, 3, u) - middle).toBeCloseTo((quantileOf(lawOf(varied), 3, u) - middle) / 2, 12)
    expect(quantileOf(lawOf(tightLaw(varied, 0)), 3, 0.1)).toBeCloseTo(middle, 12)
  })

  it('lognormal: half as far in ratio', () => {
    const wide = law({ law: 'lognormal', factor: 1.44 })
    expect(quantileOf(lawOf(tightLaw(wide, 0.5)), 3, 0.1) / 3).toBeCloseTo(
      Math.sqrt(quantileOf(lawOf(wide), 3, 0.1) / 3),
      12,
    )
  })
})

const peak = run(quick(), 'current-clamp').result.metrics.peakForce!
const scenario = quick({
  'part.crackForce': 1.3 * peak,
  'spread.varies': [
    { path: 'part.crackForce', law: 'lognormal', factor: 1.25 },
    { path: 'part.mass', law: 'normal', sd: 0.03, share: true },
  ],
})
const study = { scenario, strategies: ['current-clamp' as const], grips: 100, seed: 4, sampling: 'sobol' as const }

describe('what tightening one tolerance buys', async () => {
  const crew = crewHere(run)
  const tallies = await runSpread(study, crew)
  const counts = await runTightened(study, tallies, 0.5, crew)
  const [crack, mass] = counts.map((each) => tightenedOf('sobol', each))

  it('is what the same parts, one quantity nearer, do one by one', () => {
    const [before, after] = [scenario, tightScenario(scenario, 'part.crackForce', 0.5)].map((each) => {
      const draw = drawing(each, study)
      return Array.from({ length: study.grips }, (_, index) => {
        const part = draw(index).scenario
        const { verdict, overloads } = run(part, 'current-clamp').result
        return { part, fit: verdict === 'held' && overloads.length === 0 }
      })
    })
    const held = (some: typeof before) => some!.filter(({ fit }) => fit).length
    expect(crack).toMatchObject({ strategy: 'current-clamp', path: 'part.crackForce' })
    expect(crack!.share).toMatchObject({ count: held(after), share: held(after) / 100 })
    expect(crack!.gain.share).toBeCloseTo((held(after) - held(before)) / 100, 12)
    for (const [at, { part }] of after!.entries()) {
      expect(part.run.seed).toBe(before![at]!.part.run.seed)
      expect(part.part.mass).toBe(before![at]!.part.part.mass)
    }
  })

  it('names the tolerance to buy, and says where none tells', () => {
    expect(crack!.gain.low).toBeGreaterThan(0)
    expect(mass!.gain.low).toBeLessThanOrEqual(0)
    expect(mass!.gain.high).toBeGreaterThanOrEqual(0)
    expect(tightSentence('grip', [mass!, crack!], 0.5, (path) => path)).toBe(
      `part.crackForce with half the scatter buys most: ${tightText('grip', crack!)}.`,
    )
    const rival = { ...mass!, gain: { ...crack!.gain, share: crack!.gain.share / 2 } }
    expect(tightSentence('grip', [rival, crack!], 0.5, (path) => path)).toBe(
      `part.crackForce with half the scatter buys most: ${tightText('grip', crack!)}. These parts cannot tell it from part.mass.`,
    )
    expect(tightSentence('grip', [mass!], 0.5, (path) => path)).toContain('No single quantity')
    expect(tightText('grip', mass!)).toContain('no difference that these parts can tell')
  })

  it('is the same from batches gripped apart', async () => {
    const apart = await runTightened(study, tallies, 0.5, crew, () => true, [3, 0])
    joinTightened(apart, await runTightened(study, tallies, 0.5, crew, () => true, [1, 4, 2]))
    expect(apart).toEqual(counts)
  })

  it('stops where nobody wants it', async () => {
    const some = await runTightened(study, tallies, 0.5, crew, () => false)
    expect(some.map(({ sizes }) => sizes.reduce((sum, each) => sum + each))).toEqual([20, 0])
  })
})

describe('the interval of a difference over the same parts', () => {
  // Bonett and Price 2012, by hand: (b+1)/(n+2) = 11/102, (c+1)/(n+2) = 3/102, middle 8/102, reach 1.959964·√((14/102 − (8/102)²)/102).
  it('of random parts is that of Bonett and Price', () => {
    const { low, high } = gainInterval('random', { sizes: [100], gained: [10], lost: [2] })
    expect((low + high) / 2).toBeCloseTo(0.0784314, 6)
    expect((high - low) / 2).toBeCloseTo(0.0702676, 6)
  })

  /** A part fails beyond a bound of x + y, and beyond it of x + y/2: the two shares are closed forms. */
  it.each(SAMPLINGS)('holds the truth in 95 ± 2 of a hundred, over 1,000 studies of 400 %s parts', (sampling) => {
    // u + v < 1.5 and u + v/2 < 1.25 on the unit square: areas 1 − 1/8 and 1 − 1/16 (triangles).
    const truth = 1 / 16
    let hits = 0
    for (let seed = 0; seed < 1000; seed++) {
      const points = pointsOf({ sampling, dimension: 2, seed })
      const [sizes, gained, lost] = [0, 1, 2].map(() => new Array<number>(SCRAMBLINGS).fill(0)) as [
        number[],
        number[],
        number[],
      ]
      for (let index = 0; index < 400; index++) {
        const [u, v] = points(index) as unknown as [number, number]
        const [was, now] = [u + v < 1.5, u + (v - 0.5) / 2 + 0.5 < 1.5]
        sizes[scramblingOf(index)]!++
        if (now && !was) gained[scramblingOf(index)]!++
        if (was && !now) lost[scramblingOf(index)]!++
      }
      const { low, high } = gainInterval(sampling, { sizes, gained, lost })
      if (low <= truth && truth <= high) hits++
    }
    expect(Math.abs(hits / 1000 - 0.95)).toBeLessThanOrEqual(0.02)
  })
})
