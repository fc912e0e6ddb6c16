import { useMemo } from 'react'
import { jointWindow, type Scenario, STRATEGIES } from '../../../../sim/index.ts'
import { ParameterDrawer } from '../../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../../parameters/Parameters.tsx'
import { Press } from '../../../picture/press/Press.tsx'
import { ForceOverDepth } from '../../../read/press/ForceOverDepth.tsx'
import { rowAt, tracesOf } from '../../../read/press/traces.ts'
import { StrategyChooser } from '../../../read/result/StrategyChooser.tsx'
import { useShownRuns } from '../../../read/result/useShownRuns.ts'
import { VerdictWord } from '../../../read/result/VerdictWord.tsx'
import { WindowLine } from '../../../read/result/WindowLine.tsx'
import { noResult, spokenVerdict } from '../../../read/result/words.ts'
import { laneSizes } from '../../../read/stage/laneSize.ts'
import { nameOf, playSpan } from '../../../read/stage/moments.ts'
import { TimeBar } from '../../../read/stage/TimeBar.tsx'
import { useLens } from '../../../read/stage/useLens.ts'
import { usePlay } from '../../../read/stage/usePlay.ts'
import { quantityUnit } from '../../../read/units.ts'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { formatFigure } from '../../../ui/format.ts'
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
        {width > 0 && runs.map((run) => <Lane key={nameOf(run)} {...{ run, time, mostForce }} {...each} />)}
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

interface LaneProps {
  run: RunView
  time: number
  mostForce: number
  width: number
  height: number
}

/** What a strategy does to the bushing, its verdict, force and depth at the instant of the cursor. */
function Lane({ run, time, mostForce, width, height }: LaneProps) {
  const units = useView((state) => state.units)
  const label = nameOf(run)
  const traces = run.traces && run.rows > 0 ? tracesOf(run.traces) : null
  const row = traces ? rowAt(traces.time, time) : 0
  const at = (name: 'travel' | 'depth' | 'force' | 'shoulderForce') => traces?.[name][row] ?? 0
  const frame = { travel: at('travel'), depth: at('depth'), force: at('force'), shoulder: at('shoulderForce') }
  const force = quantityUnit('force', units)
  const length = quantityUnit('length', units)
  const none = noResult(run)
  return (
    <figure className="lane" data-strategy={run.strategy} style={{ width }}>
      <figcaption className="lane-head">
        <span className="lane-name">{label}</span>
        <strong className="lane-word">
          {run.result ? <VerdictWord result={run.result} /> : (none?.word ?? 'Pressing …')}
        </strong>
        <span className="lane-force">
          {formatFigure(force.toShown(frame.force))} <span className="unit">{force.symbol}</span>
        </span>
      </figcaption>
      <Press
        scenario={run.scenario}
        label={`${label}${run.result ? `, ${spokenVerdict(run.result)}` : ''}: ram, bushing and bore in section.`}
        {...{ frame, width, height, mostForce }}
      />
      <div className="lane-foot">
        <p>{none?.why ?? `Depth ${formatFigure(length.toShown(Math.max(0, frame.depth)))} ${length.symbol}`}</p>
      </div>
    </figure>
  )
}
