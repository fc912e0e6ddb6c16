import { useMemo } from 'react'
import { type Runs, useResults } from '../../store/results.ts'
import { useView } from '../../store/view.ts'

/** The runs that the newest are compared with in the charts: those before the present change, or the pinned one that was chosen. */
export function useBefore(): Runs {
  const against = useView((state) => state.against)
  const pinned = useResults((state) => state.pins.find((pin) => pin.id === against)?.run)
  const ghosts = useResults((state) => state.ghosts)
  return useMemo(() => (pinned ? { [pinned.strategy]: pinned } : ghosts), [pinned, ghosts])
}
