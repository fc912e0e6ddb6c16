import { describe, expect, it } from 'vitest'
import { judgeGrip, overloadSentences, type Scenario } from '../../sim/index.ts'
import { holdTime, overloadsOf } from '../../sim/job/ratings.ts'
import { Sums } from '../../sim/job/sums.ts'
import { inPlainSpaces } from '../../sim/say/figure.ts'
import { quick } from '../grip/scenarios.ts'
import { SI } from '../say/support.ts'

const PERIOD = 5e-5

/** A run of 1 s that keeps one current, also in its settled window of 50 ms. */
function sumsAt(current: number, more: Partial<Sums> = {}): Sums {
  const square = current * current
  const sums = { samples: 20_000, squares: 20_000 * square, count: 1000, heating: 1000 * square, peakCurrent: current }
  return Object.assign(new Sums(), sums, { hottest: 30, winding: 30, housing: 25, peakPower: 10 }, more)
}
const endOf = (sums: Sums, left = Number.NaN) => ({ sums, period: PERIOD, left })
/** Continuous 3 A, peak 9 A, 130 °C. */
const scenario = (edits: Record<string, unknown> = {}) => quick({ 'run.duration': 1, ...edits })
const ratingsOf = (of: Scenario, sums: Sums) => overloadsOf(of, endOf(sums)).map(({ rating }) => rating)

describe('ratings', () => {
  it('are kept up to themselves, and exceeded from half a per cent on', () => {
    expect(ratingsOf(scenario(), sumsAt(3))).toEqual([])
    expect(ratingsOf(scenario(), sumsAt(3.01))).toEqual([])
    expect(overloadsOf(scenario(), endOf(sumsAt(4)))).toEqual([
      { rating: 'continuousCurrent', of: 'motor', value: 4, limit: 3, over: 1 },
    ])
    expect(ratingsOf(scenario(), sumsAt(2, { peakCurrent: 9.04 }))).toEqual([])
    expect(ratingsOf(scenario(), sumsAt(2, { peakCurrent: 9.05 }))).toEqual(['peakCurrent'])
    expect(ratingsOf(scenario(), sumsAt(2, { hottest: 130 }))).toEqual([])
    expect(ratingsOf(scenario(), sumsAt(2, { hottest: 130.1 }))).toEqual(['windingTemperature'])
  })

  it('count a current that swings by its heat, not by its mean', () => {
    expect(ratingsOf(scenario(), sumsAt(4, { current: 0 }))).toEqual(['continuousCurrent'])
  })

  it('ask a single grip for the current that it holds, and a duty for that of the whole cycle', () => {
    const brief = sumsAt(2, { squares: 20_000 * 25 })
    expect(ratingsOf(scenario(), brief)).toEqual([])
    expect(ratingsOf(scenario({ 'run.cycle': 1 }), brief)).toEqual(['continuousCurrent'])
    expect(ratingsOf(scenario({ 'run.cycle': 3 }), brief)).toEqual([]) // 5 A / √3 = 2.89 A
    expect(ratingsOf(scenario({ 'run.cycle': 2.7 }), brief)).toEqual(['continuousCurrent'])
    expect(ratingsOf(scenario({ 'run.cycle': 3 }), sumsAt(4))).toEqual([])
    expect(ratingsOf(scenario(), sumsAt(4, { count: 0 }))).toEqual([])
    expect(overloadsOf(scenario(), endOf(sumsAt(4), 0.9))).toEqual([])
  })

  it('of the bus are asked for where there is one', () => {
    expect(ratingsOf(scenario(), sumsAt(2, { peakPower: 1e6 }))).toEqual([])
    expect(ratingsOf(scenario({ 'drive.busPower': 100 }), sumsAt(2, { peakPower: 100 }))).toEqual([])
    expect(overloadsOf(scenario({ 'drive.busPower': 100 }), endOf(sumsAt(2, { peakPower: 120 })))).toEqual([
      { rating: 'busPower', of: 'drive', value: 120, limit: 100, over: 20 },
    ])
  })

  it('give no overload for figures that are none', () => {
    expect(ratingsOf(scenario(), sumsAt(Number.NaN))).toEqual([])
    expect(ratingsOf(scenario(), sumsAt(Number.POSITIVE_INFINITY))).toEqual([])
    expect(holdTime(scenario(), sumsAt(4, { count: 0 }))).toBeNaN()
  })
})

describe('a grip beyond its motor', () => {
  it('at 4 A on a motor of 1.4 A is held and overloaded, and says for how long it may last', () => {
    const beyond = scenario({ 'actuator.motor.continuousCurrent': 1.4, 'strategies.currentClamp.limit': 4 })
    const { result } = judgeGrip(beyond, 'current-clamp')
    expect(result.verdict).toBe('held')
    expect(result.overloads.map(({ rating }) => rating)).toEqual(['continuousCurrent'])
    expect(result.metrics.holdTime).toBeGreaterThan(10)
    const [sentence] = overloadSentences(beyond, result, SI).map(inPlainSpaces)
    expect(sentence).toMatch(
      /^Settles at 4 A, 186 % more than the 1\.4 A that the motor carries for ever; held on, the winding reaches 130 °C in \d+ s\.$/,
    )
  })

  it('says where its heat data do not go with its continuous current', () => {
    const light = scenario({ 'actuator.motor.continuousCurrent': 1, 'strategies.currentClamp.limit': 1.5 })
    const { result } = judgeGrip(light, 'current-clamp')
    expect(result.metrics.holdTime).toBeNull()
    expect(inPlainSpaces(overloadSentences(light, result, SI)[0]!)).toMatch(
      /for ever, although by the heat data the winding stays below 130 °C\.$/,
    )
  })
})
