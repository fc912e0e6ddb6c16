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

/** A scale factor that would have to be at least, or at most, so large; `alone`: as large as this, where the setting comes out whole. */
export interface Remedy {
  scale: keyof DriveScales
  bound: 'least' | 'most' | 'alone'
  value: number
}

export const COARSE = 0.01

export function troubleOf({ overflow, lost, error }: DriveSetting): Trouble | null {
  if (overflow) return 'overflow'
  if (lost) return 'lost'
  return error !== null && Math.abs(error) > COARSE ? 'coarse' : null
}

/**
 * For every scale factor that helps by itself its least change after which the setting comes through and no other one is lost or does
 * not fit that did before: a bound beyond which the rounding is fine whatever the value, or else a value at which it happens to be.
 * Empty where none helps, and for a setting without trouble. Throws as driveSettings does.
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
  return candidates(setting, trouble, scales).flatMap((ways) => ways.find(works) ?? [])
}

const wrong = ({ overflow, lost }: DriveSetting) => overflow || lost

/** Half a unit is 1 % of fifty. */
const FINE = 0.5 / COARSE

/** For each scale factor what may help, the best first. */
function candidates({ powers, value }: DriveSetting, trouble: Trouble, scales: DriveScales): Remedy[][] {
  const exact = Math.abs(value) * scaleOf(powers, scales)
  const factor = (trouble === 'overflow' ? largestInteger(scales) : FINE) / exact
  const ways = (Object.entries(powers) as [ScaleName, number][])
    .filter(([, power]) => power !== 0)
    .map(([scale, power]) => [
      ...bounded(scale, scales[scale], factor, power),
      ...(trouble === 'overflow' ? [] : whole(scale, scales[scale], exact, power)),
    ])
  const wider: Remedy = { scale: 'wordBits', bound: 'least', value: 32 }
  return trouble === 'overflow' && scales.wordBits < 32 ? [...ways, [wider]] : ways
}

/** A scale factor that would have to be so many times as large, or as small, is another drive. */
const WIDEST = 100

const within = (scale: ScaleName, now: number, value: number) =>
  scale === 'shift' ? value >= 0 && value <= 31 : value <= WIDEST * now && value >= now / WIDEST

/** The scale factor that brings the integer to `factor` times its size; none where no drive has it. */
function bounded(scale: ScaleName, now: number, factor: number, power: number): Remedy[] {
  if (scale === 'shift') {
    const bits = Math.log2(factor) / power
    const value = now + (bits > 0 ? Math.ceil(bits) : Math.floor(bits))
    return within(scale, now, value) ? [{ scale, bound: bits > 0 ? 'least' : 'most', value }] : []
  }
  const value = now * factor ** (1 / power)
  const bound = value > now ? 'least' : 'most'
  return within(scale, now, value) ? [{ scale, bound, value: safely(value, bound) }] : []
}

/** Scale factors at which a setting, now `exact` units, comes out at a small whole number; the nearest first. */
function whole(scale: ScaleName, now: number, exact: number, power: number): Remedy[] {
  const change = (value: number) => (scale === 'shift' ? Math.abs(value - now) : Math.abs(Math.log(value / now)))
  const values =
    scale === 'shift'
      ? Array.from({ length: 32 }, (_, bits) => bits)
      : Array.from({ length: FINE }, (_, i) => Number((now * ((i + 1) / exact) ** (1 / power)).toPrecision(3)))
  return values
    .filter((value) => within(scale, now, value))
    .sort((a, b) => change(a) - change(b))
    .map((value) => ({ scale, bound: 'alone', value }))
}

/** Three digits, rounded to the side that keeps the bound. */
function safely(value: number, bound: 'least' | 'most'): number {
  const unit = 10 ** (Math.floor(Math.log10(value)) - 2)
  const digits = bound === 'least' ? Math.ceil(value / unit - 1e-9) : Math.floor(value / unit + 1e-9)
  return Number((digits * unit).toPrecision(3))
}
