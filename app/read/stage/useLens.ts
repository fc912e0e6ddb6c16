import { useMemo } from 'react'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { buildLens, flatLens, type TimeLens } from '../../ui/timeLens.ts'

export interface Pace {
  /** How the play is slowed: not at all where the person wants it as it was. */
  lens: TimeLens
  /** Places on bar and charts: even in time, unless the person wants them stretched as the play is. */
  axis: TimeLens
  duration: number
}

/** Pace and axis of the shown runs; of a `show` always slowed, and even on its axes. */
export function useLens(runs: RunView[], show = false): Pace {
  const duration = useScenario((state) => state.scenario.run.duration)
  const arm = useScenario((state) => state.scenario.arm)
  const slowed = useView((state) => state.lens) || show
  const bent = useView((state) => state.bent) && !show
  // As text, so that the same contacts of a new list of runs leave the lens as it is.
  const contacts = runs.flatMap(({ result }) => result?.metrics.contactTime ?? []).join()
  return useMemo(() => {
    const even = flatLens(duration)
    if (!slowed) return { lens: even, axis: even, duration }
    const moves = arm.moves.map(({ start, duration }) => ({ start, end: start + duration }))
    const lens = buildLens({ duration, contacts: contacts === '' ? [] : contacts.split(',').map(Number), moves })
    return { lens, axis: bent ? lens : even, duration }
  }, [slowed, bent, contacts, duration, arm])
}
