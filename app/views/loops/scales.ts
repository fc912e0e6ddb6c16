/** The scale factors of a drive as fields: unit, range and one sentence each. */
import type { DriveScales } from '../../../sim/index.ts'
import { quantityUnit, type UnitSystem } from '../../read/units.ts'
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

export const SCALES: ScaleField[] = [
  {
    key: 'countsPerMetre',
    label: 'Encoder',
    unit: (system) => (system === 'us' ? named('counts/in', 0.0254) : named('counts/mm', 1e-3)),
    min: 1,
    max: 1e12,
    note: 'Counts for each length of jaw travel, after all multiplication in the drive.',
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
    unit: (system) => quantityUnit('force', system),
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
    label: 'Force loop period',
    unit: (system) => quantityUnit('shortTime', system),
    min: 1e-6,
    max: 1,
    note: 'With which the drive runs the force loop.',
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
