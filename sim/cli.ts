/**
 * The command line. Exit 0: ran, whatever the verdict; 2: input refused, each fault on stderr; 3: the simulation left the
 * range of finite numbers.
 */
import { readFileSync, statSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { modelReport } from './ask/model/report.ts'
import { rescues, sortRescues } from './ask/rescue.ts'
import { explain } from './ask/why.ts'
import { figureText } from './cli/figure.ts'
import { whyJson, whyTable } from './cli/why.ts'
import { tracesCsv } from './grip/csv.ts'
import { METRICS, type Metric } from './grip/metrics.ts'
import type { GripResult } from './grip/result.ts'
import { type Simulated, simulateGrip } from './grip/simulate.ts'
import { forceWindow } from './grip/window.ts'
import { analyseLoops } from './loops/analyse.ts'
import { formatFigure, inPlainSpaces } from './say/figure.ts'
import { frictionNote, missingLoops } from './say/loops.ts'
import { loopsTable, rowOf } from './say/loops-table.ts'
import { plainMetric } from './say/metric.ts'
import { modelTable, spokenModel } from './say/model-table.ts'
import { reasonOf } from './say/reason.ts'
import { wordingOf } from './say/wording.ts'
import {
  editScenario,
  faultLine,
  LONGEST_FILE,
  PRESETS,
  parseScenario,
  publishedSchema,
  type Scenario,
} from './scenario/index.ts'
import { STRATEGIES } from './strategy/index.ts'

const SI = wordingOf('si')

/** An input that is refused; each line goes to stderr. */
class Refused extends Error {
  readonly lines: string[]
  constructor(lines: string[]) {
    super(lines.join('\n'))
    this.lines = lines
  }
}

const USAGE = `jawbench grip FILE [--strategy ID|all] [--set PATH=VALUE …] [--format table|json] [--traces OUT.csv]
jawbench loops FILE [--spread SHARE] [--force NEWTONS] [--set PATH=VALUE …] [--format table|json]
                          margins of the four loops in free air and on the softest, nominal and stiffest part
jawbench why FILE --strategy ID [--set PATH=VALUE …] [--format table|json]
                          what made the force, cause by cause
jawbench rescue FILE --strategy ID [--set PATH=VALUE …] [--format table|json]
                          least change of each parameter that saves the part, or that loses a held one
jawbench model FILE --strategy ID [--set PATH=VALUE …] [--format table|json]
                          what the model leaves out, and how far off it can be for that
jawbench presets [ID]     list the presets, or print one as a scenario file
jawbench schema           print the JSON Schema of a scenario file
FILE is a scenario file, the id of a preset, or - for standard input.`

type Command = (args: string[]) => number

const COMMANDS: Record<string, Command> = {
  grip,
  loops,
  why,
  rescue,
  model,
  presets,
  schema: (args) => {
    options(args, {}, 0)
    print(JSON.stringify(publishedSchema(), null, 2))
    return 0
  },
}

const print = (text: string) => process.stdout.write(`${text}\n`)

function options<const O extends NonNullable<Parameters<typeof parseArgs>[0]>['options']>(
  args: string[],
  known: O,
  most: number,
) {
  try {
    const parsed = parseArgs({ args, options: known, allowPositionals: true, strict: true })
    const extra = parsed.positionals[most]
    if (extra !== undefined) throw new Error(`unexpected argument "${extra}"`)
    return parsed
  } catch (error) {
    throw new Refused([error instanceof Error ? error.message : String(error), USAGE])
  }
}

function presets(args: string[]): number {
  const [id] = options(args, {}, 1).positionals
  if (id === undefined) {
    for (const preset of PRESETS) print(`${preset.id.padEnd(12)}${preset.title}. ${preset.summary}`)
    return 0
  }
  const preset = PRESETS.find((candidate) => candidate.id === id)
  if (!preset) throw new Refused([`presets: given "${id}", allowed ${PRESETS.map((p) => p.id).join(', ')}`])
  print(JSON.stringify(preset.scenario, null, 2))
  return 0
}

function grip(args: string[]): number {
  const { values, positionals } = options(
    args,
    {
      strategy: { type: 'string', default: 'all' },
      set: { type: 'string', multiple: true, default: [] },
      format: { type: 'string', default: 'table' },
      traces: { type: 'string' },
    },
    1,
  )
  const scenario = readScenario(positionals[0], values.set)
  const ids = STRATEGIES.map((strategy) => strategy.id)
  const wanted = values.strategy === 'all' ? ids : ids.filter((id) => id === values.strategy)
  if (wanted.length === 0) throw new Refused([`--strategy: given "${values.strategy}", allowed all, ${ids.join(', ')}`])
  checkFormat(values.format)
  const runs = wanted.map((id) => simulate(scenario, id))
  if (values.traces !== undefined) writeTraces(values.traces, runs)
  const results = runs.map((run) => run.result)
  print(values.format === 'json' ? report(scenario, results) : table(scenario, results))
  return results.some(({ cause }) => cause === 'numbers' || cause === 'travel') ? 3 : 0
}

function loops(args: string[]): number {
  const { values, positionals } = options(
    args,
    {
      spread: { type: 'string' },
      force: { type: 'string' },
      set: { type: 'string', multiple: true, default: [] },
      format: { type: 'string', default: 'table' },
    },
    1,
  )
  const scenario = readScenario(positionals[0], values.set)
  checkFormat(values.format)
  const result = refusing(() =>
    analyseLoops(scenario, { spread: numberOf('--spread', values.spread), force: numberOf('--force', values.force) }),
  )
  const { workingPoints } = result
  const rows = result.loops.map((loop) => rowOf(loop, SI))
  const friction = inPlainSpaces(frictionNote(result.friction, SI))
  const note = missingLoops(result)
  print(
    values.format === 'json'
      ? JSON.stringify({ format: 'jawbench-loops', version: 1, workingPoints, loops: rows, friction, note }, null, 2)
      : loopsTable(result, SI),
  )
  return 0
}

function numberOf(name: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  const value = text.trim() === '' ? Number.NaN : Number(text)
  if (!Number.isFinite(value)) throw new Refused([`${name}: given "${text}", allowed a number`])
  return value
}

function checkFormat(format: string): void {
  if (format !== 'table' && format !== 'json') throw new Refused([`--format: given "${format}", allowed table, json`])
}

/** A RangeError of the simulator is an input that it refuses. */
function refusing<T>(compute: () => T): T {
  try {
    return compute()
  } catch (error) {
    if (error instanceof RangeError) throw new Refused([error.message])
    throw error
  }
}

/** Scenario, strategy and format of a question about one strategy. */
function question(args: string[]) {
  const { values, positionals } = options(
    args,
    {
      strategy: { type: 'string', default: '' },
      set: { type: 'string', multiple: true, default: [] },
      format: { type: 'string', default: 'table' },
    },
    1,
  )
  const ids = STRATEGIES.map(({ id }) => id)
  const strategy = ids.find((id) => id === values.strategy)
  if (!strategy) throw new Refused([`--strategy: given "${values.strategy}", allowed ${ids.join(', ')}`])
  if (values.format !== 'table' && values.format !== 'json')
    throw new Refused([`--format: given "${values.format}", allowed table, json`])
  return { scenario: readScenario(positionals[0], values.set), strategy, json: values.format === 'json' }
}

function why(args: string[]): number {
  const { scenario, strategy, json } = question(args)
  const { verdict } = simulate(scenario, strategy).result
  const told = refusing(() => explain(scenario, strategy, verdict))
  print(json ? whyJson(scenario, strategy, told) : whyTable(scenario, strategy, told))
  return 0
}

function rescue(args: string[]): number {
  const { scenario, strategy, json } = question(args)
  const { verdict } = simulate(scenario, strategy).result
  const found = refusing(() => sortRescues([...rescues(scenario, strategy)].map((progress) => progress.rescue)))
  if (json) {
    print(JSON.stringify({ format: 'jawbench-rescue', version: 1, strategy, verdict, rescues: found }, null, 2))
    return 0
  }
  const lines = found.map(({ path, from, value, becomes, along, tried }) => {
    const tail =
      value === null
        ? `  none from ${figureText(tried[0])} to ${figureText(tried[1])}`
        : `  ${[becomes, ...along.map((edit) => `with ${edit.path} ${figureText(edit.value as number)}`)].join(', ')}`
    return `${path.padEnd(42)}${figureText(from).padStart(12)}${figureText(value).padStart(12)}${tail}`
  })
  print([verdict === 'held' ? 'held; lost from here on:' : `${verdict}; held from here on:`, ...lines].join('\n'))
  return 0
}

function model(args: string[]): number {
  const { scenario, strategy, json } = question(args)
  const told = spokenModel(
    refusing(() => modelReport(scenario, strategy)),
    SI,
  )
  print(json ? JSON.stringify({ format: 'jawbench-model', version: 1, ...told }, null, 2) : modelTable(told, SI))
  return 0
}

function readScenario(file: string | undefined, sets: string[]): Scenario {
  const checked = file === undefined ? { ok: true as const, scenario: null } : parseScenario(textOf(file))
  if (!checked.ok) throw new Refused(checked.faults.map(faultLine))
  if (checked.scenario === null) throw new Refused(['no scenario file was named', USAGE])
  if (sets.length === 0) return checked.scenario
  const edited = editScenario(checked.scenario, sets.map(assignment))
  if (!edited.ok) throw new Refused(edited.faults.map(faultLine))
  return edited.scenario
}

function textOf(file: string): string {
  const preset = PRESETS.find((candidate) => candidate.id === file)
  if (preset) return JSON.stringify(preset.scenario)
  try {
    if (file !== '-' && statSync(file).size > LONGEST_FILE)
      throw new Error(`the file has ${statSync(file).size} bytes, allowed at most ${LONGEST_FILE}`)
    return readFileSync(file === '-' ? 0 : file, 'utf8')
  } catch (error) {
    throw new Refused([`${file}: ${error instanceof Error ? error.message : error}`])
  }
}

function assignment(text: string): { path: string; value: unknown } {
  const at = text.indexOf('=')
  if (at < 1) throw new Refused([`--set: given "${text}", allowed PATH=VALUE such as servo.kp=3200`])
  const value = text.slice(at + 1)
  try {
    return { path: text.slice(0, at), value: JSON.parse(value) }
  } catch {
    return { path: text.slice(0, at), value }
  }
}

const simulate = (scenario: Scenario, id: GripResult['strategy']): Simulated =>
  refusing(() => simulateGrip(scenario, id, { stepError: true }))

/** One file for one strategy; for several, the strategy's id goes before the ending. */
function writeTraces(file: string, runs: Simulated[]): void {
  for (const { result, traces } of runs) {
    const name = runs.length === 1 ? file : file.replace(/(\.[^./\\]*)?$/, `-${result.strategy}$1`)
    try {
      writeFileSync(name, tracesCsv(traces))
    } catch (error) {
      throw new Refused([`--traces: ${error instanceof Error ? error.message : error}`])
    }
  }
}

function report(scenario: Scenario, results: GripResult[]): string {
  const shown = results.map((result) => {
    const { strategy, verdict, stepError, metrics, events, hash } = result
    return { strategy, verdict, reason: reason(scenario, result), stepError, metrics, events, hash }
  })
  return JSON.stringify({ format: 'jawbench-result', version: 1, step: results[0]?.step, results: shown }, null, 2)
}

const reason = (scenario: Scenario, result: GripResult) => inPlainSpaces(reasonOf(scenario, result, SI))

function table(scenario: Scenario, results: GripResult[]): string {
  const window = forceWindow(scenario)
  const force = (value: number | null) => inPlainSpaces(formatFigure(value))
  const line = (label: string, cells: string[]) =>
    `${label.padEnd(30)}${cells.map((cell) => cell.padStart(18)).join('')}`
  const heading = ({ label, unit, shown = unit }: Metric) => `${lower(label)}${shown === '' ? '' : ` [${shown}]`}`
  return [
    scenario.name,
    `force window: ${force(window.least)} N to ${force(window.most)} N at one contact`,
    '',
    line(
      '',
      results.map(({ strategy }) => strategy),
    ),
    line(
      'verdict',
      results.map(({ verdict }) => verdict),
    ),
    ...METRICS.map((metric) =>
      line(
        heading(metric),
        results.map((result) => plainMetric(metric, result)),
      ),
    ),
    '',
    ...results.map((result) => `${result.strategy}: ${reason(scenario, result)}`),
  ].join('\n')
}

const lower = (label: string) => label.charAt(0).toLowerCase() + label.slice(1)

function main([name, ...args]: string[]): number {
  if (name === undefined || name === 'help' || name === '--help') {
    print(USAGE)
    return 0
  }
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined
  if (!command) throw new Refused([`given "${name}", allowed ${Object.keys(COMMANDS).join(', ')}`, USAGE])
  return command(args)
}

try {
  process.exitCode = main(process.argv.slice(2))
} catch (error) {
  if (!(error instanceof Refused)) throw error
  process.stderr.write(`${error.lines.join('\n')}\n`)
  process.exitCode = 2
}
