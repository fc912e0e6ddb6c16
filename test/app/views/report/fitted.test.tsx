import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { type Fitting, fittingOf } from '../../../../app/store/fitted.ts'
import { FittedTo } from '../../../../app/views/report/FittedTo.tsx'
import { notesOf } from '../../../../app/views/report/job.ts'
import { editScenario, fitNote, notesWith, PRESETS, type Scenario, wordingOf } from '../../../../sim/index.ts'

const MASS = 'actuator.transmission.carriageMass'
const COULOMB = 'actuator.transmission.coulomb'
const opened = PRESETS[0]!.scenario

function edited(edits: Record<string, number>): Scenario {
  const made = editScenario(
    opened,
    Object.entries(edits).map(([path, value]) => ({ path, value })),
  )
  if (!made.ok) throw new Error('refused')
  return made.scenario
}

const fitting: Fitting = {
  kind: 'log',
  names: ['slow.csv', 'fast.csv'],
  seconds: [2, 3],
  values: [
    { path: MASS, from: 0.15, value: 0.8, low: 0.75, high: 0.85 },
    { path: COULOMB, from: 6, value: 5, low: null, high: null },
  ],
  untold: [{ kind: 'nothing', paths: [COULOMB] }],
  residuals: [{ log: 1, channel: 'current', rms: 0.02, before: 0.4, relative: 0.05 }],
}

const textOf = (scenario: Scenario, short = false) =>
  renderToStaticMarkup(<FittedTo fitting={fitting} scenario={scenario} units="si" short={short} />)
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/[\s\u00a0\u202f]+/g, ' ')

describe('the part of the report on what was fitted', () => {
  it('has each value before and after with its interval, what is left, and what is not told', () => {
    const text = textOf(edited({ [MASS]: 0.8, [COULOMB]: 5 }))
    expect(text).toContain('Fitted to 2 logs of 5.00 s together')
    expect(text).toMatch(/Carriage mass 150 g 800 g 750 g to 850 g/)
    expect(text).toMatch(/Coulomb friction 6 N 5 N not told/)
    expect(text).toContain('slow.csv, fast.csv.')
    expect(text).toContain('Log 2, current: 0.02 A left (rms), 5 % of what was measured.')
    expect(text).toContain('Coulomb friction: nothing in this log changes with it')
    expect(text).not.toContain('Changed since')
  })

  it('says which values were changed since', () => {
    expect(textOf(edited({ [MASS]: 0.8, [COULOMB]: 7 }))).toContain('Changed since: coulomb friction to 7 N.')
  })

  it('is a sentence where the page has no room', () => {
    const text = textOf(edited({ [MASS]: 0.8 }), true)
    expect(text).toContain('2 values of the axis come from slow.csv, fast.csv.')
    expect(text).not.toContain('Quantity')
  })

  it('is there as long as a value of it stands on the bench', () => {
    expect(fittingOf(fitting, edited({ [MASS]: 0.8, [COULOMB]: 7 }))).toBe(fitting)
    expect(fittingOf(fitting, opened)).toBeNull()
    expect(fittingOf(null, opened)).toBeNull()
  })

  it('takes the sentence of the fit out of the notes, and leaves the person’s own', () => {
    const note = fitNote(opened, fitting.values, fitting.seconds, wordingOf('si'))
    const noted = { ...opened, notes: notesWith('Ours.\nAnd more.', note) }
    expect(notesOf(noted, null)).toContain('Fitted to')
    expect(notesOf(noted, fitting)).toBe('Ours.\nAnd more.')
  })
})
