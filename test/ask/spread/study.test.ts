import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf } from '../../../sim/ask/spread/answer.ts'
import { type Batch, batchesOf, batchRunner, type SpreadStudy } from '../../../sim/ask/spread/batch.ts'
import { drawing, lawOf } from '../../../sim/ask/spread/draw.ts'
import { ExactSum } from '../../../sim/ask/spread/exact-sum.ts'
import { runSpread } from '../../../sim/ask/spread/run.ts'
import { count, emptyTally, fateAt, joinTally, tallyFrom, tallyText } from '../../../sim/ask/spread/tally.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { run } from '../../../sim/cli/core.ts'
import { Refusal } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

const varies = [
  { path: 'part.width', law: 'normal', sd: 2e-4 },
  { path: 'part.mass', law: 'uniform', half: 0.3, share: true },
  { path: 'jaws.friction.static', law: 'lognormal', factor: 8 },
]
const study = (more: Partial<SpreadStudy> = {}, edits: Record<string, unknown> = {}): SpreadStudy => ({
  scenario: quick({ 'spread.varies': varies, ...edits }),
  strategies: ['current-clamp'],
  grips: 90,
  seed: 7,
  sampling: 'sobol',
  ...more,
})

const whole = study()
const runBatch = batchRunner(whole, run)
const batches = Array.from({ length: batchesOf(whole.grips) }, (_, batch) => runBatch(batch, 'current-clamp'))
const tallied = (some: Batch[]) => {
  const tally = emptyTally('grip', 'current-clamp', varies.length)
  for (const batch of some) count(tally, batch)
  return tally
}

describe('the parts of a study', () => {
  it('are the same whoever draws them, in whatever order, however many follow', () => {
    const one = drawing(whole.scenario, whole)
    const other = drawing(whole.scenario, study({ grips: 5000 }))
    for (const index of [77, 3, 41]) {
      const part = one(index)
      expect(part.scenario).toEqual(other(index).scenario)
      expect(part.scenario.part.width).toBe(part.values[0])
      expect(part.faults).toEqual([])
    }
    expect(one(3).scenario.run.seed).not.toBe(one(4).scenario.run.seed)
    expect(drawing(whole.scenario, { ...whole, seed: 8 })(3).values).not.toEqual(one(3).values)
  })

  it('grip as they would on the bench, to the last bit', () => {
    const { scenario } = drawing(whole.scenario, whole)(33)
    const { metrics } = run(scenario, 'current-clamp').result
    const batch = batches[1]!
    const row = 33 - 20
    expect(Array.from(batch.figures.slice(row * 25, row * 25 + 25))).toEqual(
      Object.values(metrics).map((value) => value ?? Number.NaN),
    )
  })

  it('take a tolerance with its capability for a standard deviation of a third of it', () => {
    const law = lawOf({ path: 'part.width', law: 'normal', tolerance: 4e-4, cpk: 4 / 3, share: false })
    expect(law).toMatchObject({ law: 'normal', sd: 1e-4 }) // closed form: tolerance over 3 C_pk
  })

  it('are refused where correlations cannot all be true, by name', () => {
    const pairs = [
      { paths: ['part.width', 'part.mass'], correlation: 0.9 },
      { paths: ['part.width', 'jaws.friction.static'], correlation: 0.9 },
      { paths: ['part.mass', 'jaws.friction.static'], correlation: -0.9 },
    ]
    const { scenario } = study({}, { 'spread.together': pairs })
    expect(() => drawing(scenario, whole)).toThrow(Refusal)
    expect(() => drawing(scenario, whole)).toThrow(
      /spread\.together: given part\.width with jaws\.friction\.static 0\.9, part\.mass with jaws\.friction\.static -0\.9/,
    )
  })
})

