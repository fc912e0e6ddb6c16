/** What the picture of every bench does by itself. */
import { useEffect, useRef } from 'react'
import { jobOf, strategiesOn } from '../../../../sim/index.ts'
import { onKey } from '../../../read/stage/TimeBar.tsx'
import { type Play, useReducedMotion } from '../../../read/stage/usePlay.ts'
import { isFirstPlay } from '../../../store/keep.ts'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import type { TimeLens } from '../../../ui/timeLens.ts'

/**
 * On the first visit the first result plays once by itself, unless motion is not wanted. Else it is shown as it ended, but with
 * every part still in its jaws: one sees at once who holds and who does not.
 */
export function useStart(runs: RunView[], { start, rest }: Play) {
  const begun = useRef(false)
  const still = useReducedMotion()
  const job = useScenario((state) => jobOf(state.scenario))
  const shown = useView((state) => state.shown)
  const wanted = strategiesOn(job).filter(({ id }) => shown.includes(id)).length
  const finished = runs.length > 0 && runs.length >= wanted && runs.every(({ status }) => status !== 'running')
  useEffect(() => {
    if (begun.current || !finished) return
    begun.current = true
    const { time, set } = useView.getState()
    if (time === 0) set(!still && isFirstPlay() ? { time: start, playing: true } : { time: rest })
  }, [finished, start, rest, still])
}

/** Space plays and arrow keys step wherever nothing else on the page wants them. */
export function useKeys(axis: TimeLens, play: Play) {
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      if (event.target === document.body && [' ', 'ArrowLeft', 'ArrowRight'].includes(event.key))
        onKey(event, axis, play)
    }
    window.addEventListener('keydown', listen)
    return () => window.removeEventListener('keydown', listen)
  }, [axis, play])
}
