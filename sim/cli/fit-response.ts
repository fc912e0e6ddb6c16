/** The frequency domain of `fit`: a response that somebody has measured, or one from a log of noise or a chirp. */
import { jobOf } from '../job/index.ts'
import { NoFit } from '../log/facts.ts'
import { measuredOf } from '../log/recorded.ts'
import type { Shown } from '../log/response/axis.ts'
import { fitResponse, type ResponseFit } from '../log/response/fit.ts'
import { responseFrom } from '../log/response/from.ts'
import type { MeasuredResponse } from '../log/response/spectrum.ts'
import { responseIn } from '../log/response/table.ts'
import { inPlainSpaces, NO_FIGURE } from '../say/figure.ts'
import { fitFaultText, responseText, untoldText } from '../say/fit.ts'
import { wordingOf } from '../say/wording.ts'
import { quantityAt, type Scenario } from '../scenario/index.ts'
import { figureText, Refused } from './command.ts'
import { type LogOptions, tableOf, usableLog } from './log-input.ts'
import { print, printJson, writeOut } from './output.ts'

interface Options extends LogOptions {
  response: string
  out?: string | undefined
}

const WORDS = wordingOf('si')

export async function answerResponse(
  scenario: Scenario,
  files: string[],
  options: Options,
  json: boolean,
): Promise<number> {
  const [file, more] = files
  if (file === undefined || more !== undefined) throw new Refused(['--response: given several files, allowed one'])
  const shown = options.response as Shown
  const measured = await measuredResponse(file, options, scenario, shown)
  const fit = refusing(file, () => fitResponse(scenario, measured, shown))
  if (options.out !== undefined) writeOut('--out', options.out, `${JSON.stringify(fit.scenario, null, 2)}\n`)
  if (json) printJson({ format: 'jawbench-fit', version: 1, logs: files, ...report(fit, measured) })
  else print(inPlainSpaces(table(scenario, fit)))
  return 0
}

/** As the file has it, or from the command and what it moves. */
async function measuredResponse(
  file: string,
  options: Options,
  scenario: Scenario,
  shown: Shown,
): Promise<MeasuredResponse> {
  const read = responseIn(await tableOf(file))
  if (read) return read.response
  const { recordings } = await usableLog(file, options, jobOf(scenario).output.travel === 'rad')
  const longest = recordings.reduce((a, b) => (b.rows > a.rows ? b : a))
  return refusing(file, () => responseFrom(measuredOf(longest, scenario).measured, shown))
}

function refusing<T>(file: string, compute: () => T): T {
  try {
    return compute()
  } catch (error) {
    if (error instanceof NoFit) throw new Refused([`${file}: ${inPlainSpaces(fitFaultText(error.fault))}`])
    throw error
  }
}

function report(
  { values, untold, before, after, used, leftOut, resonance, shown, scenario }: ResponseFit,
  measured: MeasuredResponse,
) {
  const { frequency, re, im, coherence, blocks } = measured
  return {
    values,
    residuals: [{ channel: 'response', rms: after, before, relative: null }],
    untold: untold.map((each) => ({ ...each, said: inPlainSpaces(untoldText(scenario, each, WORDS)) })),
    shown,
    resonance,
    used,
    leftOut,
    blocks,
    response: Array.from(frequency, (omega, k) => ({
      frequency: omega,
      re: re[k]!,
      im: im[k]!,
      coherence: coherence && Number.isFinite(coherence[k]!) ? coherence[k]! : null,
    })),
    scenario,
  }
}

function table(scenario: Scenario, fit: ResponseFit): string {
  const rows = [
    ['', 'was', 'is', '95 % interval', ''],
    ...fit.values.map(({ path, from, value, low, high }) => [
      path,
      figureText(from),
      figureText(value),
      low === null || high === null ? NO_FIGURE : `${figureText(low)} to ${figureText(high)}`,
      quantityAt(scenario, path)?.unit ?? 's',
    ]),
  ]
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)))
  const lined = rows.map((row) =>
    row
      .map((cell, column) => (column % 4 === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
      .join('  ')
      .trimEnd(),
  )
  return [...lined, '', responseText(fit, WORDS), ...fit.untold.map((each) => untoldText(scenario, each, WORDS))].join(
    '\n',
  )
}
