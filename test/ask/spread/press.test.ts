/** Studies of joints: what is counted is what the press itself says, with its own words for work done well. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf } from '../../../sim/ask/spread/answer.ts'
import { batchesOf, batchRunner, failedAt, type SpreadStudy } from '../../../sim/ask/spread/batch.ts'
import { demandsOf, fatesOf, isFit, outcomeOf } from '../../../sim/ask/spread/outcome.ts'
import { runBest } from '../../../sim/ask/spread/run-best.ts'
import { classOf, UNFIT } from '../../../sim/ask/spread/run-map.ts'
import { count, emptyTally, fateAt, type Tally, tallyFrom, tallyText } from '../../../sim/ask/spread/tally.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { run } from '../../../sim/cli/core.ts'
import { editScenario, JOBS, type JobId, type Scenario, strategyOf, usualSpreads } from '../../../sim/index.ts'
import { slidingForce } from '../../../sim/job/press/window.ts'
import { modelOf } from '../../../sim/model/model.ts'
import { holdSentence } from '../../../sim/say/spread.ts'
import { drawnPresses } from '../../job/press/random.ts'
import { run50 } from '../../job/press/support.ts'

const clamp = (scenario: Scenario) => outcomeOf({ scenario, faults: [] }, 'current-clamp', run)

function edited(scenario: Scenario, edits: Record<string, unknown>): Scenario {
  const checked = editScenario(
    scenario,
    Object.entries(edits).map(([path, value]) => ({ path, value })),
  )
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

/** With a winding that stays cool, so that no rating counts. */
const press50 = () =>
  edited(run50(), {
    'actuator.motor.thermal.windingResistance': 0.001,
    'actuator.motor.thermal.housingResistance': 0.001,
  })

const BAND = [
  { depth: 0.005, least: 1, most: 60_000 },
  { depth: 0.035, least: 1, most: 60_000 },
]

/** Few enough steps of the axis to wait for. */
function isShort(scenario: Scenario): boolean {
  try {
    const { axis } = modelOf(scenario, strategyOf('current-clamp')).bench
    return axis.steps * scenario.drive.currentRate * scenario.run.duration <= 5000
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    return false
  }
}

describe('one joint in a study', () => {
  it('has to spare what its nearest edge leaves, and less than nothing where it fails', () => {
    const base = edited(press50(), { 'window.band': BAND })
    const seated = clamp(base)
    expect(seated.fate).toBe('seated')
    const { metrics } = run(base, 'current-clamp').result
    // Depth alone is left of the least depth: 0.0395 of 0.035 m, less what gives (closed form: share of the least).
    const own = metrics as unknown as Record<string, number>
    expect(seated.spare).toBeCloseTo(Math.min(own.depth! / 0.035 - 1, own.bandMargin!), 12)
    const forced = clamp(edited(base, { 'window.mostForce': own.peakForce! / 1.25 }))
    expect(forced.fate).toBe('forced')
    expect(forced.spare).toBeCloseTo(-0.2, 6)
    const short = clamp(edited(base, { 'window.depth.least': 0.05 }))
    expect(short.fate).toBe('short')
    expect(short.spare).toBeCloseTo(own.depth! / 0.05 - 1, 6)
  })

  it('of a window of depth has half of its width to spare in the middle', () => {
    const base = press50()
    const { depth } = run(base, 'current-clamp').result.metrics as unknown as { depth: number }
    const middle = clamp(edited(base, { 'window.depth.least': depth - 0.001, 'window.depth.most': depth + 0.001 }))
    expect(middle.spare).toBeCloseTo(1, 6)
    const quarter = clamp(edited(base, { 'window.depth.least': depth - 0.0005, 'window.depth.most': depth + 0.0015 }))
    expect(quarter.spare).toBeCloseTo(0.5, 6)
  })

  it('is fit exactly where it has something to spare, whatever is pressed', () => {
    fc.assert(
      fc.property(drawnPresses, (scenario) => {
        if (!isShort(scenario)) return
        const { fate, failed, spare } = clamp(scenario)
        if (fate === 'refused') return
        expect(spare >= 0).toBe(isFit('press', { fate, failed }))
      }),
      { seed: 7, numRuns: 150 },
    )
  }, 120_000)

  it('missing what it is asked is unfit, not lost', () => {
    const outcome = clamp(edited(press50(), { requirements: { ramTravel: { most: 0.001 } } }))
    expect(outcome).toMatchObject({ fate: 'seated', failed: ['ramTravel'] })
    expect(classOf('press', outcome)).toBe(UNFIT)
  })
})

