import { describe, expect, it } from 'vitest'
import { PRESETS, wordingOf } from '../../sim/index.ts'
import { fitNote, notesWith, untoldText } from '../../sim/say/fit.ts'

const teapot = PRESETS[0]!.scenario

const values = [
  { path: 'actuator.transmission.coulomb', from: 6, value: 5, low: 4.5, high: 5.5 },
  { path: 'part.relaxation.time', from: 1, value: 1, low: null, high: null },
  { path: 'log.delay', from: 0, value: 0.001, low: 0, high: 0.002 },
]

describe('what a scenario keeps of its fit', () => {
  const note = fitNote(teapot, values, [2], wordingOf('si'))

  it('names log, values and intervals, and nothing that is none of its keys', () => {
    expect(note.replace(/\s/g, ' ')).toBe(
      'Fitted to a log of 2.00 s, with 95 % intervals: coulomb friction 5 N (4.5 N to 5.5 N), relaxation time 1 s (not told).',
    )
  })

  it('takes the place of an earlier one', () => {
    const once = notesWith('Our pot.', note)
    expect(once).toBe(`Our pot.\n${note}`)
    expect(notesWith(once, note)).toBe(once)
    expect(notesWith('', note)).toBe(note)
  })
})

describe('what a log does not tell', () => {
  it('comes with the move that would, in the units of the reader', () => {
    const said = untoldText(teapot, { kind: 'hardly', paths: ['part.damping'] }, wordingOf('us'))
    expect(said).toContain('Contact damping')
    expect(said).toContain('a faster touch')
    const end = untoldText(
      teapot,
      { kind: 'end', paths: ['actuator.transmission.breakaway'], bound: 10 },
      wordingOf('us'),
    )
    expect(end).toContain('lbf')
  })
})
