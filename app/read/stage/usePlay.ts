import { useEffect, useRef, useSyncExternalStore } from 'react'
import { useView } from '../../store/view.ts'
import type { TimeLens } from '../../ui/timeLens.ts'

/** Longest step of the play [s]: a page that was in the background goes on where it was. */
const LONGEST_FRAME = 0.1

/** Moves the cursor along the bar at constant speed while `playing`, and stops at its end. */
export function usePlay(lens: TimeLens) {
  const playing = useView((state) => state.playing)
  const latest = useRef(lens)
  latest.current = lens
  useEffect(() => {
    if (!playing) return
    let last = 0
    let request = requestAnimationFrame(function step(now) {
      const { time, set } = useView.getState()
      const { toDisplay, toTime, seconds } = latest.current
      const passed = last === 0 ? 0 : Math.min(LONGEST_FRAME, (now - last) / 1000)
      last = now
      const place = toDisplay(time) + passed / seconds
      if (place >= 1) return set({ time: toTime(1), playing: false })
      set({ time: toTime(place) })
      request = requestAnimationFrame(step)
    })
    return () => cancelAnimationFrame(request)
  }, [playing])
}

/** What the play button needs to know. */
export interface Play {
  lens: TimeLens
  /** Where the play begins, before the first contact; and where the picture stands before anybody has moved it [s]. */
  start: number
  rest: number
}

/** Starts or stops the play; from where it ended, or where nobody has moved it yet, it starts anew before the contact. */
export function togglePlay({ lens, start, rest }: Play) {
  const { playing, time, set } = useView.getState()
  if (playing) set({ playing: false })
  else set(lens.toDisplay(time) >= 1 || time === rest ? { playing: true, time: start } : { playing: true })
}

const QUERY = '(prefers-reduced-motion: reduce)'

/** Whether the person has asked for less motion: then nothing plays by itself. */
export function useReducedMotion(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const query = matchMedia(QUERY)
      query.addEventListener('change', changed)
      return () => query.removeEventListener('change', changed)
    },
    () => matchMedia(QUERY).matches,
    () => false,
  )
}
