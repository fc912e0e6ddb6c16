/** The command that carries a job out, by the job's own name. */
import type { Figure, Job, JobResult, RunResult } from '../job/job.ts'
import type { Rating } from '../job/ratings.ts'
import { channelsOf } from '../run/channels.ts'
import type { Core } from '../run/core.ts'
import { tracesCsv } from '../run/csv.ts'
import { type Simulated, simulate } from '../run/simulate.ts'
import { inPlainSpaces, NO_FIGURE } from '../say/figure.ts'
import { jobWords } from '../say/jobs.ts'
import { plainMetric, stepErrorOf } from '../say/metric.ts'
import { reasonOf } from '../say/reason.ts'
import { wordingOf } from '../say/wording.ts'
import type { JobId, Scenario } from '../scenario/index.ts'
import { strategiesOn } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type Command, isJson, optionsOf, Refused, refusing, SCENARIO_OPTIONS, SCENARIO_USAGE } from './command.ts'
import { readScenario } from './input.ts'
import { print, printJson, writeOut } from './output.ts'
import { progressOf } from './progress.ts'

const OPTIONS = {
  ...SCENARIO_OPTIONS,
  strategy: { type: 'string', default: 'all' },
  traces: { type: 'string' },
} as const

export const jobCommand = (job: Job): Command => ({
  id: job.id,
  takes: `FILE [--strategy ID|all] ${SCENARIO_USAGE} [--traces OUT.csv]`,
  does: jobWords({ job: job.id as JobId }).does,
  run(args, core) {
    const { values, positionals } = optionsOf(args, OPTIONS, 1)
    const scenario = readScenario(positionals[0], values.set, job.id)
    const ids = strategiesOn(job).map((strategy) => strategy.id)
    const refused = jobWords(scenario).refuses?.[values.strategy as StrategyId]
    if (refused !== undefined) throw new Refused([`--strategy: ${refused}`])
    const wanted = values.strategy === 'all' ? ids : ids.filter((id) => id === values.strategy)
    if (wanted.length === 0)
      throw new Refused([`--strategy: given "${values.strategy}", allowed all, ${ids.join(', ')}`])
    const json = isJson(values.format)
    const runs = wanted.map((id) => refusing(() => simulated(scenario, id, core)))
    if (values.traces !== undefined) writeTraces(job, values.traces, runs)
    const results = runs.map((run) => run.result)
    if (json) printJson(report(scenario, results))
    else print(table(job, scenario, results))
    return results.some(({ cause }) => cause === 'numbers' || cause === 'travel') ? 3 : 0
  },
})

function simulated(scenario: Scenario, id: StrategyId, core: Core): Simulated<JobResult> {
  const progress = progressOf(id)
  try {
    return simulate(scenario, id, { stepError: true, core, onProgress: progress.tell })
  } finally {
    progress.end()
  }
}

/** One file for one strategy; for several, the strategy's id goes before the ending. */
function writeTraces(job: Job, file: string, runs: Simulated<JobResult>[]): void {
  for (const { result, traces } of runs) {
    const name = runs.length === 1 ? file : file.replace(/(\.[^./\\]*)?$/, `-${result.strategy}$1`)
    writeOut('--traces', name, tracesCsv(traces, channelsOf(job)))
  }
}

const reason = (scenario: Scenario, result: RunResult) => inPlainSpaces(reasonOf(scenario, result, wordingOf('si')))

function report(scenario: Scenario, results: RunResult[]) {
  const shown = results.map((result) => {
    const { strategy, verdict, overloads, requirements, doubt, metrics, events, hash } = result
    const { stepError, stepErrors, scattered } = result
    const said = { strategy, verdict, overloads, requirements, doubt, reason: reason(scenario, result) }
    return { ...said, stepError, stepErrors, scattered, metrics, events, hash }
  })
  return { format: 'jawbench-result', version: 1, step: results[0]?.step, results: shown }
}

function table(job: Job, scenario: Scenario, results: RunResult[]): string {
  const headlines = job.figures.filter(({ id }) => job.headlines.includes(id))
  const line = (label: string, cells: string[]) =>
    `${label.padEnd(30)}${cells.map((cell) => cell.padStart(18)).join('')}`
  const heading = ({ label, unit, shown = unit }: Figure) => `${lower(label)}${shown === '' ? '' : ` [${shown}]`}`
  return [
    scenario.name,
    ...jobWords(scenario).window(scenario),
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
    ...job.figures.map((metric) =>
      line(
        heading(metric),
        results.map((result) => plainMetric(metric, result)),
      ),
    ),
    ...headlines.map((metric) =>
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
function metOf({ requirements }: RunResult): string {
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
