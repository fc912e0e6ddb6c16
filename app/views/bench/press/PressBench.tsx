import { useMemo } from 'react'
import { jointWindow, type Scenario, STRATEGIES } from '../../../../sim/index.ts'
import { ParameterDrawer } from '../../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../../parameters/Parameters.tsx'
import { ForceOverDepth } from '../../../read/press/ForceOverDepth.tsx'
import { PressLane } from '../../../read/press/PressLane.tsx'
import { StrategyChooser } from '../../../read/result/StrategyChooser.tsx'
import { useShownRuns } from '../../../read/result/useShownRuns.ts'
import { WindowLine } from '../../../read/result/WindowLine.tsx'
import { laneSizes } from '../../../read/stage/laneSize.ts'
import { nameOf, playSpan } from '../../../read/stage/moments.ts'
import { TimeBar } from '../../../read/stage/TimeBar.tsx'
import { useLens } from '../../../read/stage/useLens.ts'
import { usePlay } from '../../../read/stage/usePlay.ts'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { useNarrow } from '../../../ui/useNarrow.ts'
import { useWidth } from '../../../ui/useWidth.ts'
import { type CardOf, JobCard } from '../JobCard.tsx'
import { Pins } from '../pins/Pins.tsx'
import { Transport } from '../stage/Transport.tsx'
import '../bench.css'
import '../verdicts/verdicts.css'

const CARD: CardOf = {
  job: 'press',
  main: ['peakForce', 'seatForce', 'depth', 'bandMargin', 'pressTime', 'springBack'],
  underWay: 'Pressing …',
}

/** Parameters, picture, force over depth, verdicts: everything about one press at a glance. */
export function PressBench() {
  const narrow = useNarrow()
  const runs = useShownRuns()
  const scenario = useScenario((state) => state.scenario)
  const shown = useView((state) => state.shown)
  return (
    <div className="bench" data-beside={false}>
      <h1 className="sr-only">Bench</h1>
      <div className="bench-head">
        <WindowLine />
      </div>
      {narrow ? (
        <ParameterDrawer />
      ) : (
        <div className="bench-parameters">
          <Parameters />
        </div>
      )}
      <section className="verdicts" data-sheet aria-label="Verdicts">
        {STRATEGIES.filter(({ id }) => shown.includes(id)).map(({ id }) => (
          <JobCard key={id} strategy={id} {...CARD} />
        ))}
        <StrategyChooser />
        <Pins />
      </section>
      <section className="bench-middle" data-sheet aria-label="Picture and traces">
        <Stage runs={runs.filter((run) => run.scenario.job === 'press')} scenario={scenario} />
      </section>
    </div>
  )
}

function Stage({ runs, scenario }: { runs: RunView[]; scenario: Scenario }) {
  const [element, width] = useWidth<HTMLDivElement>()
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const { lens, axis, duration } = useLens(runs)
  const play = useMemo(() => ({ lens, ...playSpan(runs, duration) }), [lens, runs, duration])
  usePlay(lens)
  const { columns, each } = laneSizes(width, Math.max(1, runs.length))
  const mostForce = Math.max(
    jointWindow(scenario).seat.least ?? 0,
    ...runs.map(({ result }) => result?.metrics.peakForce ?? 0),
  )
  return (
    <section className="stage" aria-label="Picture">
      <div ref={element} className="lanes" data-columns={columns}>
        {width > 0 && runs.map((run) => <PressLane key={nameOf(run)} {...{ run, mostForce }} {...each} />)}
        {width > 0 && runs.length === 0 && <p>Nothing has been pressed yet: the first run is on its way.</p>}
      </div>
      <div className="stage-controls">
        <Transport runs={runs} play={play} />
        {width > 0 && <TimeBar {...{ runs, axis, play, duration, width }} />}
      </div>
      {width > 0 && <ForceOverDepth {...{ scenario, runs, time, units, width }} />}
    </section>
  )
}
