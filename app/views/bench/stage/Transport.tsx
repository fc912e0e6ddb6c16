/** Play, jumps, the time and how much it is slowed, the lens, and the names of the parts. */
import { useMemo } from 'react'
import { jumpsOf, nextOf } from '../../../read/stage/moments.ts'
import { paceText } from '../../../read/stage/pace.ts'
import { type Play, togglePlay } from '../../../read/stage/usePlay.ts'
import type { RunView } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import type { TimeLens } from '../../../ui/timeLens.ts'

interface TransportProps {
  runs: RunView[]
  play: Play
  /** Left out where the picture has no names. */
  names?: boolean
  onNames?(names: boolean): void
}

export function Transport({ runs, play, names, onNames }: TransportProps) {
  const playing = useView((state) => state.playing)
  const lensOn = useView((state) => state.lens)
  const { set } = useView.getState()
  const jumps = useMemo(() => jumpsOf(runs), [runs])
  const jump = (times: number[]) => {
    const time = nextOf(times, useView.getState().time)
    if (time !== undefined) set({ time, playing: false })
  }
  return (
    <div className="transport">
      <Button className="play" onClick={() => togglePlay(play)} disabled={runs.length === 0} aria-keyshortcuts="Space">
        {playing ? 'Pause' : 'Play'}
      </Button>
      <Clock lens={play.lens} />
      <fieldset className="jumps">
        <legend className="sr-only">Jump to</legend>
        {jumps
          .filter(({ times }) => times.length > 0)
          .map(({ id, label, times }) => (
            <Button key={id} quiet onClick={() => jump(times)}>
              {label}
            </Button>
          ))}
      </fieldset>
      <label className="toggle" title="Plays slowly about contact and arm moves.">
        <input type="checkbox" checked={lensOn} onChange={({ target }) => set({ lens: target.checked })} />
        Time lens
      </label>
      {onNames && (
        <label className="toggle">
          <input type="checkbox" checked={names} onChange={({ target }) => onNames(target.checked)} />
          Part names
        </label>
      )}
    </div>
  )
}

/** The instant shown, and how many times slower than it was the play is there. */
function Clock({ lens }: { lens: TimeLens }) {
  const time = useView((state) => state.time)
  return (
    <p className="clock">
      <span className="clock-time">{time.toFixed(4)}</span> <span className="unit">s</span>
      <span className="clock-rate" data-no-sheet>
        {paceText(lens.rate(time))}
      </span>
    </p>
  )
}
