import { useMemo } from 'react'
import {
  jobOf,
  jobWords,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  strategiesOn,
  tensionLines,
  tensionWindow,
  wordingOf,
} from '../../../../sim/index.ts'
import { ParameterDrawer } from '../../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../../parameters/Parameters.tsx'
import { Web } from '../../../picture/web/Web.tsx'
import { rowAt } from '../../../read/press/traces.ts'
import { StrategyChooser } from '../../../read/result/StrategyChooser.tsx'
import { useShownRuns } from '../../../read/result/useShownRuns.ts'
import { VerdictWord } from '../../../read/result/VerdictWord.tsx'
import { noResult, spokenVerdict } from '../../../read/result/words.ts'
import { laneSizes } from '../../../read/stage/laneSize.ts'
import { nameOf, playSpan } from '../../../read/stage/moments.ts'
import { TimeBar } from '../../../read/stage/TimeBar.tsx'
import { useLens } from '../../../read/stage/useLens.ts'
import { usePlay } from '../../../read/stage/usePlay.ts'
import { quantityUnit, type UnitSystem } from '../../../read/units.ts'
import { TensionOverTime } from '../../../read/web/TensionOverTime.tsx'
import { lineWay, webTraces } from '../../../read/web/traces.ts'
import type { RunView } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { formatFigure, withUnit } from '../../../ui/format.ts'
import { useNarrow } from '../../../ui/useNarrow.ts'
import { useWidth } from '../../../ui/useWidth.ts'
import { type CardOf, JobCard } from '../JobCard.tsx'
import { Transport } from '../stage/Transport.tsx'
import '../bench.css'
import '../verdicts/verdicts.css'

const CARD: CardOf = {
  job: 'web',
  main: ['leastTension', 'mostTension', 'tensionRipple', 'slackMargin', 'stretchMargin', 'draw'],
  underWay: 'Pulling …',
}

/** Parameters, picture, tension over time, verdicts: everything about one web at a glance. */
export function WebBench() {
  const narrow = useNarrow()
  const runs = useShownRuns()
  const scenario = useScenario((state) => state.scenario)
  const shown = useView((state) => state.shown)
  const units = useView((state) => state.units)
  const taken = strategiesOn(jobOf(scenario)).map(({ id }) => id)
  return (
    <div className="bench" data-beside={false}>
      <h1 className="sr-only">Bench</h1>
      <div className="bench-head">
        <p className="window-line">
          <strong>Tension window</strong> {tensionLines(scenario, wordingOf(units)).join('; ')}.
        </p>
      </div>
      {narrow ? (
        <ParameterDrawer />
      ) : (
        <div className="bench-parameters">
          <Parameters />
        </div>
      )}
      <section className="verdicts" data-sheet aria-label="Verdicts">
        {STRATEGIES.filter(({ id }) => shown.includes(id)).map(({ id }) =>
          taken.includes(id) ? (
            <JobCard key={id} strategy={id} {...CARD} />
          ) : (
            <Refused key={id} {...{ id, scenario }} />
          ),
        )}
        <StrategyChooser />
      </section>
      <section className="bench-middle" data-sheet aria-label="Picture and traces">
        <Stage runs={runs.filter((run) => run.scenario.job === 'web')} scenario={scenario} />
      </section>
    </div>
  )
}

/** In the place of a verdict on a strategy that makes no sense on a web. */
function Refused({ id, scenario }: { id: StrategyId; scenario: Scenario }) {
  const { label, summary } = STRATEGIES.find((each) => each.id === id)!
  return (
    <article className="verdict" data-strategy={id} aria-label={label}>
      <header>
        <h2 title={summary}>{label}</h2>
      </header>
      <p className="word">Not for a web</p>
      <p className="reason">{jobWords(scenario).refuses?.[id]}</p>
    </article>
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
  const mostTension = Math.max(
    tensionWindow(scenario).least,
    ...runs.map(({ result }) => (result?.metrics as { mostTension?: number | null } | undefined)?.mostTension ?? 0),
  )
  return (
    <section className="stage" aria-label="Picture">
      <div ref={element} className="lanes" data-columns={columns}>
        {width > 0 && runs.map((run) => <Lane key={nameOf(run)} {...{ run, time, mostTension }} {...each} />)}
        {width > 0 && runs.length === 0 && <p>Nothing has been pulled yet: the first run is on its way.</p>}
      </div>
      <div className="stage-controls">
        <Transport runs={runs} play={play} />
        {width > 0 && <TimeBar {...{ runs, axis, play, duration, width }} />}
      </div>
      {width > 0 && <TensionOverTime {...{ scenario, runs, time, units, width }} />}
    </section>
  )
}

interface LaneProps {
  run: RunView
  time: number
  mostTension: number
  width: number
  height: number
}

/** What a strategy does to the web, its verdict, tension and slack at the instant of the cursor. */
function Lane({ run, time, mostTension, width, height }: LaneProps) {
  const units = useView((state) => state.units)
  const label = nameOf(run)
  const frame = frameOf(run, time)
  const force = quantityUnit('force', units)
  const none = noResult(run)
  return (
    <figure className="lane" data-strategy={run.strategy} style={{ width }}>
      <figcaption className="lane-head">
        <span className="lane-name">{label}</span>
        <strong className="lane-word">
          {run.result ? <VerdictWord result={run.result} /> : (none?.word ?? 'Pulling …')}
        </strong>
        <span className="lane-force">
          {formatFigure(force.toShown(frame.tension))} <span className="unit">{force.symbol}</span>
        </span>
      </figcaption>
      <Web
        scenario={run.scenario}
        label={`${label}${run.result ? `, ${spokenVerdict(run.result)}` : ''}: line, gauge roll, idlers and driven roll in section.`}
        {...{ frame, width, height, mostTension }}
      />
      <div className="lane-foot">
        <p>{none?.why ?? footOf(frame, units)}</p>
      </div>
    </figure>
  )
}

type Name = Exclude<keyof ReturnType<typeof webTraces>, 'time'>

function frameOf({ traces, rows, result, scenario }: RunView, time: number) {
  const columns = traces && rows > 0 ? webTraces(traces) : null
  const row = columns ? rowAt(columns.time, time) : 0
  const at = (name: Name) => columns?.[name][row] ?? 0
  const torn = (result?.events as { torn?: number | null } | undefined)?.torn ?? null
  return {
    travel: at('travel'),
    way: traces && columns ? (lineWay(traces)[row] ?? 0) : 0,
    tension: at('tension'),
    rollTension: at('rollTension'),
    slack: at('slack'),
    radius: at('radius'),
    lineSpeed: at('lineSpeed'),
    torn: torn !== null && time >= torn,
    scenario,
  }
}

function footOf({ lineSpeed, slack, radius, torn }: ReturnType<typeof frameOf>, units: UnitSystem): string {
  const [speed, length] = [quantityUnit('speed', units), quantityUnit('length', units)]
  const said = ({ toShown, symbol }: typeof speed, value: number) => withUnit(formatFigure(toShown(value)), symbol)
  const state = torn ? 'torn' : slack > 0 ? `slack by ${said(length, slack)}` : `roll radius ${said(length, radius)}`
  return `Line at ${said(speed, lineSpeed)}, ${state}`
}
