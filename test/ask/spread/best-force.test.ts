import { describe, expect, it } from 'vitest'
import { type BestProgress, runBest } from '../../../sim/ask/spread/run-best.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { run } from '../../../sim/cli/core.ts'
import { editScenario, forceWindow, strategyOf } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

describe('the force with which most parts hold', async () => {
  const scenario = quick({
    'part.crackForce': 60,
    'part.mass': 1.5,
    'spread.varies': [
      { path: 'part.crackForce', law: 'lognormal', factor: 1.3 },
      { path: 'jaws.friction.static', law: 'lognormal', factor: 1.3 },
    ],
  })
  const question = { scenario, strategy: 'current-clamp' as const, sampling: 'sobol' as const, seed: 2, grips: 40 }
  const progress: BestProgress[] = []
  await runBest(question, crewHere(run), (each) => progress.push(each) > 0)
  const { best, edits, left } = progress.at(-1)!

  it('lies inside the force window, holds more than its edges, and may drift between what was tried', () => {
    const { least, most } = forceWindow(scenario)
    expect(best.setting).toBeGreaterThan(least!)
    expect(best.setting).toBeLessThan(most!)
    const ends = [best.curve[0]!, best.curve.at(-1)!]
    for (const end of ends) expect(best.share).toBeGreaterThan(end.share)
    expect(best.drift.low).toBeLessThanOrEqual(best.setting)
    expect(best.drift.high).toBeGreaterThanOrEqual(best.setting)
    expect(left).toBe(0)
    expect(progress.map(({ tried }) => tried)).toEqual(progress.map((_, at) => at + 1))
  })

  it('comes with the edits that ask for it', () => {
    const edited = editScenario(scenario, edits)
    if (!edited.ok) throw new Error('refused')
    expect(strategyOf('current-clamp').forceOf(edited.scenario).expected / best.setting).toBeCloseTo(1, 2)
  })

  it('ends where nobody wants to go on', async () => {
    let heard = 0
    await runBest({ ...question, grips: 20 }, crewHere(run), () => ++heard < 2)
    expect(heard).toBe(2)
  })
})
