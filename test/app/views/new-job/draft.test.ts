/** A new job holds what was told of it and the defaults of the format, nothing else. */
import { beforeEach, describe, expect, it } from 'vitest'
import {
  armIsTold,
  fittedJob,
  forgetDraft,
  jobOf,
  missingOf,
  suggestedForce,
  useDraft,
  windowOf,
} from '../../../../app/views/new-job/draft.ts'
import { AXIS_PRESETS, checkScenario, STRATEGIES } from '../../../../sim/index.ts'

const draft = () => useDraft.getState()
const tell = (figures: object) => useDraft.setState({ figures: { ...draft().figures, ...figures } })
beforeEach(forgetDraft)

/** Standard gravity [m/s²], which the simulator rounds to 9.81. */
const G = 9.81

describe('a new job', () => {
  it('starts blank and is then the scenario of the format', () => {
    expect(missingOf(draft())).toEqual(['part.width', 'part.mass', 'jaws.friction.static'])
    expect(armIsTold(draft())).toBe(false)
    expect(windowOf(draft())).toMatchObject({ least: null, most: null })
    expect(jobOf(draft())).toEqual(checkScenario({}))
    expect(fittedJob(draft())).toBeNull()
  })

  it('has its window as soon as one can be worked out', () => {
    tell({ 'part.markForce': 60 })
    expect(windowOf(draft())).toMatchObject({ least: null, most: 60 })
    tell({ 'part.mass': 0.9 })
    expect(windowOf(draft()).least, 'mass alone says nothing').toBeNull()
    tell({ 'jaws.friction.static': 0.4 })
    // Closed form: two contacts carry the weight by friction, m·g/(2μ).
    expect(windowOf(draft()).least! / ((0.9 * G) / 0.8)).toBeCloseTo(1, 3)
    useDraft.setState({ arm: 'moves', accelerations: { up: 6 } })
    expect(windowOf(draft()).least! / ((0.9 * (G + 6)) / 0.8)).toBeCloseTo(1, 3)
    useDraft.setState({ accelerations: { across: 8 } })
    expect(windowOf(draft()).least! / ((0.9 * Math.hypot(G, 8)) / 0.8)).toBeCloseTo(1, 3)
  })

  it('wants the middle of its window', () => {
    tell({ 'part.mass': 0.9, 'jaws.friction.static': 0.45 })
    expect(suggestedForce(windowOf(draft()))! / (1.5 * G)).toBeCloseTo(1, 2)
    tell({ 'part.markForce': 60 })
    expect(suggestedForce(windowOf(draft()))! / ((G + 60) / 2)).toBeCloseTo(1, 2)
  })

  it('goes on the bench with any axis that the jaws take, set to the wanted force where the axis can give it', () => {
    useDraft.setState({ name: 'Casting', arm: 'moves', accelerations: { up: 4, across: 6, along: 3 } })
    tell({ 'part.width': 0.08, 'part.mass': 0.9, 'jaws.friction.static': 0.45, 'part.markForce': 60 })
    for (const { id, actuator } of AXIS_PRESETS) {
      useDraft.setState({ axis: id })
      const job = fittedJob(draft())
      expect(job, id).toMatchObject({ ok: true, scenario: { name: 'Casting', notes: '', actuator } })
      if (!job?.ok) continue
      expect(job.scenario.jaws.opening).toBeCloseTo(0.1, 12)
      expect(job.scenario.arm.moves.map(({ axis }) => axis)).toEqual(['up', 'across', 'along'])
      const sensed = STRATEGIES.find(({ sensed }) => sensed)!
      expect(sensed.forceOf(job.scenario).expected).toBeCloseTo(suggestedForce(windowOf(draft()))!, 1)
    }
  })
})
