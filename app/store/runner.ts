/** Ties the scenario to the simulator: every change is run at once, and checked at half the step when the bench is at rest. */
import { flushSync } from 'react-dom'
import {
  finerScenario,
  type GripResult,
  type Scenario,
  STRATEGIES,
  type StrategyId,
  stepCheck,
} from '../../sim/index.ts'
import type { GrowingTraces } from '../worker/columns.ts'
import { SimulatorPool } from '../worker/pool.ts'
import { simulatorCount } from '../worker/simulators.ts'
import { type RunView, useResults } from './results.ts'
import { useScenario } from './scenario.ts'
import { useView } from './view.ts'

/** Rest after which the step error is worked out [ms]. */
const REST = 400

/** A run that takes longer than this [ms] shows what it has so far, so often; a shorter one appears when it is finished. */
const UNHURRIED = 150

/** How long a finished run waits for the others [ms], so that all are shown by one redraw. */
const TOGETHER = 60

const RESTARTED = 'The simulator had stopped and was restarted; the present scenario was run again.'

/** Starts to run whatever is on the bench. Call once. */
export function startRunner() {
  const pool = new SimulatorPool(simulatorCount(), () => useResults.getState().say(RESTARTED))
  const fresh = new Map<StrategyId, RunView>()
  let patience = 0
  let rest = 0
  let revision = 0

  /** One redraw for all strategies, at once when the last of them is in; the charts draw within it. */
  const show = (view: Omit<RunView, 'revision'>) => {
    revision += 1
    fresh.set(view.strategy, { ...view, revision })
    if (useView.getState().shown.every((id) => fresh.has(id))) redraw()
    else if (patience === 0) patience = window.setTimeout(redraw, isFirst() ? 0 : TOGETHER)
  }

  const redraw = () => {
    clearTimeout(patience)
    patience = 0
    flushSync(() => useResults.setState({ runs: { ...useResults.getState().runs, ...Object.fromEntries(fresh) } }))
    fresh.clear()
  }

  const run = (strategy: StrategyId, scenario: Scenario) => {
    const since = performance.now()
    let shown = since
    const common = { strategy, scenario }
    pool.cancel(`refine ${strategy}`)
    pool.run(
      strategy,
      { scenario, strategy, traces: true },
      {
        progress(traces: GrowingTraces, done: number) {
          if (performance.now() - shown < UNHURRIED) return
          shown = performance.now()
          const progress = { done, since }
          const stop = () => end(strategy, scenario, done)
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

  const replace = ({ strategy, result }: RunView, by: GripResult) => {
    const shown = useResults.getState().runs[strategy]
    if (shown?.result === result) show({ ...shown, result: by })
  }

  const end = (strategy: StrategyId, scenario: Scenario, done: number) => {
    pool.cancel(strategy)
    const message = `it was stopped at ${Math.floor(100 * done)} %.`
    const again = () => run(strategy, scenario)
    show({ strategy, scenario, status: 'failed', message, again, result: null, traces: null, rows: 0 })
  }

  const refine = () => {
    for (const run of Object.values(useResults.getState().runs)) {
      const { strategy, scenario, result } = run
      if (!result || result.stepErrors !== null || scenario !== useScenario.getState().scenario) continue
      pool.run(
        `refine ${strategy}`,
        { scenario: finerScenario(scenario, result), strategy, traces: false },
        {
          done: (finer) => replace(run, { ...result, ...stepCheck(run.scenario, result, finer) }),
          failed: () => replace(run, { ...result, stepErrors: {} }), // the step error stays unknown
        },
      )
    }
  }

  /** A hidden strategy leaves nothing behind that could be taken for a run of the present scenario. */
  const forget = (strategy: StrategyId) => {
    fresh.delete(strategy)
    const { [strategy]: _, ...runs } = useResults.getState().runs
    useResults.setState({ runs })
  }

  const runAll = () => {
    const { scenario } = useScenario.getState()
    const { shown, resting } = useView.getState()
    for (const { id } of STRATEGIES) {
      if (shown.includes(id) && !resting) run(id, scenario)
      else pool.cancel(id)
    }
    clearTimeout(rest)
  }

  useScenario.subscribe((now, before) => {
    if (now.scenario === before.scenario) return
    if (now.turn !== before.turn) keepGhosts(now.base.part !== before.base.part)
    runAll()
  })
  useView.subscribe((now, before) => {
    if (now.shown === before.shown && now.resting === before.resting) return
    for (const id of before.shown) if (!now.shown.includes(id)) forget(id)
    runAll()
  })
  runAll()
}

/** Nothing is on the page yet, so that the first answer waits for no other. */
const isFirst = () => Object.keys(useResults.getState().runs).length === 0

/** What is shown becomes the ghost of what comes; another part leaves no ghost. */
function keepGhosts(otherPart: boolean) {
  const { runs } = useResults.getState()
  const done = Object.entries(runs).filter(([, run]) => run.status === 'done')
  useResults.setState({ ghosts: otherPart ? {} : Object.fromEntries(done) })
}
