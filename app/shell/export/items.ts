/** What the bench can hand out as files. */
import { STRATEGIES, tracesCsv } from '../../../sim/index.ts'
import { download, fileName } from '../../store/file.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import type { MenuItem } from '../../ui/Menu.tsx'
import { saveSheet } from './sheet.ts'

export function exportItems(): MenuItem[] {
  return [
    { label: 'Picture and traces', detail: 'PNG', act: () => saveSheet(`${partName()}.png`) },
    ...STRATEGIES.map(({ id, label }) => ({
      label: `Traces of ${label}`,
      detail: 'CSV, the columns of the command line',
      act: () => {
        const traces = useResults.getState().runs[id]?.traces
        if (traces) download(new Blob([tracesCsv(traces)], { type: 'text/csv' }), `${partName()}-${id}.csv`)
        else useResults.getState().say(`${label} has no traces to export yet.`)
      },
    })),
  ]
}

const partName = () => fileName(useScenario.getState().scenario.name)
