import { useMemo } from 'react'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { buildLens, flatLens, type TimeLens } from '../../ui/timeLens.ts'

/** The time lens over the shown runs, or time as it is where the person has switched the lens off, unless it `always` stretches. */
export function useLens(runs: RunView[], always = false): { lens: TimeLens; duration: number } {
  const duration = useScenario((state) => state.scenario.run.duration)
  const arm = useScenario((state) => state.scenario.arm)
  const on = useView((state) => state.lens) || always
  // As text, so that the same contacts of a new list of runs leave the lens as it is.
  const contacts = runs.flatMap(({ result }) => result?.metrics.contactTime ?? []).join()
  const lens = useMemo(() => {
    if (!on) return flatLens(duration)
    const moves = arm.moves.map(({ start, duration }) => ({ start, end: start + duration }))
    return buildLens({ duration, contacts: contacts === '' ? [] : contacts.split(',').map(Number), moves })
  }, [on, contacts, duration, arm])
  return { lens, duration }
}
