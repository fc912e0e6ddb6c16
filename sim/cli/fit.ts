import { jobOf } from '../job/index.ts'
import { NoFit } from '../log/facts.ts'
import { FitStopped } from '../log/fit.ts'
import { type Identified, identify } from '../log/identify.ts'
import { measuredOf, type Taken } from '../log/recorded.ts'
import { inPlainSpaces, NO_FIGURE } from '../say/figure.ts'
import { astrayText, fitFaultText, fitNote, notesWith, residualText, takenText, untoldText } from '../say/fit.ts'
import { wordingOf } from '../say/wording.ts'
import { type JobId, quantityAt, Refusal, type Scenario } from '../scenario/index.ts'
import {
  type Command,
  figureText,
  isJson,
  numberOf,
  oneOf,
  optionsOf,
  Refused,
  SCENARIO_OPTIONS,
  SCENARIO_USAGE,
} from './command.ts'
import { crew } from './crew.ts'
import { answerResponse } from './fit-response.ts'
import { readScenario } from './input.ts'
import { LOG_OPTIONS, LOG_USAGE, type LogOptions, usableLog } from './log-input.ts'
import { print, printJson, writeOut } from './output.ts'
import { progressOf } from './progress.ts'

const MOST_LOGS = 100
const WORDS = wordingOf('si')

export const fit: Command = {
  id: 'fit',
  takes: `FILE LOG.csv… ${LOG_USAGE} [--free PATH,…|auto] [--part yes|no|auto] [--driven-by reference|position|current] [--origin TRAVEL] [--response no|speed|position] [--out SCENARIO.json] ${SCENARIO_USAGE}`,
  does: 'the scenario whose simulated axis shows what logs have measured, with intervals and what they do not tell',
  async run(args) {
    const known = {
      ...SCENARIO_OPTIONS,
      ...LOG_OPTIONS,
      free: { type: 'string', default: 'auto' },
      part: { type: 'string', default: 'auto' },
      'driven-by': { type: 'string', default: 'auto' },
      origin: { type: 'string' },
      response: { type: 'string', default: 'no' },
      out: { type: 'string' },
    } as const
    const { values, positionals } = optionsOf(args, known, MOST_LOGS + 1)
    const json = isJson(values.format)
    const part = oneOf('--part', values.part, ['auto', 'yes', 'no'])
    oneOf('--response', values.response, ['no', 'speed', 'position'])
    const driver = oneOf('--driven-by', values['driven-by'], ['auto', 'reference', 'position', 'current'])
    const wish = {
      drivenBy: DRIVERS[driver],
      free: values.free === 'auto' ? null : values.free.split(',').map((path) => path.trim()),
      part: part === 'auto' ? null : part === 'yes',
      origin: numberOf('--origin', values.origin) ?? 0,
    }
    const [file, ...logs] = positionals
    const scenario = readScenario(file, values.set, null)
    if (logs.length === 0) throw new Refused(['no log was named'], true)
    if (values.response !== 'no') return answerResponse(scenario, logs, values, json)
    const { measured, taken, left } = await refusingFits(scenario.job, logs, readAll(logs, values, scenario))
    const progress = progressOf('fit')
    const fitted = await refusingFits(scenario.job, logs, identify(scenario, measured, wish, crew, progress.tell))
    progress.end()
    const seconds = measured.map(({ time }) => time.at(-1)! - time[0]!)
    const astray = fitted.alignment.flatMap(({ log, astray: all }) =>
      all.map((each) => `${measured.length > 1 ? `recording ${log + 1}: ` : ''}${astrayText(each, WORDS)}`),
    )
    const notes = notesWith(scenario.notes, inPlainSpaces(fitNote(scenario, fitted.values, seconds, WORDS)))
    const said = [...astray, ...taken.map(takenText), ...left]
    const found = { ...fitted, scenario: { ...fitted.scenario, notes } }
    if (values.out !== undefined) writeOut('--out', values.out, `${JSON.stringify(found.scenario, null, 2)}\n`)
    if (json) printJson(report(scenario, found, logs, said))
    else print(inPlainSpaces(table(scenario, found, said)))
    return 0
  },
}

/** Every recording of every log; those too short for anything are left out, and said. */
async function readAll(logs: string[], options: LogOptions, scenario: Scenario) {
  const taken: Taken[] = []
  const left: string[] = []
  const measured = []
  for (const file of logs) {
    const { recordings } = await usableLog(file, options, jobOf(scenario).output.travel === 'rad')
    for (const [at, recording] of recordings.entries()) {
      if (recording.rows < SHORTEST) {
        left.push(`${file}: recording ${at + 1} has ${recording.rows} rows, too few to be fitted`)
        continue
      }
      const made = measuredOf(recording, scenario)
      measured.push(made.measured)
      taken.push(...made.taken)
    }
  }
  if (measured.length === 0) throw new Refused(left)
  return { measured, taken, left }
}

const SHORTEST = 50

const DRIVERS = { auto: null, reference: 'target', position: 'motorTravel', current: 'current' } as const

async function refusingFits<T>(job: JobId, logs: string[], fit: Promise<T>): Promise<T> {
  try {
    return await fit
  } catch (error) {
    if (error instanceof NoFit)
      throw new Refused([`${logs.join(', ')}: ${inPlainSpaces(fitFaultText(job, error.fault))}`])
    if (error instanceof Refusal || error instanceof RangeError) throw new Refused([error.message])
    if (error instanceof FitStopped) throw new Refused(['stopped'])
    throw error
  }
}

function report(scenario: Scenario, found: Identified, logs: string[], said: string[]) {
  const { values, residuals, untold, alignment, inverse, runs, settled } = found
  return {
    format: 'jawbench-fit',
    version: 1,
    logs,
    values,
    residuals,
    untold: untold.map((each) => ({ ...each, said: inPlainSpaces(untoldText(scenario, each, WORDS)) })),
    alignment,
    start: inverse,
    runs,
    settled,
    said: said.map(inPlainSpaces),
    scenario: found.scenario,
  }
}

function table(
  scenario: Scenario,
  { values, residuals, untold, runs, settled, logs }: Identified,
  said: string[],
): string {
  const rows = [
    ['', 'was', 'is', '95 % interval', ''],
    ...values.map(({ path, from, value, low, high }) => [
      path,
      figureText(from),
      figureText(value, 5),
      low === null || high === null ? NO_FIGURE : `${figureText(low)} to ${figureText(high)}`,
      quantityAt(scenario, path)?.unit ?? 's',
    ]),
  ]
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)))
  const lined = rows.map((row) =>
    row
      .map((cell, column) =>
        column === 0 || column === 4 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!),
      )
      .join('  ')
      .trimEnd(),
  )
  return [
    ...lined,
    '',
    ...residuals.map(
      (each) => `${logs.length > 1 ? `recording ${each.log + 1}, ` : ''}${residualText(scenario, each, WORDS)}`,
    ),
    `${runs} runs${settled ? '' : '; the fit had not settled'}`,
    ...(untold.length > 0 ? [''] : []),
    ...untold.map((each) => untoldText(scenario, each, WORDS)),
    ...(said.length > 0 ? [''] : []),
    ...said,
  ].join('\n')
}
