/** The picture: a lane a strategy, all at the instant of the shared cursor, over one time bar with its lens. */
import { useMemo, useRef, useState } from 'react'
import type { PictureScales } from '../../../picture/grip/scales.ts'
import { Lane, OpenPicture } from '../../../read/stage/Lane.tsx'
import { laneSizes } from '../../../read/stage/laneSize.ts'
import { nameOf, playSpan } from '../../../read/stage/moments.ts'
import { scalesOf } from '../../../read/stage/scales.ts'
import { TimeBar } from '../../../read/stage/TimeBar.tsx'
import { useLens } from '../../../read/stage/useLens.ts'
import { usePlay } from '../../../read/stage/usePlay.ts'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { useWidth } from '../../../ui/useWidth.ts'
import { useKeys, useStart } from './habits.ts'
import { Transport } from './Transport.tsx'

/** Width of a picture that has room for part names [px]. */
const NAMES_FROM = 320

/** `own` on the axis of the bench, `beside` on the one beside it. */
export function Stage({ runs: own, beside }: { runs: RunView[]; beside: RunView[] }) {
  const [element, width] = useWidth<HTMLDivElement>()
  const [names, setNames] = useState(false)
  const [chosen, setChosen] = useState<string | null>(null)
  const runs = useMemo(() => [...own, ...beside], [own, beside])
  const { lens, axis, duration } = useLens(runs)
  const play = useMemo(() => ({ lens, ...playSpan(runs, duration) }), [lens, runs, duration])
  const scales = useSteadyScales(runs)
  usePlay(lens)
  useStart(runs, play)
  useKeys(axis, play)
  // A row an axis; a single strategy has both in one.
  const { columns, each, alone } = laneSizes(width, own.length === 1 ? runs.length : own.length)
  // Names need room: without a chosen lane they make the first one large.
  const cramped = columns > 1 && each.width < NAMES_FROM
  const large = chosen ?? (names && cramped ? (runs[0] ? nameOf(runs[0]) : null) : null)
  const makeSmall = () => {
    setChosen(null)
    if (cramped) setNames(false)
  }
  const lane = (run: RunView) => {
    const isLarge = columns > 1 && nameOf(run) === large
    return (
      <Lane
        key={nameOf(run)}
        run={run}
        scales={scales}
        names={names && (isLarge || !cramped)}
        alone={isLarge}
        {...(isLarge ? alone : each)}
        corner={
          columns > 1 && (
            <Button quiet onClick={() => (isLarge ? makeSmall() : setChosen(nameOf(run)))}>
              {isLarge ? 'Smaller' : 'Larger'}
            </Button>
          )
        }
      />
    )
  }
  return (
    <section className="stage" aria-label="Picture">
      <div ref={element} className="lanes" data-columns={columns}>
        {width > 0 && inOrder(own, beside, columns, large).map(lane)}
        {width > 0 && runs.length === 0 && <NothingYet {...alone} names={names} />}
      </div>
      <div className="stage-controls">
        <Transport runs={runs} play={play} names={names} onNames={setNames} />
        {width > 0 && <TimeBar {...{ runs, axis, play, duration, width }} />}
      </div>
    </section>
  )
}

/** The large lane first; then the axis of the bench, and the one beside under it, or lane by lane where each has a row of its own. */
function inOrder(own: RunView[], beside: RunView[], columns: number, large: string | null): RunView[] {
  const second = (run: RunView) => beside.filter(({ strategy }) => strategy === run.strategy)
  const all = columns > 1 ? [...own, ...beside] : own.flatMap((run) => [run, ...second(run)])
  return all.sort((a, b) => Number(nameOf(b) === large) - Number(nameOf(a) === large))
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
