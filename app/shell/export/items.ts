/** What the bench can hand out as files; what makes them is loaded when one is asked for. */
import { STRATEGIES, type StrategyId } from '../../../sim/index.ts'
import { fileName } from '../../store/file.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import type { MenuItem } from '../../ui/Menu.tsx'

export function exportItems(): MenuItem[] {
  return [
    { label: 'Picture and traces', detail: 'PNG', act: savePicture },
    ...STRATEGIES.map(({ id, label }) => ({
      label: `Traces of ${label}`,
      detail: 'CSV, the columns of the command line',
      act: () => saveTraces(id, label),
    })),
  ]
}

async function savePicture() {
  const { saveSheet } = await import('./sheet.ts')
  saveSheet(`${partName()}.png`)
}

async function saveTraces(id: StrategyId, label: string) {
  const run = useResults.getState().runs[id]
  if (!run?.traces) return useResults.getState().say(`${label} has no traces to export yet.`)
  const { saveCsv } = await import('./csv.ts')
  saveCsv(run.scenario, run.traces, `${partName()}-${id}.csv`)
}

const partName = () => fileName(useScenario.getState().scenario.name)
