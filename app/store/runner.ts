/** Ties the scenario to the simulator: every change is run at once, and checked at finer steps when the bench is at rest. */
import { flushSync } from 'react-dom'
import {
  finerScenarios,
  type GripResult,
  jobOf,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  stepCheck,
  strategiesOn,
  uncheckable,
} from '../../sim/index.ts'
import type { GrowingTraces } from '../worker/columns.ts'
import { SimulatorPool } from '../worker/pool.ts'
import { simulatorCount } from '../worker/simulators.ts'
import { besideOf } from './beside.ts'
import { type Runs, type RunView, useResults } from './results.ts'
import { useScenario } from './scenario.ts'
import { useView } from './view.ts'

/** Rest after which the step error is worked out [ms]. */
const REST = 400
/** Rest after which it is seen to that every check is at work or done [ms]. */
const AGAIN = 2000

/** A run that takes longer than this [ms] shows what it has so far, so often; a shorter one appears when it is finished. */
const UNHURRIED = 150

/** How long a finished run waits for the others [ms], so that all are shown by one redraw. */
const TOGETHER = 60

const RESTARTED = 'The simulator had stopped and was restarted; the present scenario was run again.'

/** What is run: a strategy on the axis of the bench, or on the one beside it. */
interface Subject {
  strategy: StrategyId
  scenario: Scenario
  /** Title of the axis beside. */
  axis?: string
}

const laneOf = ({ strategy, axis }: Pick<Subject, 'strategy' | 'axis'>) =>
  axis === undefined ? strategy : `beside ${strategy}`

/** Starts to run whatever is on the bench, and on the axis beside it. Call once. */
export function startRunner() {
  const pool = new SimulatorPool(simulatorCount(), () => useResults.getState().say(RESTARTED))
  const fresh = new Map<string, RunView>()
  let patience = 0
  let rest = 0
  let revision = 0

  /** One redraw for all strategies, at once when the last of them is in; the charts draw within it. */
  const show = (view: Omit<RunView, 'revision'>) => {
    revision += 1
    fresh.set(laneOf(view), { ...view, revision })
    if (wanted().every((lane) => fresh.has(lane))) redraw()
    else if (patience === 0) patience = window.setTimeout(redraw, isFirst() ? 0 : TOGETHER)
  }

  const redraw = () => {
    clearTimeout(patience)
    patience = 0
    const { runs, beside } = useResults.getState()
    const next = { runs: { ...runs }, beside: { ...beside } }
    for (const view of fresh.values()) (view.axis === undefined ? next.runs : next.beside)[view.strategy] = view
    flushSync(() => useResults.setState(next))
    fresh.clear()
  }

  const run = (subject: Subject) => {
    const since = performance.now()
    const { strategy, scenario } = subject
    const common = { ...subject, ...(subject.axis !== undefined && { look: lookBeside(strategy) }) }
    let shown = since
    pool.cancel(`refine ${laneOf(subject)}`)
    pool.run(
      laneOf(subject),
      { scenario, strategy, traces: true },
      {
        progress(traces: GrowingTraces, done: number) {
          if (performance.now() - shown < UNHURRIED) return
          shown = performance.now()
          const progress = { done, since }
          const stop = () => end(common, done)
          show({ ...common, status: 'running', progress, stop, result: null, traces: traces.view(), rows: traces.rows })
        },
        done(result, traces) {
          show({ ...common, status: 'done', result, traces, rows: traces.time.length })
          clearTimeout(rest)
          rest = window.setTimeout(refine, REST)
        },
        failed: (message) => show({ ...common, status: 'failed', message, result: null, traces: null, rows: 0 }),
      },
    )
  }

  const replace = (run: RunView, by: GripResult) => {
    const { runs, beside } = useResults.getState()
    const shown = (run.axis === undefined ? runs : beside)[run.strategy]
    if (shown?.result === run.result) show({ ...shown, result: by })
  }

  const end = (subject: Subject & Pick<RunView, 'look'>, done: number) => {
    pool.cancel(laneOf(subject))
    const message = `it was stopped at ${Math.floor(100 * done)} %.`
    const again = () => run(subject)
    show({ ...subject, status: 'failed', message, again, result: null, traces: null, rows: 0 })
  }

  const refine = () => {
    const { runs, beside } = useResults.getState()
    const now = useScenario.getState()
    const second = besideOf(now)
    const present = [now.scenario, second?.fitted.ok && second.fitted.scenario]
    let open = false
    for (const run of [...Object.values(runs), ...Object.values(beside)]) {
      const { scenario, result } = run
      if (!result || result.stepErrors !== null || !present.includes(scenario)) continue
      open = true
      if (!pool.holds(`refine ${laneOf(run)}`)) check(run, result, finerScenarios(scenario, result), [])
    }
    if (open) rest = window.setTimeout(refine, AGAIN)
  }

  /** Runs what the run is to be held against, one after the other; `told` are those that have been run. */
  const check = (run: RunView, result: GripResult, [next, ...later]: Scenario[], told: GripResult[]) => {
    if (!next) return replace(run, { ...result, ...stepCheck(run.scenario, result, told) })
    pool.run(
      `refine ${laneOf(run)}`,
      { scenario: next, strategy: run.strategy, traces: false },
      {
        done: (finer) => check(run, result, later, [...told, finer]),
        failed: () => replace(run, { ...result, ...uncheckable(result) }),
      },
    )
  }

  /** What is no longer shown leaves nothing behind that could be taken for a run of the present scenario. */
  const forget = (lanes: string[]) => {
    const { runs, beside } = useResults.getState()
    for (const lane of lanes) fresh.delete(lane)
    const kept = (of: Runs) => Object.fromEntries(Object.entries(of).filter(([, run]) => !lanes.includes(laneOf(run))))
    useResults.setState({ runs: kept(runs), beside: kept(beside) })
  }

  /** Runs of one job mean nothing on the bench of another. */
  const forgetAll = () => {
    fresh.clear()
    clearTimeout(rest)
    useResults.setState({ runs: {}, beside: {}, ghosts: {}, besideGhosts: {}, pins: [] })
  }

  const runAll = () => {
    const { scenario } = useScenario.getState()
    const { shown, resting } = useView.getState()
    const beside = besideOf(useScenario.getState())
    const second = beside?.fitted.ok ? { scenario: beside.fitted.scenario, axis: beside.axis.title } : null
    const ids = resting ? [] : takenOf(scenario, shown)
    // The axis of the bench first: its answers are waited for under every drag.
    for (const { id: strategy } of STRATEGIES) {
      if (ids.includes(strategy)) run({ strategy, scenario })
      else pool.cancel(strategy)
    }
    for (const { id: strategy } of STRATEGIES) {
      if (second && ids.includes(strategy)) run({ strategy, ...second })
      else pool.cancel(laneOf({ strategy, axis: '' }))
    }
    clearTimeout(rest)
  }

  useScenario.subscribe((now, before) => {
    if (now.scenario === before.scenario && now.beside === before.beside) return
    if (now.scenario.job !== before.scenario.job) forgetAll()
    if (now.turn !== before.turn) keepGhosts(now.base.part !== before.base.part)
    if (now.beside !== before.beside || besideOf(now)?.fitted.ok === false)
      forget(STRATEGIES.map(({ id: strategy }) => laneOf({ strategy, axis: '' })))
    runAll()
  })
  useView.subscribe((now, before) => {
    if (now.shown === before.shown && now.resting === before.resting) return
    const hidden = before.shown.filter((id) => !now.shown.includes(id))
    if (hidden.length > 0) forget(hidden.flatMap((strategy) => [laneOf({ strategy }), laneOf({ strategy, axis: '' })]))
    runAll()
  })
  runAll()
}

