/** The settings sheet that goes with an axis to its commissioning: Markdown to read, CSV to load. */
import type { LoopsResult } from '../loops/analyse.ts'
import type { DriveScales, DriveSetting } from '../loops/drive-units.ts'
import { formatPlain, inPlainSpaces, NO_FIGURE } from './figure.ts'
import { frictionNote, missingLoops } from './loops.ts'
import { shownUnit } from './units.ts'
import { figure, type Wording } from './wording.ts'

/** What the sheet is about. */
export interface Sheet {
  /** Of the scenario. */
  name: string
  scales: DriveScales
  settings: DriveSetting[]
  loops: LoopsResult
}

const COLUMNS = ['setting', 'path', 'value', 'unit', 'integer', 'means', 'error [%]', 'remark']

/** What is wrong with a setting, in a few words; '' if nothing. */
export function remarkOn({ overflow, lost, error }: DriveSetting): string {
  if (overflow) return 'does not fit the word: more amperes per unit, fewer counts or less shift'
  if (lost) return 'rounds to 0 and is lost: more shift'
  if (error !== null && Math.abs(error) > 0.01) return 'rounding error above 1 %'
  return ''
}

/** As a program reads it. */
const number = (value: number, digits: number) => String(Number(value.toPrecision(digits)))

/** For a program, so in SI. RFC 4180, one header row. */
export function settingsCsv(settings: DriveSetting[]): string {
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
      remarkOn(row),
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

function settingCells(row: DriveSetting, { system }: Wording): string[] {
  const { symbol, toShown } = shownUnit(row, system)
  return [
    row.label,
    row.path,
    formatPlain(toShown(row.value)),
    symbol,
    String(row.integer),
    formatPlain(toShown(row.means)),
    row.error === null ? '' : formatPlain(row.error * 100, 2),
    remarkOn(row),
  ]
}

export function settingsMarkdown({ name, scales, settings, loops: result }: Sheet, words: Wording): string {
  const { loops, workingPoints, friction } = result
  const plain = (text: string) => text.replaceAll('|', '\\|').replaceAll(/[\r\n]+/g, ' ')
  const table = (head: string[], rows: string[][]) =>
    [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(plain).join(' | ')} |`).join('\n')
  const cell = (value: number | null | undefined) => (value === null || value === undefined ? NO_FIGURE : figure(value))
  const text = [
    `# Settings sheet: ${plain(name)}`,
    '## Scale factors',
    table(['factor', 'value'], scaleRows(scales, words)),
    '## Settings',
    'Gains are integers shifted by the above; each sample the drive computes (Kp·e + Ki·Σe + Kd·Δe) >> shift.',
    table(
      COLUMNS,
      settings.map((row) => settingCells(row, words)),
    ),
    '## Margins to expect',
    table(
      ['loop', 'working point', 'crossover [rad/s]', 'phase margin [°]', 'gain margin [dB]', 'peak sensitivity'],
      loops.map(({ loop, workingPoint, crossover, margins, stable }) => [
        loop,
        workingPoints.find(({ id }) => id === workingPoint)?.label ?? workingPoint,
        cell(crossover),
        stable ? cell(margins?.phaseMargin) : 'unstable',
        cell(margins?.gainMargin),
        cell(margins?.peakSensitivity),
      ]),
    ),
    [frictionNote(friction, words), missingLoops(result)].filter((part) => part !== '').join(' '),
    '## Cautions',
    CAUTIONS.map((caution) => `- ${caution}`).join('\n'),
    '## Commissioning',
    STEPS.map((step, i) => `${i + 1}. ${step}`).join('\n'),
  ].join('\n\n')
  return `${inPlainSpaces(text)}\n`
}