describe('the tally of a study', () => {
  const text = JSON.stringify(tallyText(tallied(batches)))

  it('is the same to the last bit in whatever order the batches come and however they were cut', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(batches, { minLength: batches.length }),
        fc.integer({ min: 0, max: batches.length }),
        (order, cut) => {
          const tally = tallied(order.slice(0, cut))
          joinTally(tally, tallyFrom('grip', JSON.parse(JSON.stringify(tallyText(tallied(order.slice(cut)))))))
          expect(JSON.stringify(tallyText(tally))).toBe(text)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('is what a crew brings home, all of it or up to where it was stopped', async () => {
    const [all] = await runSpread(whole, crewHere(run))
    expect(JSON.stringify(tallyText(all!))).toBe(text)
    const [some] = await runSpread(whole, crewHere(run), ({ done }) => done < 2)
    expect(some!.batches).toEqual(new Set([0, 1]))
    const [rest] = await runSpread(whole, crewHere(run), undefined, [2, 3, 4])
    joinTally(some!, rest!)
    expect(JSON.stringify(tallyText(some!))).toBe(text)
  })

  it('knows what became of each part, and counts what it knows', () => {
    const tally = tallied(batches)
    const fates = Array.from({ length: whole.grips }, (_, index) => fateAt(tally, index)!)
    const answer = answerOf(whole.scenario, 'sobol', tally)
    expect(answer.grips).toBe(90)
    expect(fateAt(tally, 90)).toBeNull()
    expect(answer.shares.held!.count).toBe(fates.filter(({ fate }) => fate === 'held').length)
    expect(answer.fit.count).toBe(fates.filter(({ fit }) => fit).length)
    const total = Object.values(answer.shares).reduce((sum, { count: parts }) => sum + parts, 0)
    expect(total).toBe(90)
    expect(answer.shares.held!.low).toBeLessThan(answer.shares.held!.share)
    expect(answer.shares.held!.high).toBeGreaterThan(answer.shares.held!.share)
  })

  it('has mean and deviation of every figure, and the parts that are worst off', () => {
    const answer = answerOf(whole.scenario, 'sobol', tallied(batches))
    const peaks = batches.flatMap(({ figures }) => Array.from(figures).filter((_, at) => at % 25 === 3))
    const mean = peaks.reduce((sum, peak) => sum + peak, 0) / peaks.length
    const sd = Math.sqrt(peaks.reduce((sum, peak) => sum + (peak - mean) ** 2, 0) / (peaks.length - 1))
    expect(answer.figures.peakForce!.mean).toBeCloseTo(mean, 9)
    expect(answer.figures.peakForce!.sd).toBeCloseTo(sd, 9)
    const spares = batches.flatMap(({ spare }) => Array.from(spare))
    expect(answer.worst[0]!.spare).toBe(Math.min(...spares))
    expect(answer.worst.map(({ index, spare }) => spares[index] === spare).every(Boolean)).toBe(true)
  })

  it('goes through a file and back also where nothing limits a part', () => {
    const free = { 'arm.gravity': 'none', 'arm.moves': [], 'part.crackForce': undefined, 'part.markForce': undefined }
    const asked = study({ grips: 20 }, { ...free, 'part.yieldForce': undefined })
    const tally = tallied([batchRunner(asked, run)(0, 'current-clamp')])
    expect(tally.worst[0]!.spare).toBeGreaterThan(1e6)
    expect(tallyFrom('grip', JSON.parse(JSON.stringify(tallyText(tally))))).toEqual(tally)
  })

  it('counts requirements, and what the range of the format cut', () => {
    const demanding = study({ grips: 20 }, { requirements: { contactTime: { most: 1e-3 } } })
    const tally = tallied([batchRunner(demanding, run)(0, 'current-clamp')])
    const answer = answerOf(demanding.scenario, 'sobol', tally)
    expect(answer.failed.contactTime).toMatchObject({ count: 20, share: 1 })
    expect(answer.fit.count).toBe(0)
    const heavy = study({ grips: 20 }, { 'spread.varies': [{ path: 'part.mass', law: 'normal', sd: 1e6 }] })
    const cut = answerOf(heavy.scenario, 'sobol', tallied([batchRunner(heavy, run)(0, 'current-clamp')])).cut
    expect(cut).toEqual([{ path: 'part.mass', share: 1 }])
  })
})

describe('an exact sum', () => {
  it('does not depend on order, and agrees with the closed form', () => {
    const values = Array.from({ length: 1000 }, (_, n) => (n + 1) * 0.1)
    const forwards = new ExactSum()
    const backwards = new ExactSum()
    for (const value of values) forwards.add(value)
    for (const value of values.toReversed()) backwards.add(value)
    expect(JSON.stringify(forwards)).toBe(JSON.stringify(backwards))
    expect(forwards.mean).toBeCloseTo(50.05, 12) // closed form: (n + 1)/2 of 0.1, 0.2 …
    expect(forwards.sd).toBeCloseTo(0.1 * Math.sqrt((1000 * 1001) / 12), 10)
    expect(ExactSum.from(JSON.parse(JSON.stringify(forwards)))).toEqual(forwards)
    const negative = new ExactSum()
    negative.add(-2.5)
    expect(ExactSum.from(negative.toJSON()).mean).toBe(-2.5)
    expect(new ExactSum().mean).toBeNaN()
  })
})
