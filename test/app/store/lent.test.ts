import { describe, expect, it } from 'vitest'
import { lentOf } from '../../../app/store/lend.ts'
import { back, nominalOf } from '../../../app/store/lent.ts'
import { drawing, editScenario, type Scenario } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'

const study = quick({
  'spread.varies': [
    { path: 'part.mass', law: 'normal', sd: 0.1, share: true },
    { path: 'jaws.friction.static', law: 'lognormal', factor: 3 },
  ],
})
const draw = drawing(study, { sampling: 'sobol', seed: 1 })
/** One whose sliding friction has followed the static one. */
const index = Array.from({ length: 50 }, (_, at) => at).find(
  (at) => draw(at).scenario.jaws.friction.sliding < study.jaws.friction.sliding,
)!
const part = draw(index).scenario
const lent = lentOf('Part 17 of the study', part, study)

const edited = (scenario: Scenario, path: string, value: unknown) => {
  const checked = editScenario(scenario, [{ path, value }])
  if (!checked.ok) throw new Error('refused')
  return checked.scenario
}

describe('a part of a study on the bench', () => {
  it('lends its values, its noise and what followed them', () => {
    expect(lent.edits.map(({ path }) => path).sort()).toEqual([
      'jaws.friction.sliding',
      'jaws.friction.static',
      'part.mass',
      'run.seed',
    ])
  })

  it('leaves the study its own scenario, the very same where nothing else was changed', () => {
    expect(nominalOf(part, lent)).toBe(study)
    expect(nominalOf(study, lent)).toBe(study)
    expect(nominalOf(part, null)).toBe(part)
  })

  it('lets every other change count, and a value that the person has set over the lent one', () => {
    const faster = edited(part, 'approach.speed', 0.031)
    expect(nominalOf(faster, lent)).toEqual(edited(study, 'approach.speed', 0.031))
    const heavier = edited(part, 'part.mass', 1.25)
    expect(nominalOf(heavier, lent)).toEqual(edited(study, 'part.mass', 1.25))
    expect(back(heavier, lent).map(({ path }) => path)).not.toContain('part.mass')
  })

  it('knows when nothing is on loan: after undo, or with another job on the bench', () => {
    expect(back(study, lent)).toEqual([])
    expect(back({ ...part, name: 'Another job' }, lent)).toEqual([])
    expect(nominalOf({ ...part, name: 'Another job' }, lent).part.mass).toBe(part.part.mass)
  })
})
