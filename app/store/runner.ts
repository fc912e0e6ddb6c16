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
  const runner = new Runner()
  useScenario.subscribe((now, before) => {
    if (now.scenario === before.scenario && now.beside === before.beside) return
    if (now.scenario.job !== before.scenario.job) runner.forgetAll()
    if (now.turn !== before.turn) keepGhosts(now.base.part !== before.base.part)
    if (now.beside !== before.beside || besideOf(now)?.fitted.ok === false)
      runner.forget(STRATEGIES.map(({ id: strategy }) => laneOf({ strategy, axis: '' })))
    runner.runAll()
  })
  useView.subscribe((now, before) => {
    if (now.shown === before.shown && now.resting === before.resting) return
    const hidden = before.shown.filter((id) => !now.shown.includes(id))
    if (hidden.length > 0)
      runner.forget(hidden.flatMap((strategy) => [laneOf({ strategy }), laneOf({ strategy, axis: '' })]))
    runner.runAll()
  })
  runner.runAll()
}

class Runner {
  private readonly pool = new SimulatorPool(simulatorCount(), () => useResults.getState().say(RESTARTED))
  /** What is to be shown by the next redraw. */
  private readonly fresh = new Map<string, RunView>()
  private patience = 0
  private rest = 0
  private revision = 0

  runAll() {
    const { scenario } = useScenario.getState()
    const { shown, resting } = useView.getState()
    const beside = besideOf(useScenario.getState())
    const second = beside?.fitted.ok ? { scenario: beside.fitted.scenario, axis: beside.axis.title } : null
    const ids = resting ? [] : takenOf(scenario, shown)
    // The axis of the bench first: its answers are waited for under every drag.
    for (const { id: strategy } of STRATEGIES) {
      if (ids.includes(strategy)) this.run({ strategy, scenario })
      else this.pool.cancel(strategy)
    }
    for (const { id: strategy } of STRATEGIES) {
      if (second && ids.includes(strategy)) this.run({ strategy, ...second })
      else this.pool.cancel(laneOf({ strategy, axis: '' }))
    }
    clearTimeout(this.rest)
  }

  /** What is no longer shown leaves nothing behind that could be taken for a run of the present scenario. */
  forget(lanes: string[]) {
    const { runs, beside } = useResults.getState()
    for (const lane of lanes) this.fresh.delete(lane)
    const kept = (of: Runs) => Object.fromEntries(Object.entries(of).filter(([, run]) => !lanes.includes(laneOf(run))))
    useResults.setState({ runs: kept(runs), beside: kept(beside) })
  }

  /** Runs of one job mean nothing on the bench of another. */
  forgetAll() {
    this.fresh.clear()
    clearTimeout(this.rest)
    useResults.setState({ runs: {}, beside: {}, ghosts: {}, besideGhosts: {}, pins: [] })
  }

  private run(subject: Subject) {
    const since = performance.now()
    const { strategy, scenario } = subject
    const common = { ...subject, ...(subject.axis !== undefined && { look: lookBeside(strategy) }) }
    const stop = (done: number) => () => this.end(common, done)
    let shown = since
    this.pool.cancel(`refine ${laneOf(subject)}`)
    this.pool.run(
      laneOf(subject),
      { scenario, strategy, traces: true },
      {
        progress: (traces: GrowingTraces, done: number) => {
          if (performance.now() - shown < UNHURRIED) return
          shown = performance.now()
          const under = { progress: { done, since }, stop: stop(done), traces: traces.view(), rows: traces.rows }
          this.show({ ...common, status: 'running', result: null, ...under })
        },
        done: (result, traces) => {
          this.show({ ...common, status: 'done', result, traces, rows: traces.time.length })
          this.refineIn(REST)
        },
        failed: (message) => this.show({ ...common, status: 'failed', message, result: null, traces: null, rows: 0 }),
      },
    )
  }

  private end(subject: Subject & Pick<RunView, 'look'>, done: number) {
    this.pool.cancel(laneOf(subject))
    const message = `it was stopped at ${Math.floor(100 * done)} %.`
    const again = () => this.run(subject)
    this.show({ ...subject, status: 'failed', message, again, result: null, traces: null, rows: 0 })
  }

  /** One redraw for all strategies, at once when the last of them is in; the charts draw within it. */
  private show(view: Omit<RunView, 'revision'>) {
    this.revision += 1
    this.fresh.set(laneOf(view), { ...view, revision: this.revision })
    if (wanted().every((lane) => this.fresh.has(lane))) this.redraw()
    else if (this.patience === 0) this.patience = window.setTimeout(() => this.redraw(), isFirst() ? 0 : TOGETHER)
  }

  private redraw() {
    clearTimeout(this.patience)
    this.patience = 0
    const { runs, beside } = useResults.getState()
    const next = { runs: { ...runs }, beside: { ...beside } }
    for (const view of this.fresh.values()) (view.axis === undefined ? next.runs : next.beside)[view.strategy] = view
    flushSync(() => useResults.setState(next))
    this.fresh.clear()
  }

  private refineIn(time: number) {
    clearTimeout(this.rest)
    this.rest = window.setTimeout(() => this.refine(), time)
  }

  /** Sees to it that every run shown is held against finer steps. */
  private refine() {
    const { runs, beside } = useResults.getState()
    const now = useScenario.getState()
    const second = besideOf(now)
    const present = [now.scenario, second?.fitted.ok && second.fitted.scenario]
    let open = false
    for (const run of [...Object.values(runs), ...Object.values(beside)]) {
      const { scenario, result } = run
      if (!result || result.stepErrors !== null || !present.includes(scenario)) continue
      open = true
      if (!this.pool.holds(`refine ${laneOf(run)}`)) this.check(run, result, finerScenarios(scenario, result), [])
    }
    if (open) this.refineIn(AGAIN)
  }

  /** Runs what the run is to be held against, one after the other; `told` are those that have been run. */
  private check(run: RunView, result: GripResult, [next, ...later]: Scenario[], told: GripResult[]) {
    if (!next) return this.replace(run, { ...result, ...stepCheck(run.scenario, result, told) })
    this.pool.run(
      `refine ${laneOf(run)}`,
      { scenario: next, strategy: run.strategy, traces: false },
      {
        done: (finer) => this.check(run, result, later, [...told, finer]),
        failed: () => this.replace(run, { ...result, ...uncheckable(result) }),
      },
    )
  }

  private replace(run: RunView, by: GripResult) {
    const { runs, beside } = useResults.getState()
    const shown = (run.axis === undefined ? runs : beside)[run.strategy]
    if (shown?.result === run.result) this.show({ ...shown, result: by })
  }
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
