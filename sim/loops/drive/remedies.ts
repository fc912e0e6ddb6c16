/** Which change of one scale factor brings a setting into its integer, found by trying it on all settings. */
import type { Scenario } from '../../scenario/index.ts'
import {
  type DriveScales,
  type DriveSetting,
  driveSettings,
  largestInteger,
  type ScaleName,
  scaleOf,
} from './settings.ts'

/** `coarse`: the rounding is off by more than `COARSE`. */
export type Trouble = 'overflow' | 'lost' | 'coarse'

/** A scale factor that would have to be at least, or at most, so large. */
export interface Remedy {
  scale: keyof DriveScales
  bound: 'least' | 'most'
  value: number
}

export const COARSE = 0.01

export function troubleOf({ overflow, lost, error }: DriveSetting): Trouble | null {
  if (overflow) return 'overflow'
  if (lost) return 'lost'
  return error !== null && Math.abs(error) > COARSE ? 'coarse' : null
}

/**
 * Every change of one scale factor alone after which the setting comes through and no other one is lost or does not fit that did
 * before. Empty where no such change helps, and for a setting without trouble. Throws as driveSettings does.
 */
export function remediesFor(scenario: Scenario, scales: DriveScales, setting: DriveSetting): Remedy[] {
  const trouble = troubleOf(setting)
  if (!trouble) return []
  const before = driveSettings(scenario, scales)
  const works = ({ scale, value }: Remedy) => {
    const after = driveSettings(scenario, { ...scales, [scale]: value })
    return after.every((each, i) =>
      each.path === setting.path ? troubleOf(each) === null : !(each.overflow || each.lost) || wrong(before[i]!),
    )
  }
  return candidates(setting, trouble, scales).filter(works)
}

const wrong = ({ overflow, lost }: DriveSetting) => overflow || lost

function candidates({ powers, value }: DriveSetting, trouble: Trouble, scales: DriveScales): Remedy[] {
  const exact = Math.abs(value) * scaleOf(powers, scales)
  // Half a unit is 1 % of fifty.
  const factor = (trouble === 'overflow' ? largestInteger(scales) : 0.5 / COARSE) / exact
  const named = (Object.entries(powers) as [ScaleName, number][])
    .filter(([, power]) => power !== 0)
    .map(([scale, power]) => bounded(scale, scales[scale], factor, power))
    .filter((remedy) => remedy !== null)
  const wider: Remedy = { scale: 'wordBits', bound: 'least', value: 32 }
  return trouble === 'overflow' && scales.wordBits < 32 ? [...named, wider] : named
}

/** A scale factor that would have to be so many times as large, or as small, is another drive. */
const WIDEST = 100

/** The scale factor that brings the integer to `factor` times its size; null where no drive has it. */
function bounded(scale: ScaleName, now: number, factor: number, power: number): Remedy | null {
  if (scale === 'shift') {
    const bits = Math.log2(factor) / power
    const value = now + (bits > 0 ? Math.ceil(bits) : Math.floor(bits))
    return value >= 0 && value <= 31 ? { scale, bound: bits > 0 ? 'least' : 'most', value } : null
  }
  const value = now * factor ** (1 / power)
  if (!(value <= WIDEST * now && value >= now / WIDEST)) return null
  const bound = value > now ? 'least' : 'most'
  return { scale, bound, value: safely(value, bound) }
}

/** Three digits, rounded to the side that keeps the bound. */
function safely(value: number, bound: Remedy['bound']): number {
  const unit = 10 ** (Math.floor(Math.log10(value)) - 2)
  const digits = bound === 'least' ? Math.ceil(value / unit - 1e-9) : Math.floor(value / unit + 1e-9)
  return Number((digits * unit).toPrecision(3))
}
