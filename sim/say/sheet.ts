/** The settings sheet that goes with an axis to its commissioning: Markdown to read, CSV to load. */
import type { RunResult } from '../job/job.ts'
import type { LoopsResult } from '../loops/analyse.ts'
import type { DriveScales } from '../loops/drive/settings.ts'
import type { DriveSheet, JudgedSetting } from '../loops/drive/sheet.ts'
import type { JobId, Scenario } from '../scenario/index.ts'
import { enteredWords, remarkOn, resolutionLabel, resolutionWords, settingLabel } from './drive.ts'
import { formatPlain, inPlainSpaces, NO_FIGURE } from './figure.ts'
import { jobWords } from './jobs.ts'
import { frictionNote, missingLoops } from './loops.ts'
import { countedWay, outputUnits } from './output.ts'
import { overloadSentences } from './ratings.ts'
import { shownUnit } from './units.ts'
import { figure, type Wording, wordingOf } from './wording.ts'

const COLUMNS = ['setting', 'path', 'value', 'unit', 'integer', 'means', 'error [%]', 'remark']

/** As a program reads it. */
const number = (value: number, digits: number) => String(Number(value.toPrecision(digits)))

/** For a program, so in SI. RFC 4180, one header row. */
export function settingsCsv(settings: JudgedSetting[], job: JobId): string {
  const si = wordingOf('si')
  const quote = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  const rows = [
    COLUMNS,
    ...settings.map((row) => [
      settingLabel(row, job),
      row.path,
      number(row.value, 6),
      row.unit,
      String(row.integer),
      number(row.means, 6),
      row.error === null ? '' : number(row.error * 100, 2),
      inPlainSpaces(remarkOn(row, job, si)),
    ]),
  ]
  return rows.map((row) => `${row.map(quote).join(',')}\r\n`).join('')
}

/** What holds for every axis. */
const CAUTIONS = [
  'Wrong signs or scale factors make a loop run away at full current: try each loop with the limit low and a hand on the stop.',
  'The figures come from a simulation and are no safety function. The risk assessment, the standards in force and licensed practice come first.',
]

/** A unit as it is spelled out in a scale factor. */
const SPELLED: Record<string, string> = {
  N: 'newtons',
  lbf: 'pounds-force',
  N·m: 'newton metres',
  lbf·in: 'pound-force inches',
}

function scaleRows(scales: DriveScales, job: JobId, words: Wording): string[][] {
  const { loops } = jobWords({ job })
  const way = countedWay(job, words)
  const effort = shownUnit(outputUnits(job).effort, words.system)
  return [
    [`counts per ${way.name} of ${loops.travel}`, number(scales.countsPerMetre * way.shown.toSi(1), 9)],
    ['amperes per unit of current', number(scales.amperesPerUnit, 9)],
    [
      `${SPELLED[effort.symbol] ?? effort.symbol} per unit of the gauge`,
      number(effort.toShown(scales.newtonsPerUnit), 9),
    ],
    ['sample period [s]', number(scales.samplePeriod, 9)],
    ['sample period of the force loop [s]', number(scales.forceSamplePeriod, 9)],
    ['shift of gains [bit]', String(scales.shift)],
    ['word [bit]', String(scales.wordBits)],
  ]
}

function settingCells(row: JudgedSetting, job: JobId, words: Wording): string[] {
  const { symbol, toShown } = shownUnit(row, words.system)
  return [
    settingLabel(row, job),
    row.path,
    formatPlain(toShown(row.value)),
    symbol,
    String(row.integer),
    formatPlain(toShown(row.means)),
    row.error === null ? '' : formatPlain(row.error * 100, 2),
    remarkOn(row, job, words),
  ]
}

const plain = (text: string) => text.replaceAll('|', '\\|').replaceAll(/[\r\n]+/g, ' ')
const table = (head: string[], rows: string[][]) =>
  [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(plain).join(' | ')} |`).join('\n')

const MARGINS = [
  'loop',
  'working point',
  'crossover [rad/s]',
  'phase margin [°]',
  'delay margin [ms]',
  'gain margin [dB]',
  'peak sensitivity',
]

function marginRows({ loops, workingPoints }: LoopsResult): string[][] {
  const cell = (value: number | null | undefined) => (value === null || value === undefined ? NO_FIGURE : figure(value))
  return loops.map(({ loop, workingPoint, crossover, margins, stability }) => [
    loop,
    workingPoints.find(({ id }) => id === workingPoint)?.label ?? workingPoint,
    cell(crossover),
    stability === 'stable' ? cell(margins?.phaseMargin) : stability === 'border' ? 'on the border' : 'unstable',
    cell(margins?.delayMargin && margins.delayMargin * 1e3),
    cell(margins?.gainMargin),
    cell(margins?.peakSensitivity),
  ])
}

/** A grip of the scenario by one strategy, for the ratings that it asks for. */
export interface SheetGrip {
  label: string
  scenario: Scenario
  result: RunResult
}

/** One line a strategy: what it exceeds, or that it exceeds nothing. */
function ratingLines(grips: SheetGrip[], words: Wording): string[] {
  const lines = grips.map(({ label, scenario, result }) => {
    const exceeded = overloadSentences(scenario, result, words)
    return `- ${label}: ${exceeded.length > 0 ? `overloaded. ${exceeded.join(' ')}` : 'within the ratings of motor and drive, as simulated.'}`
  })
  return lines.length > 0 ? ['## Ratings', lines.join('\n')] : []
}

export function settingsMarkdown(
  { name, job, scales, settings, resolutions, entered }: DriveSheet,
  words: Wording,
  grips: SheetGrip[],
): string {
  const { loops } = entered
  const { commissioning, cautions } = jobWords({ job }).loops
  const text = [
    `# Settings sheet: ${plain(name)}`,
    '## Scale factors',
    table(['factor', 'value'], scaleRows(scales, job, words)),
    '## Settings',
    'Gains are integers shifted by the above; each sample the drive computes (Kp·e + Ki·Σe + Kd·Δe) >> shift, with the present error in Σe.',
    table(
      COLUMNS,
      settings.map((row) => settingCells(row, job, words)),
    ),
    '## Resolution',
    table(
      ['reading or output', 'one unit', `what it does to the ${jobWords({ job }).study.effort}`],
      resolutions.map((each) => {
        const { step, force } = resolutionWords(each, job, words)
        return [resolutionLabel(each, job), step, force]
      }),
    ),
    ...ratingLines(grips, words),
    '## Margins to expect',
    enteredWords(entered, scales, job, words),
    table(MARGINS, marginRows(loops)),
    [frictionNote(loops.friction, words), missingLoops(loops)].filter((part) => part !== '').join(' '),
    '## Cautions',
    [...cautions, ...CAUTIONS].map((caution) => `- ${caution}`).join('\n'),
    '## Commissioning',
    commissioning.map((step, i) => `${i + 1}. ${step}`).join('\n'),
  ].join('\n\n')
  return `${inPlainSpaces(text)}\n`
}
