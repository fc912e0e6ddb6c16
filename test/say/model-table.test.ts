import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../sim/index.ts'
import { modelTable } from '../../sim/say/model-table.ts'
import { SI } from './support.ts'

describe('the table of what the model leaves out', () => {
  const base: Outcome = {
    verdict: 'held',
    peakForce: 50,
    settledForce: 40,
    holdMargin: 0.5,
    windingTemperature: 30,
  } as Outcome
  const table = (outcome: Partial<Outcome> | null) =>
    modelTable(
      {
        strategy: 'current-clamp',
        base,
        simplifications: [
          {
            ...{
              id: 'one',
              element: 'part',
              title: 'One stiffness',
              how: 'runs',
              basis: 'Half and double.',
              figures: [],
            },
            runs: [
              {
                ...{ id: 'one', label: 'Half', edits: [] },
                outcome: outcome && ({ ...base, ...outcome } as Outcome),
                faults: outcome ? [] : [{ path: 'part.stiffness', given: '0', allowed: 'more' }],
              },
            ],
          },
        ],
      },
      SI,
    ).split('\n')

  it('says by how much a counter-run is off the run on the bench', () => {
    expect(table({ peakForce: 55, settledForce: 36 })).toEqual([
      'held: peak 50 N, settled 40 N, on an unbreakable part',
      '',
      'part: One stiffness',
      '  Half and double.',
      '  Half: held, peak 55 N (+10 %), settled 36 N (−10 %)',
    ])
  })

  it('names what changes besides, what is not there and what is not possible', () => {
    const other = { verdict: 'missed', peakForce: null, settledForce: null, holdMargin: 0.25 } as const
    expect(table(other).at(-1)).toBe('  Half: missed, peak — (—), settled — (—), to spare 25 %')
    expect(table(null).at(-1)).toBe('  Half: not possible here (part.stiffness: given 0, allowed more)')
  })
})
