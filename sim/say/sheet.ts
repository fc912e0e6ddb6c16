/** The settings sheet that goes with an axis to its commissioning: Markdown to read, CSV to load. */
import type { GripResult } from '../job/grip/result.ts'
import type { LoopsResult } from '../loops/analyse.ts'
import type { DriveScales } from '../loops/drive/settings.ts'
import type { DriveSheet, JudgedSetting } from '../loops/drive/sheet.ts'
import type { Scenario } from '../scenario/index.ts'
import { enteredWords, RESOLUTION_LABELS, remarkOn, resolutionWords } from './drive.ts'
import { formatPlain, inPlainSpaces, NO_FIGURE } from './figure.ts'
import { frictionNote, missingLoops } from './loops.ts'
import { overloadSentences } from './ratings.ts'
import { shownUnit } from './units.ts'
import { figure, type Wording, wordingOf } from './wording.ts'

const COLUMNS = ['setting', 'path', 'value', 'unit', 'integer', 'means', 'error [%]', 'remark']

/** As a program reads it. */
const number = (value: number, digits: number) => String(Number(value.toPrecision(digits)))

/** For a program, so in SI. RFC 4180, one header row. */
export function settingsCsv(settings: JudgedSetting[]): string {
  const si = wordingOf('si')
  const quote = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  const rows = [
    COLUMNS,
    ...settings.map((row) => [
      row.label,
      row.path,
      number(row.value, 6),
      row.unit,
      String(row.integer),
      number(row.means, 6),
      row.error === null ? '' : number(row.error * 100, 2),
      inPlainSpaces(remarkOn(row, si)),
    ]),
  ]
  return rows.map((row) => `${row.map(quote).join(',')}\r\n`).join('')
}

const STEPS = [
  'Carry out the risk assessment of the machine first; this sheet is no part of its safety. Keep hands out of the jaws, power off, until the stops and the enabling device have been tried.',
  'Enter the scale factors and read back position, current and force against a rule, a clamp meter and a known weight. Signs: closing is positive.',
  'Set the current limit to a quarter. Close the current loop with the motor held, and compare its step with the predicted one.',
  'Close the velocity and the position loop in free air with half the gains, then with all; the step must look like the predicted one.',
  'Approach a soft dummy at creep speed, then at approach speed; read the peak force with an independent gauge.',
  'Set the current limit of this sheet. Try the softest and the stiffest part, and let the jaws wait in contact: no hunting, no growing hum.',
  'Take away the power while a part is held, over a soft landing: see whether the axis keeps it.',
]

const CAUTIONS = [
  'Jaws pinch: a hand between them takes the whole grip force and the impact before it.',
  'After a loss of power, or when it returns, an axis may open, drop its part or start unexpectedly; secure or support the load before reaching in.',
  'Wrong signs or scale factors make a loop run away at full current: try each loop with the limit low and a hand on the stop.',
  'The figures come from a simulation and are no safety function. The risk assessment, the standards in force and licensed practice come first.',
]

/** How long and strong things are called in a scale factor, and how much of SI one of them is. */
const PER = {
  si: { length: 'metre', metres: 1, forces: 'newtons', newtons: shownUnit({ unit: 'N' }, 'si') },
  us: {
    length: 'inch',
    metres: shownUnit({ unit: 'm', shown: 'mm' }, 'us').toSi(1),
    forces: 'pounds-force',
    newtons: shownUnit({ unit: 'N' }, 'us'),
  },
}

function scaleRows(scales: DriveScales, { system }: Wording): string[][] {
  const { length, metres, forces, newtons } = PER[system]
  return [
    [`counts per ${length} of jaw travel`, number(scales.countsPerMetre * metres, 9)],
    ['amperes per unit of current', number(scales.amperesPerUnit, 9)],
    [`${forces} per unit of the gauge`, number(newtons.toShown(scales.newtonsPerUnit), 9)],
    ['sample period [s]', number(scales.samplePeriod, 9)],
    ['sample period of the force loop [s]', number(scales.forceSamplePeriod, 9)],
    ['shift of gains [bit]', String(scales.shift)],
    ['word [bit]', String(scales.wordBits)],
  ]
}

function settingCells(row: JudgedSetting, words: Wording): string[] {
  const { symbol, toShown } = shownUnit(row, words.system)
  return [
    row.label,
    row.path,
    formatPlain(toShown(row.value)),
    symbol,
    String(row.integer),
    formatPlain(toShown(row.means)),
    row.error === null ? '' : formatPlain(row.error * 100, 2),
    remarkOn(row, words),
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
  result: GripResult
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
  { name, scales, settings, resolutions, entered }: DriveSheet,
  words: Wording,
  grips: SheetGrip[],
): string {
  const { loops } = entered
  const text = [
    `# Settings sheet: ${plain(name)}`,
    '## Scale factors',
    table(['factor', 'value'], scaleRows(scales, words)),
    '## Settings',
    'Gains are integers shifted by the above; each sample the drive computes (Kp·e + Ki·Σe + Kd·Δe) >> shift, with the present error in Σe.',
    table(
      COLUMNS,
      settings.map((row) => settingCells(row, words)),
    ),
    '## Resolution',
    table(
      ['reading or output', 'one unit', 'what it does to the force'],
      resolutions.map((each) => {
        const { step, force } = resolutionWords(each, words)
        return [RESOLUTION_LABELS[each.id], step, force]
      }),
    ),
    ...ratingLines(grips, words),
    '## Margins to expect',
    enteredWords(entered, scales, words),
    table(MARGINS, marginRows(loops)),
    [frictionNote(loops.friction, words), missingLoops(loops)].filter((part) => part !== '').join(' '),
    '## Cautions',
    CAUTIONS.map((caution) => `- ${caution}`).join('\n'),
    '## Commissioning',
    STEPS.map((step, i) => `${i + 1}. ${step}`).join('\n'),
  ].join('\n\n')
  return `${inPlainSpaces(text)}\n`
}
