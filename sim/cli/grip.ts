import { METRICS, type Metric } from '../job/grip/metrics.ts'
import type { GripResult } from '../job/grip/result.ts'
import { forceWindow } from '../job/grip/window.ts'
import type { Rating } from '../job/ratings.ts'
import { tracesCsv } from '../run/csv.ts'
import { type Simulated, simulateGrip } from '../run/simulate.ts'
import { formatFigure, inPlainSpaces, NO_FIGURE } from '../say/figure.ts'
import { plainMetric, stepErrorOf } from '../say/metric.ts'
import { reasonOf } from '../say/reason.ts'
import { stiffWords } from '../say/window.ts'
import { wordingOf } from '../say/wording.ts'
import type { Scenario } from '../scenario/index.ts'
import { STRATEGIES } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type Command, isJson, optionsOf, Refused, refusing, SCENARIO_OPTIONS, SCENARIO_USAGE } from './command.ts'
import { core } from './core.ts'
import { readScenario } from './input.ts'
import { print, printJson, writeOut } from './output.ts'
import { progressOf } from './progress.ts'

export const grip: Command = {
  id: 'grip',
  takes: `FILE [--strategy ID|all] ${SCENARIO_USAGE} [--traces OUT.csv]`,
  does: 'what becomes of the part by each strategy, and the figures of the grip',
  run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      strategy: { type: 'string', default: 'all' },
      traces: { type: 'string' },
    } as const
    const { values, positionals } = optionsOf(args, known, 1)
    const scenario = readScenario(positionals[0], values.set)
    const ids = STRATEGIES.map((strategy) => strategy.id)
    const wanted = values.strategy === 'all' ? ids : ids.filter((id) => id === values.strategy)
    if (wanted.length === 0)
      throw new Refused([`--strategy: given "${values.strategy}", allowed all, ${ids.join(', ')}`])
    const json = isJson(values.format)
    const runs = wanted.map((id) => refusing(() => simulated(scenario, id)))
    if (values.traces !== undefined) writeTraces(values.traces, runs)
    const results = runs.map((run) => run.result)
    if (json) printJson(report(scenario, results))
    else print(table(scenario, results))
    return results.some(({ cause }) => cause === 'numbers' || cause === 'travel') ? 3 : 0
  },
}

function simulated(scenario: Scenario, id: StrategyId): Simulated {
  const progress = progressOf(id)
  try {
    return simulateGrip(scenario, id, { stepError: true, core, onProgress: progress.tell })
  } finally {
    progress.end()
  }
}

/** One file for one strategy; for several, the strategy's id goes before the ending. */
function writeTraces(file: string, runs: Simulated[]): void {
  for (const { result, traces } of runs) {
    const name = runs.length === 1 ? file : file.replace(/(\.[^./\\]*)?$/, `-${result.strategy}$1`)
    writeOut('--traces', name, tracesCsv(traces))
  }
}

const reason = (scenario: Scenario, result: GripResult) => inPlainSpaces(reasonOf(scenario, result, wordingOf('si')))

function report(scenario: Scenario, results: GripResult[]) {
  const shown = results.map((result) => {
    const { strategy, verdict, overloads, requirements, stepError, stepErrors, doubt, metrics, events, hash } = result
    const said = { strategy, verdict, overloads, requirements, doubt, reason: reason(scenario, result) }
    return { ...said, stepError, stepErrors, metrics, events, hash }
  })
  return { format: 'jawbench-result', version: 1, step: results[0]?.step, results: shown }
}

/** Figures whose error by the step has a row of its own. */
const HEADLINES = METRICS.filter(({ id }) =>
  ['peakForce', 'settledForce', 'holdMargin', 'damageMargin', 'slipDistance'].includes(id),
)

function table(scenario: Scenario, results: GripResult[]): string {
  const window = forceWindow(scenario)
  const force = (value: number | null) => inPlainSpaces(formatFigure(value))
  const line = (label: string, cells: string[]) =>
    `${label.padEnd(30)}${cells.map((cell) => cell.padStart(18)).join('')}`
  const heading = ({ label, unit, shown = unit }: Metric) => `${lower(label)}${shown === '' ? '' : ` [${shown}]`}`
  return [
    scenario.name,
    `force window: ${force(window.least)} N to ${force(window.most)} N at one contact`,
    ...(window.yields ? [stiffWords(window.leastStiff === null ? null : `${force(window.leastStiff)} N`)] : []),
    '',
    line(
      '',
      results.map(({ strategy }) => strategy),
    ),
    line(
      'verdict',
      results.map(({ verdict, doubt }) => (doubt ? `${verdict}, in doubt` : verdict)),
    ),
    line(
      'overloaded',
      results.map(({ overloads }) => overloads.map(({ rating }) => OVERLOADS[rating]).join(', ') || 'no'),
    ),
    ...(Object.keys(scenario.requirements).length > 0 ? [line('requirements', results.map(metOf))] : []),
    ...METRICS.map((metric) =>
      line(
        heading(metric),
        results.map((result) => plainMetric(metric, result)),
      ),
    ),
    ...HEADLINES.map((metric) =>
      line(
        `± ${heading(metric)}`,
        results.map((result) => inPlainSpaces(stepErrorOf(metric, result, 'si')?.text ?? NO_FIGURE)),
      ),
    ),
    '',
    ...results.map((result) => `${result.strategy}: ${reason(scenario, result)}`),
  ].join('\n')
}

/** "met", or how many of them are missed; the sentences below name them. */
function metOf({ requirements }: GripResult): string {
  const missed = requirements.filter(({ met }) => !met).length
  return missed === 0 ? 'met' : `${missed} of ${requirements.length} missed`
}

/** Ratings short enough for a column. */
const OVERLOADS: Record<Rating, string> = {
  continuousCurrent: 'current',
  peakCurrent: 'peak',
  windingTemperature: 'heat',
  busPower: 'bus',
}

const lower = (label: string) => label.charAt(0).toLowerCase() + label.slice(1)
