/** The picture: a lane a strategy, all at the instant of the shared cursor, over one time bar with its lens. */
import { useEffect, useMemo, useRef, useState } from 'react'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import type { PictureScales } from '../../../ui/picture/scales.ts'
import { Lane, OpenPicture } from './Lane.tsx'
import { laneSize } from './laneSize.ts'
import { scalesOf } from './scales.ts'
import { onKey, TimeBar } from './TimeBar.tsx'
import { Transport } from './Transport.tsx'
import { useLens } from './useLens.ts'
import { usePlay, useReducedMotion } from './usePlay.ts'
import { useWidth } from './useWidth.ts'
import './stage.css'

export function Stage({ runs }: { runs: RunView[] }) {
  const [element, width] = useWidth<HTMLDivElement>()
  const [names, setNames] = useState(false)
  const { lens, duration } = useLens(runs)
  const still = useReducedMotion()
  const scales = useSteadyScales(runs)
  usePlay(lens)
  useStartAtEnd(runs, duration)
  useKeys(lens, still)
  const size = laneSize(width, runs.length)
  return (
    <section className="stage" aria-label="Picture">
      <div ref={element} className="lanes" data-columns={size.columns}>
        {width > 0 &&
          runs.map((run) => (
            <Lane key={run.strategy} run={run} scales={scales} names={names} width={size.width} height={size.height} />
          ))}
        {width > 0 && runs.length === 0 && <NothingYet width={size.width} height={size.height} names={names} />}
      </div>
      <Transport runs={runs} lens={lens} still={still} names={names} onNames={setNames} />
      {width > 0 && <TimeBar runs={runs} lens={lens} duration={duration} width={width} still={still} />}
    </section>
  )
}

function NothingYet(size: { width: number; height: number; names: boolean }) {
  const scenario = useScenario((state) => state.scenario)
  const none = useView((state) => state.shown.length === 0)
  return (
    <figure className="lane" style={{ width: size.width }}>
      <figcaption className="lane-head">
        {none
          ? 'No strategy is shown: choose one to see it grip.'
          : 'Nothing has closed yet: the first run is on its way.'}
      </figcaption>
      <OpenPicture scenario={scenario} {...size} />
    </figure>
  )
}

/** The scales of the last finished runs, so that arrows do not jump while new ones come in. */
function useSteadyScales(runs: RunView[]): PictureScales | undefined {
  const last = useRef<PictureScales | undefined>(undefined)
  const fresh = useMemo(() => scalesOf(runs), [runs])
  if (fresh) last.current = fresh
  return last.current
}

/** The first result is shown as it ended, so that one sees at once who holds and who does not. */
function useStartAtEnd(runs: RunView[], duration: number) {
  const begun = useRef(false)
  const finished = runs.length > 0 && runs.every(({ status }) => status !== 'running')
  useEffect(() => {
    if (begun.current || !finished) return
    begun.current = true
    const { time, set } = useView.getState()
    if (time === 0) set({ time: duration })
  }, [finished, duration])
}

/** Space plays and arrow keys step wherever nothing else on the page wants them. */
function useKeys(lens: Parameters<typeof onKey>[1], still: boolean) {
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      if (event.target === document.body && [' ', 'ArrowLeft', 'ArrowRight'].includes(event.key))
        onKey(event, lens, still)
    }
    window.addEventListener('keydown', listen)
    return () => window.removeEventListener('keydown', listen)
  }, [lens, still])
}
