import { useMemo } from 'react'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { buildLens, flatLens, type TimeLens } from '../../../ui/timeLens.ts'

/** The time lens over the shown runs, or time as it is where the person has switched the lens off. */
export function useLens(runs: RunView[]): { lens: TimeLens; duration: number } {
  const scenario = useScenario((state) => state.scenario)
  const on = useView((state) => state.lens)
  const { duration } = scenario.run
  // As text, so that the same contacts of a new list of runs leave the lens as it is.
  const contacts = runs.flatMap(({ result }) => result?.metrics.contactTime ?? []).join()
  const lens = useMemo(() => {
    if (!on) return flatLens(duration)
    const moves = scenario.arm.moves.map(({ start, duration }) => ({ start, end: start + duration }))
    return buildLens({ duration, contacts: contacts === '' ? [] : contacts.split(',').map(Number), moves })
  }, [on, contacts, duration, scenario.arm])
  return { lens, duration }
}
