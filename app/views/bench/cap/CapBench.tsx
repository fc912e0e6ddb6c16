import { useMemo } from 'react'
import { capIn, type Scenario, STRATEGIES } from '../../../../sim/index.ts'
import { ParameterDrawer } from '../../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../../parameters/Parameters.tsx'
import { Cap } from '../../../picture/cap/Cap.tsx'
import { TorqueOverAngle } from '../../../read/cap/TorqueOverAngle.tsx'
import { capTraces } from '../../../read/cap/traces.ts'
import { greatest } from '../../../read/chart/ticks.ts'
import { rowAt } from '../../../read/press/traces.ts'
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
import { quantityUnit, type UnitSystem } from '../../../read/units.ts'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { formatFigure, withUnit } from '../../../ui/format.ts'
import { useNarrow } from '../../../ui/useNarrow.ts'
import { useWidth } from '../../../ui/useWidth.ts'
import { type CardOf, JobCard } from '../JobCard.tsx'
import { Pins } from '../pins/Pins.tsx'
import { Transport } from '../stage/Transport.tsx'
import '../bench.css'
import '../verdicts/verdicts.css'

const CARD: CardOf = {
  job: 'cap',
  main: ['peakTorque', 'applicationTorque', 'overshoot', 'torqueMargin', 'seatAngle', 'removalAfter'],
  underWay: 'Turning …',
}

/** Parameters, picture, torque over angle, verdicts: everything about one closure at a glance. */
export function CapBench() {
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
        <Stage runs={runs.filter((run) => run.scenario.job === 'cap')} scenario={scenario} />
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
  const most = useMemo(() => mostOf(runs), [runs])
  return (
    <section className="stage" aria-label="Picture">
      <div ref={element} className="lanes" data-columns={columns}>
        {width > 0 && runs.map((run) => <Lane key={nameOf(run)} {...{ run, time, most }} {...each} />)}
        {width > 0 && runs.length === 0 && <p>Nothing has been turned yet: the first run is on its way.</p>}
      </div>
      <div className="stage-controls">
        <Transport runs={runs} play={play} />
        {width > 0 && <TimeBar {...{ runs, axis, play, duration, width }} />}
      </div>
      {width > 0 && <TorqueOverAngle {...{ scenario, runs, time, units, width }} />}
    </section>
  )
}

interface Most {
  torque: number
  preload: number
}

/** The same scale in every lane. */
function mostOf(runs: RunView[]): Most {
  const columns = runs.flatMap(({ traces, rows }) => (traces && rows > 0 ? [capTraces(traces)] : []))
  return {
    torque: Math.max(0, ...columns.map(({ torque }) => greatest(torque))),
    preload: Math.max(0, ...columns.map(({ preload }) => greatest(preload))),
  }
}

interface LaneProps {
  run: RunView
  time: number
  most: Most
  width: number
  height: number
}

/** What a strategy does to the closure, its verdict, torque and turns at the instant of the cursor. */
function Lane({ run, time, most, width, height }: LaneProps) {
  const units = useView((state) => state.units)
  const label = nameOf(run)
  const traces = run.traces && run.rows > 0 ? capTraces(run.traces) : null
  const row = traces ? rowAt(traces.time, time) : 0
  const at = (name: 'travel' | 'angle' | 'torque' | 'preload') => traces?.[name][row] ?? 0
  const strip = (run.result?.events as { strip?: number | null } | undefined)?.strip ?? null
  const stripped = strip !== null && time >= strip
  const frame = { travel: at('travel'), angle: at('angle'), torque: at('torque'), preload: at('preload'), stripped }
  const torque = quantityUnit('spindleTorque', units)
  const turns = quantityUnit('turns', units)
  const none = noResult(run)
  const turned = Math.max(0, frame.angle - capIn(run.scenario).chuck.startAngle)
  return (
    <figure className="lane" data-strategy={run.strategy} style={{ width }}>
      <figcaption className="lane-head">
        <span className="lane-name">{label}</span>
        <strong className="lane-word">
          {run.result ? <VerdictWord result={run.result} /> : (none?.word ?? 'Turning …')}
        </strong>
        <span className="lane-force">
          {formatFigure(torque.toShown(frame.torque))} <span className="unit">{torque.symbol}</span>
        </span>
      </figcaption>
      <Cap
        scenario={run.scenario}
        label={`${label}${run.result ? `, ${spokenVerdict(run.result)}` : ''}: jar, thread, closure and chuck in half section.`}
        mostTorque={most.torque}
        mostPreload={most.preload}
        {...{ frame, width, height }}
      />
      <div className="lane-foot">
        <p>
          {none?.why ??
            `${withUnit(formatFigure(turns.toShown(turned)), turns.symbol)} on the thread, preload ${forceText(frame.preload, units)}`}
        </p>
      </div>
    </figure>
  )
}

function forceText(value: number, units: UnitSystem): string {
  const force = quantityUnit('force', units)
  return withUnit(formatFigure(force.toShown(value)), force.symbol)
}
