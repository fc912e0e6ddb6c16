/** The settings sheet that goes with an axis to its commissioning: Markdown to read, CSV to load. */
import type { Scenario } from '../scenario/index.ts'
import { analyseLoops } from './analyse.ts'
import type { DriveScales, DriveSetting } from './drive/settings.ts'
import { driveSettings } from './drive/settings.ts'
import { rounded } from './wording.ts'

const COLUMNS = ['setting', 'path', 'value', 'unit', 'integer', 'means', 'error [%]', 'remark']

/** What is wrong with a setting, in a few words; '' if nothing. */
export function remarkOn({ overflow, lost, error }: DriveSetting): string {
  if (overflow) return 'does not fit the word: more amperes per unit, fewer counts or less shift'
  if (lost) return 'rounds to 0 and is lost: more shift'
  if (error !== null && Math.abs(error) > 0.01) return 'rounding error above 1 %'
  return ''
}

const cells = (row: DriveSetting) => [
  row.label,
  row.path,
  rounded(row.value, 6),
  row.unit,
  String(row.integer),
  rounded(row.means, 6),
  row.error === null ? '' : rounded(row.error * 100, 2),
  remarkOn(row),
]

/** RFC 4180, one header row. Throws as driveSettings does. */
export function settingsCsv(scenario: Scenario, scales: DriveScales): string {
  const quote = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  const rows = [COLUMNS, ...driveSettings(scenario, scales).map(cells)]
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

/** Throws as driveSettings and analyseLoops do. */
export function settingsMarkdown(scenario: Scenario, scales: DriveScales): string {
  const settings = driveSettings(scenario, scales)
  const { loops, workingPoints, friction, note } = analyseLoops(scenario)
  const plain = (text: string) => text.replaceAll('|', '\\|').replaceAll(/[\r\n]+/g, ' ')
  const table = (head: string[], rows: string[][]) =>
    [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(plain).join(' | ')} |`).join('\n')
  const figure = (value: number | null | undefined, digits = 3) =>
    value === null || value === undefined ? '—' : rounded(value, digits)
  return `${[
    `# Settings sheet: ${plain(scenario.name)}`,
    '## Scale factors',
    table(
      ['factor', 'value'],
      [
        ['counts per metre of jaw travel', rounded(scales.countsPerMetre, 9)],
        ['amperes per unit of current', rounded(scales.amperesPerUnit, 9)],
        ['newtons per unit of the gauge', rounded(scales.newtonsPerUnit, 9)],
        ['sample period [s]', rounded(scales.samplePeriod, 9)],
        ['sample period of the force loop [s]', rounded(scales.forceSamplePeriod, 9)],
        ['shift of gains [bit]', String(scales.shift)],
        ['word [bit]', String(scales.wordBits)],
      ],
    ),
    '## Settings',
    'Gains are integers shifted by the above; each sample the drive computes (Kp·e + Ki·Σe + Kd·Δe) >> shift.',
    table(COLUMNS, settings.map(cells)),
    '## Margins to expect',
    table(
      ['loop', 'working point', 'crossover [rad/s]', 'phase margin [°]', 'gain margin [dB]', 'peak sensitivity'],
      loops.map(({ loop, workingPoint, crossover, margins, stable }) => [
        loop,
        workingPoints.find(({ id }) => id === workingPoint)?.label ?? workingPoint,
        figure(crossover),
        stable ? figure(margins?.phaseMargin) : 'unstable',
        figure(margins?.gainMargin),
        figure(margins?.peakSensitivity),
      ]),
    ),
    [friction, note].filter((text) => text !== '').join(' '),
    '## Cautions',
    CAUTIONS.map((text) => `- ${text}`).join('\n'),
    '## Commissioning',
    STEPS.map((text, i) => `${i + 1}. ${text}`).join('\n'),
  ].join('\n\n')}\n`
}
