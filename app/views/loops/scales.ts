/** The scale factors of a drive as fields: unit, range and one sentence each. */
import { type DriveScales, JOBS, type JobId, loopWords, studyWords } from '../../../sim/index.ts'
import { quantityUnit, shownUnit, type UnitSystem } from '../../read/units.ts'
import type { ShownUnit } from '../../ui/unit.ts'

export interface ScaleField {
  key: Exclude<keyof DriveScales, 'wordBits'>
  label: string
  unit(system: UnitSystem): ShownUnit
  min: number
  max: number
  integer?: boolean
  note: string
}

/** A unit that is no SI one: `factor` of it make one of the stored value's. */
export const named = (symbol: string, factor = 1): ShownUnit => ({
  symbol,
  toShown: (value) => Number((value * factor).toPrecision(13)),
  toSi: (value) => Number((value / factor).toPrecision(13)),
})

const COUNTS: Record<UnitSystem, ShownUnit> = { si: named('counts/mm', 1e-3), us: named('counts/in', 0.0254) }

/** The scale factors of a drive whose output does such a job. */
export function scaleFields(job: JobId): ScaleField[] {
  const { output } = JOBS[job]
  const { travel } = loopWords(job)
  const { effort } = studyWords(job)
  const loop = `${effort} loop`
  return [
    {
      key: 'countsPerMetre',
      label: 'Encoder',
      unit: (system) => (output.travel === 'rad' ? named('counts/rad') : COUNTS[system]),
      min: 1,
      max: 1e12,
      note: `Counts for each ${output.travel === 'rad' ? 'radian' : 'length'} of ${travel}, after all multiplication in the drive.`,
    },
    {
      key: 'amperesPerUnit',
      label: 'Current unit',
      unit: () => named('mA', 1e3),
      min: 1e-9,
      max: 1e3,
      note: 'What one unit of the drive’s current command means.',
    },
    {
      key: 'newtonsPerUnit',
      label: 'Gauge unit',
      unit: (system) => shownUnit({ unit: output.effort }, system),
      min: 1e-5,
      max: 1e6,
      note: 'What one unit of the gauge’s converter means.',
    },
    {
      key: 'samplePeriod',
      label: 'Sample period',
      unit: (system) => quantityUnit('shortTime', system),
      min: 1e-6,
      max: 1,
      note: 'With which the drive runs position and velocity loop.',
    },
    {
      key: 'forceSamplePeriod',
      label: `${effort[0]!.toUpperCase()}${effort.slice(1)} loop period`,
      unit: (system) => quantityUnit('shortTime', system),
      min: 1e-6,
      max: 1,
      note: `With which the drive runs the ${loop}.`,
    },
    {
      key: 'shift',
      label: 'Shift of gains',
      unit: () => named('bit'),
      min: 0,
      max: 31,
      integer: true,
      note: 'Bits by which the drive shifts a product of gain and error to the right.',
    },
  ]
}
