/** What is to be said of settings in a drive's integers. */
import type { Remedy, Trouble } from '../loops/drive/remedies.ts'
import type { DriveResolution } from '../loops/drive/resolution.ts'
import type { DriveScales } from '../loops/drive/settings.ts'
import type { EnteredLoops, JudgedSetting } from '../loops/drive/sheet.ts'
import { shownUnit } from './units.ts'
import { figure, type Wording } from './wording.ts'

const TROUBLES: Record<Trouble, string> = {
  overflow: 'does not fit the word',
  lost: 'rounds to 0 and is lost',
  coarse: 'rounding error above 1 %',
}

/** What is wrong with a setting, and what would help; '' if nothing is. */
export function remarkOn({ trouble, remedies }: Pick<JudgedSetting, 'trouble' | 'remedies'>, words: Wording): string {
  if (!trouble) return ''
  const ways = remedies.map((remedy) => remedyWords(remedy, words)).join(', or ')
  return `${TROUBLES[trouble]}: ${ways === '' ? 'no scale factor by itself helps' : ways}`
}

const BOUNDS = { least: 'at least ', most: 'at most ', alone: '' }

function remedyWords({ scale, bound, value }: Remedy, words: Wording): string {
  const limit = BOUNDS[bound]
  const said: Record<keyof DriveScales, () => string> = {
    countsPerMetre: () => `${limit}${countsWords(value, words)} of jaw travel`,
    amperesPerUnit: () => `${limit}${words.smallCurrent(value)} per unit of current`,
    newtonsPerUnit: () => `${limit}${words.force(value)} per unit of the gauge`,
    samplePeriod: () => `a sample period of ${limit}${words.shortTime(value)}`,
    forceSamplePeriod: () => `a sample period of the force loop of ${limit}${words.shortTime(value)}`,
    shift: () => `a shift of ${limit}${value} bit`,
    wordBits: () => `a word of ${value} bit`,
  }
  return said[scale]()
}

function countsWords(countsPerMetre: number, { system }: Wording): string {
  const { symbol, toSi } = shownUnit({ unit: 'm', shown: 'mm' }, system)
  return `${figure(countsPerMetre * toSi(1))} counts/${symbol}`
}

export const RESOLUTION_LABELS: Record<DriveResolution['id'], string> = {
  travel: 'Travel read, one count',
  speed: 'Speed read, one count a sample',
  force: 'Force read, one unit of the gauge',
  current: 'Current wanted, one unit: output of position and velocity loop',
  'wanted-speed': 'Speed wanted, one count a sample: output of the force loop',
}

/** One unit in physical units, and what it does to the force. */
export function resolutionWords({ id, step, force }: DriveResolution, words: Wording): { step: string; force: string } {
  const said: Record<DriveResolution['id'], string> = {
    travel: words.smallLength(step),
    speed: words.speed(step),
    force: words.force(step),
    current: words.smallCurrent(step),
    'wanted-speed': words.speed(step),
  }
  if (force === null) return { step: said[id], force: '' }
  const does = words.force(force)
  return {
    step: said[id],
    force: id === 'current' ? `${does} at one contact` : `${does} on the stiffest part in one period of the force loop`,
  }
}

/** For which gains and periods the margins are. */
export function enteredWords(
  { samplePeriod, forceSamplePeriod, unfit }: EnteredLoops,
  scales: DriveScales,
  words: Wording,
): string {
  const ms = words.shortTime
  const longer = (given: number, used: number) => used > given * (1 + 1e-6)
  const rounded = [
    ...(longer(scales.samplePeriod, samplePeriod) ? [`${ms(samplePeriod)} instead of ${ms(scales.samplePeriod)}`] : []),
    ...(longer(scales.forceSamplePeriod, forceSamplePeriod)
      ? [`${ms(forceSamplePeriod)} for the force loop instead of ${ms(scales.forceSamplePeriod)}`]
      : []),
  ]
  return [
    `With the values that the integers mean, at sample periods of ${ms(samplePeriod)} and, for the force loop, ${ms(forceSamplePeriod)}.`,
    ...(rounded.length > 0
      ? [`A period is taken as the next whole multiple of the faster loop’s: ${rounded.join('; ')}.`]
      : []),
    ...(unfit.length > 0
      ? [`Settings that do not fit the word count as they are wanted: ${unfit.map(({ label }) => label).join('; ')}.`]
      : []),
    'Rounding of readings and outputs, by the resolution above, is not in them; it can make a loop hunt by a unit or so.',
  ].join(' ')
}