/** Of the strategies shown those that make sense on the job. */
const takenOf = (scenario: Scenario, shown: StrategyId[]) =>
  strategiesOn(jobOf(scenario)).flatMap(({ id }) => (shown.includes(id) ? [id] : []))

/** The lanes that there is something to run in. */
function wanted(): string[] {
  const shown = takenOf(useScenario.getState().scenario, useView.getState().shown)
  const lanes = shown.map((strategy) => laneOf({ strategy }))
  if (!besideOf(useScenario.getState())?.fitted.ok) return lanes
  return [...lanes, ...shown.map((strategy) => laneOf({ strategy, axis: '' }))]
}

/** A ring along the line and before the name tells the axis beside from that of the bench; hue and dash stay the strategy's. */
function lookBeside(strategy: StrategyId): NonNullable<RunView['look']> {
  const { label, look } = STRATEGIES.find(({ id }) => id === strategy)!
  return { name: `○ ${label}`, dash: look.dash.join(' ') || undefined, sign: 'circle' }
}

/** Nothing is on the page yet, so that the first answer waits for no other. */
const isFirst = () => Object.keys(useResults.getState().runs).length === 0

/** What is shown becomes the ghost of what comes; another part leaves no ghost. */
function keepGhosts(otherPart: boolean) {
  const { runs, beside } = useResults.getState()
  const done = (of: Runs): Runs =>
    otherPart ? {} : Object.fromEntries(Object.entries(of).filter(([, run]) => run.status === 'done'))
  useResults.setState({ ghosts: done(runs), besideGhosts: done(beside) })
}