describe('a study of joints', () => {
  const scenario = edited(press50(), {
    'window.band': BAND,
    requirements: { ramTravel: { most: 0.0445 } },
    spread: { varies: [{ path: 'bushing.interference', law: 'uniform', half: 0.9, share: true }], together: [] },
  })
  const study: SpreadStudy = { scenario, strategies: ['current-clamp'], grips: 20, seed: 1, sampling: 'sobol' }
  const told = (): Tally => {
    const tally = emptyTally('press', 'current-clamp', 1)
    const next = batchRunner(study, run)
    for (let batch = 0; batch < batchesOf(study.grips); batch++) count(tally, next(batch, 'current-clamp'))
    return tally
  }

  it('counts verdicts of the press and remembers each joint, through a file and back', () => {
    const tally = told()
    const answer = answerOf(scenario, 'sobol', tally)
    expect(Object.keys(answer.shares)).toEqual(JOBS.press.verdicts)
    const fates = Array.from({ length: 20 }, (_, index) => fateAt(tally, index)!)
    expect(answer.shares.seated!.count).toBe(fates.filter(({ fate }) => fate === 'seated').length)
    expect(answer.fit.count).toBe(fates.filter(({ fit }) => fit).length)
    expect(answer.figures.depth!.count).toBe(20)
    expect(answer.figures.holdMargin).toBeUndefined()
    expect(holdSentence('press', answer)).toMatch(/^\d+ of 20 are seated \(/)
    expect(tallyFrom('press', JSON.parse(JSON.stringify(tallyText(tally))))).toEqual(tally)
  })

  it('remembers the last of more demands than a word has bits', () => {
    const demands = Array.from({ length: 40 }, (_, at) => `d${at}`)
    const failed = Float64Array.of(0, 1, 2 ** 39, 2 ** 39 + 2 ** 31 + 1)
    const batch = { failed } as unknown as Parameters<typeof failedAt>[1]
    expect(failedAt(demands, batch, 0)).toEqual([])
    expect(failedAt(demands, batch, 2)).toEqual(['d39'])
    expect(failedAt(demands, batch, 3)).toEqual(['d0', 'd31', 'd39'])
  })
})

describe('the best force of a press', () => {
  it('lies between what slides the bushing home and what is allowed (closed form)', async () => {
    const base = press50()
    const slide = slidingForce(base, 0.035)
    const scenario = edited(base, {
      'approach.overtravel': 0.05,
      'window.depth.least': 0.03,
      'window.mostForce': 1.6 * slide,
      spread: { varies: [{ path: 'bushing.interference', law: 'uniform', half: 0.02, share: true }], together: [] },
    })
    let best = Number.NaN
    const question = { scenario, strategy: 'current-clamp', grips: 2, seed: 1, sampling: 'sobol' } as const
    await runBest(question, crewHere(run), ({ best: found }) => {
      best = found.share > 0 ? found.setting : Number.NaN
      return true
    })
    expect(best).toBeGreaterThan(0.9 * slidingForce(base, 0.03))
    expect(best).toBeLessThan(1.6 * slide)
  }, 60_000)
})

describe('what a study asks of every job', () => {
  it.each(Object.keys(JOBS) as JobId[])('of a %s names figures and verdicts that it has', (job) => {
    const { study, figures, verdicts, well } = JOBS[job]
    const ids = figures.map(({ id }) => id)
    expect(ids).toEqual(expect.arrayContaining([...study.told, ...study.histograms]))
    expect(verdicts).toContain(well)
    expect(fatesOf(job)).toEqual([...verdicts, 'refused'])
    expect(demandsOf(job).length).toBeLessThan(53)
    for (const id of study.histograms)
      expect(figures.find((each) => each.id === id)!.unit).toBe(JOBS[job].output.effort)
  })

  it('offers spreads that a press of the file takes as they are', () => {
    const base = press50()
    const usual = usualSpreads(base)
    expect(usual.map(({ varied }) => varied.path)).toEqual(
      expect.arrayContaining(['bushing.interference', 'joint.friction.pressing', 'bushing.tilt', 'ram.gap']),
    )
    expect(usual.some(({ varied }) => varied.path.startsWith('part'))).toBe(false)
    expect(editScenario(base, [{ path: 'spread.varies', value: usual.map(({ varied }) => varied) }]).ok).toBe(true)
  })
})
