/** What is to be said of settings in a drive's integers. */
import type { Remedy, Trouble } from '../loops/drive/remedies.ts'
import type { DriveResolution } from '../loops/drive/resolution.ts'
import type { DriveScales } from '../loops/drive/settings.ts'
import type { EnteredLoops, JudgedSetting } from '../loops/drive/sheet.ts'
import type { JobId } from '../scenario/index.ts'
import { jobWords } from './jobs.ts'
import { countedWay, outputWords } from './output.ts'
import { figure, type Wording } from './wording.ts'

const TROUBLES: Record<Trouble, string> = {
  overflow: 'does not fit the word',
  lost: 'rounds to 0 and is lost',
  coarse: 'rounding error above 1 %',
}

/** A setting's name, in the word of the job for its effort. */
export function settingLabel({ label }: Pick<JudgedSetting, 'label'>, job: JobId): string {
  const { effort } = jobWords({ job }).study
  return label.replace(/\bforce\b/, effort).replace(/^Force\b/, `${effort[0]!.toUpperCase()}${effort.slice(1)}`)
}

/** What is wrong with a setting, and what would help; '' if nothing is. */
export function remarkOn(
  { trouble, remedies }: Pick<JudgedSetting, 'trouble' | 'remedies'>,
  job: JobId,
  words: Wording,
): string {
  if (!trouble) return ''
  const ways = remedies.map((remedy) => remedyWords(remedy, job, words)).join(', or ')
  return `${TROUBLES[trouble]}: ${ways === '' ? 'no scale factor by itself helps' : ways}`
}

const BOUNDS = { least: 'at least ', most: 'at most ', alone: '' }

function remedyWords({ scale, bound, value }: Remedy, job: JobId, words: Wording): string {
  const { loops, study } = jobWords({ job })
  const limit = BOUNDS[bound]
  const said: Record<keyof DriveScales, () => string> = {
    countsPerMetre: () => `${limit}${countsWords(value, job, words)} of ${loops.travel}`,
    amperesPerUnit: () => `${limit}${words.smallCurrent(value)} per unit of current`,
    newtonsPerUnit: () => `${limit}${outputWords(job, words).effort(value)} per unit of the gauge`,
    samplePeriod: () => `a sample period of ${limit}${words.shortTime(value)}`,
    forceSamplePeriod: () => `a sample period of the ${study.effort} loop of ${limit}${words.shortTime(value)}`,
    shift: () => `a shift of ${limit}${value} bit`,
    wordBits: () => `a word of ${value} bit`,
  }
  return said[scale]()
}

function countsWords(countsPerMetre: number, job: JobId, words: Wording): string {
  const { symbol, toSi } = countedWay(job, words).remedy
  return `${figure(countsPerMetre * toSi(1))} counts/${symbol}`
}

export function resolutionLabel({ id }: Pick<DriveResolution, 'id'>, job: JobId): string {
  const { effort } = jobWords({ job }).study
  const said: Record<DriveResolution['id'], string> = {
    travel: 'Travel read, one count',
    speed: 'Speed read, one count a sample',
    force: `${effort[0]!.toUpperCase()}${effort.slice(1)} read, one unit of the gauge`,
    current: 'Current wanted, one unit: output of position and velocity loop',
    'wanted-speed': `Speed wanted, one count a sample: output of the ${effort} loop`,
  }
  return said[id]
}

/** One unit in physical units, and what it does to the effort. */
export function resolutionWords(
  { id, step, force }: DriveResolution,
  job: JobId,
  words: Wording,
): { step: string; force: string } {
  const own = outputWords(job, words)
  const { loops, study } = jobWords({ job })
  const said: Record<DriveResolution['id'], string> = {
    travel: own.smallWay(step),
    speed: own.speed(step),
    force: own.effort(step),
    current: words.smallCurrent(step),
    'wanted-speed': own.speed(step),
  }
  if (force === null) return { step: said[id], force: '' }
  const does = own.effort(force)
  return {
    step: said[id],
    force:
      id === 'current'
        ? `${does}${loops.contact}`
        : `${does} ${loops.at.stiffest} in one period of the ${study.effort} loop`,
  }
}

/** For which gains and periods the margins are. */
export function enteredWords(
  { samplePeriod, forceSamplePeriod, unfit }: EnteredLoops,
  scales: DriveScales,
  job: JobId,
  words: Wording,
): string {
  const { effort } = jobWords({ job }).study
  const ms = words.shortTime
  const longer = (given: number, used: number) => used > given * (1 + 1e-6)
  const rounded = [
    ...(longer(scales.samplePeriod, samplePeriod) ? [`${ms(samplePeriod)} instead of ${ms(scales.samplePeriod)}`] : []),
    ...(longer(scales.forceSamplePeriod, forceSamplePeriod)
      ? [`${ms(forceSamplePeriod)} for the ${effort} loop instead of ${ms(scales.forceSamplePeriod)}`]
      : []),
  ]
  return [
    `With the values that the integers mean, at sample periods of ${ms(samplePeriod)} and, for the ${effort} loop, ${ms(forceSamplePeriod)}.`,
    ...(rounded.length > 0
      ? [`A period is taken as the next whole multiple of the faster loop’s: ${rounded.join('; ')}.`]
      : []),
    ...(unfit.length > 0
      ? [
          `Settings that do not fit the word count as they are wanted: ${unfit.map((each) => settingLabel(each, job)).join('; ')}.`,
        ]
      : []),
    'Rounding of readings and outputs, by the resolution above, is not in them; it can make a loop hunt by a unit or so.',
  ].join(' ')
}
