import { describe, expect, it } from 'vitest'
import { runAfter } from '../../../sim/ask/spread/after.ts'
import { drawing } from '../../../sim/ask/spread/draw.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { bestOf } from '../../../sim/ask/tune.ts'
import { TuneJudge } from '../../../sim/ask/tune-judge.ts'
import { run } from '../../../sim/cli/core.ts'
import { afterSentence, type Edit, editScenario, type Scenario } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

const peak = run(quick(), 'current-clamp').result.metrics.peakForce!
const scenario = quick({
  'part.crackForce': 1.1 * peak,
  'spread.varies': [
    { path: 'part.crackForce', law: 'lognormal', factor: 1.25 },
    { path: 'part.width', law: 'measured', values: [0.07, 0.0702] },
  ],
})
const GRIPS = 60

/** Counted part by part on the bench. */
function heldOf(of: Scenario, seed: number): number {
  const draw = drawing(of, { sampling: 'sobol', seed })
  return Array.from({ length: GRIPS }, (_, index) => run(draw(index).scenario, 'current-clamp').result).filter(
    ({ verdict, overloads }) => verdict === 'held' && overloads.length === 0,
  ).length
}

const changed = (edits: Edit[]) => {
  const edited = editScenario(scenario, edits)
  if (!edited.ok) throw new Error('refused')
  return edited.scenario
}

describe('what a change of the file holds', async () => {
  const question = { scenario, strategy: 'current-clamp' as const, grips: GRIPS, seed: 3 }
  const stronger = [{ path: 'part.crackForce', value: 1.4 * peak }]
  const answers = await runAfter(
    question,
    [stronger, [{ path: 'part.width', value: 0.071 }], [{ path: 'part.mass', value: -1 }]],
    crewHere(run),
  )

  it('is counted over the same parts', () => {
    const [before, after] = [heldOf(scenario, 3), heldOf(changed(stronger), 3)]
    expect(after).toBeGreaterThan(before)
    expect(answers[0]!.share).toMatchObject({ count: after, share: after / GRIPS })
    expect(answers[0]!.gain.share).toBeCloseTo((after - before) / GRIPS, 12)
    expect(answers[0]!.gain.low).toBeGreaterThan(0)
    expect(afterSentence('grip', answers[0]!, GRIPS)).toMatch(/^Of 60 parts .* hold as required \(.*points more/)
  })

  it('is not told where no part would change, or the format refuses it', () => {
    expect(answers.slice(1)).toEqual([null, null])
  })

  it('is told change by change, with the share done', async () => {
    const told: [number, number][] = []
    await runAfter(question, [stronger, stronger], crewHere(run), (done, { length }) => {
      told.push([done, length])
      return true
    })
    const batches = GRIPS / 20
    expect(told.map(([done]) => done)).toEqual(Array.from({ length: 3 * batches }, (_, at) => (at + 1) / (3 * batches)))
    expect(told.map(([, answers]) => answers)).toEqual([0, 0, 0, 0, 0, 0, 1, 1, 1])
  })

  it('is not told of what was stopped', async () => {
    expect(await runAfter(question, [stronger], crewHere(run), (done) => done < 0.6)).toEqual([null])
  })
})

describe('gains judged by the share of parts that they hold', () => {
  const options = { strategy: 'current-clamp', objective: 'share', phaseMargin: 5, peakSensitivity: 5 } as const
  const judge = new TuneJudge(scenario, { ...options, spread: 0.1, reach: 0.1, parts: GRIPS }, run)
  const edits = (factor: number): Edit[] => [{ path: 'servo.kp', value: scenario.servo.kp * factor }]
  const soft = judge.judge(edits(1))

  it('is the count of the same parts on the bench', () => {
    expect(soft.sound).toBe(true)
    expect(soft.share).toBe(heldOf(scenario, 1) / GRIPS)
  })

  it('gives up where more parts are lost than by the best before', () => {
    const crushing = editScenario(scenario, [{ path: 'approach.speed', value: scenario.approach.speed * 1.15 }])
    if (!crushing.ok) throw new Error('refused')
    expect(heldOf(crushing.scenario, 1)).toBeLessThan(heldOf(scenario, 1))
    const worse = judge.judge([{ path: 'approach.speed', value: scenario.approach.speed * 1.15 }])
    expect(worse).toMatchObject({ sound: true, share: null })
  })

  it('puts the larger share first, and of equal ones the sooner grip', () => {
    const of = (share: number | null, time: number) => ({ ...soft, share, time })
    const [few, slow, fast] = [of(0.8, 0.1), of(0.9, 0.3), of(0.9, 0.2)]
    expect(bestOf([few, slow, of(null, 0.01), fast], 'share')).toBe(fast)
  })
})
