import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../sim/index.ts'
import { modelTable } from '../../sim/say/model-table.ts'
import { SI } from './support.ts'

describe('the table of what the model leaves out', () => {
  const metrics = { peakForce: 50, settledForce: 40, holdMargin: 0.5, windingTemperature: 30 }
  const base: Outcome = { verdict: 'held', metrics }
  const told = [
    { id: 'peakForce', label: 'Peak force', unit: 'N' },
    { id: 'settledForce', label: 'Settled force', unit: 'N' },
    { id: 'holdMargin', label: 'Hold margin', unit: '', shown: '%' },
    { id: 'windingTemperature', label: 'Winding, highest', unit: '°C' },
  ]
  const table = (outcome: Partial<Outcome> | null) =>
    modelTable(
      {
        strategy: 'current-clamp',
        told,
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
                outcome: outcome && { ...base, ...outcome, metrics: { ...metrics, ...outcome.metrics } },
                faults: outcome ? [] : [{ path: 'part.stiffness', given: '0', allowed: 'more' }],
              },
            ],
          },
        ],
      },
      SI,
    ).split('\n')

  it('says by how much a counter-run is off the run on the bench', () => {
    expect(table({ metrics: { peakForce: 55, settledForce: 36 } })).toEqual([
      'held: peak force 50 N, settled force 40 N, hold margin 50 %, winding, highest 30 °C; of work that does not break',
      '',
      'part: One stiffness',
      '  Half and double.',
      '  Half: held, peak force 55 N (+10 %), settled force 36 N (−10 %)',
    ])
  })

  it('names what changes besides, what is not there and what is not possible', () => {
    const other = { verdict: 'missed', metrics: { peakForce: null, settledForce: null, holdMargin: 0.25 } }
    expect(table(other).at(-1)).toBe('  Half: missed, peak force — (—), settled force — (—), hold margin 25 %')
    expect(table(null).at(-1)).toBe('  Half: not possible here (part.stiffness: given 0, allowed more)')
  })
})
