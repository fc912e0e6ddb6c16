import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import type { RunView } from '../../../../app/store/results.ts'
import type { Column } from '../../../../app/views/report/columns.ts'
import { FigureTable } from '../../../../app/views/report/FigureTable.tsx'
import { Glance } from '../../../../app/views/report/Glance.tsx'
import { PRESETS } from '../../../../sim/index.ts'

const { scenario } = PRESETS[0]!
const empty = { strategy: 'current-clamp', scenario, result: null, traces: null, rows: 0, revision: 0 } as const
const pageOf = (run: RunView | undefined, told = {}) => {
  const columns: Column[] = [{ strategy: 'current-clamp', label: 'Current clamp', run }]
  const props = { scenario, columns, told, units: 'si', left: [] } as const
  return renderToStaticMarkup(
    <>
      <Glance {...props} />
      <FigureTable {...props} />
    </>,
  )
}

describe('a column of the report without a result', () => {
  it('says that the grip has not been run yet, and claims no figure', () => {
    for (const run of [undefined, { ...empty, status: 'running' as const }]) {
      const page = pageOf(run)
      expect(page).toContain('Gripping …')
      expect(page).toContain('is being worked out')
      expect(page).not.toContain('data-metric')
    }
  })

  it('says why a run failed, and does not wait for its causes', () => {
    const page = pageOf({ ...empty, status: 'failed', message: 'out of memory' })
    expect(page).toContain('No result')
    expect(page).toContain('could not be run: out of memory')
    expect(page).not.toContain('is being worked out')
  })

  it('draws what a long run has so far', () => {
    const traces = { time: Float64Array.of(0, 0.1, 0.2, 0), force: Float64Array.of(0, 10, 20, 0) } as never
    const page = pageOf({ ...empty, status: 'running', traces, rows: 3 })
    expect(page.match(/class="line" d="M[^"]*"/)?.[0].split('L').length).toBe(3)
  })
})
