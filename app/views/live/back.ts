/** Looking back: whoever looks at a part of what has been pauses the plant, and whoever lets it go on is back at its newest sample. */
import { SPAN, useLive } from '../../store/live.ts'
import { groupOf } from '../../ui/chart/group.ts'

/** Share of the shown span by which one looks further. */
const STRIDE = 0.8

/** `by`: −1 for earlier, 1 for later. */
export function back(by: -1 | 1) {
  const { use } = groupOf('live')
  const { now, oldest, speed } = useLive.getState()
  const newest = now?.state.time ?? 0
  const [from, to] = use.getState().window ?? [newest - SPAN * speed, newest]
  const span = to - from
  const start = Math.min(newest - span, Math.max(oldest, from + by * STRIDE * span))
  use.setState({ window: [start, start + span] })
}

/** Ends it where the plant goes on, and pauses the plant where it begins. Returns what ends both. */
export function pauseToLook(): () => void {
  const { use } = groupOf('live')
  const ends = [
    use.subscribe(({ window }, before) => {
      if (window && !before.window) useLive.setState({ running: false })
    }),
    useLive.subscribe(({ running }, before) => {
      if (running && !before.running) use.setState({ window: null, mark: null })
    }),
  ]
  return () => {
    use.setState({ window: null, mark: null })
    for (const end of ends) end()
  }
}
