/**
 * Margins of a sampled loop. The gain margins are exact for a stable loop: a closed pole can cross the unit circle only where
 * k·L(e^(jωT)) = −1, so the nearest k above and below 1 bound the gains that stay stable.
 */
import type { FrequencyResponse } from './response.ts'
import { peak, type Readings, readingsOf, root, summit } from './scalar.ts'

/** Why a loop has no bandwidth: below −3 dB from the lowest frequency on, or above it up to half the sample rate; '' where it has one. */
export type NoBandwidth = '' | 'below' | 'above'

export interface Margins {
  /** Highest frequency at which |L| falls through 1 [rad/s], and all at which it passes 1. */
  crossover: number | null
  crossings: number[]
  /** Least phase to a crossing's −180° [deg] and its frequency [rad/s]; negative where phase lead would upset the loop. */
  phaseMargin: number | null
  phaseMarginFrequency: number | null
  /** Dead time that the loop bears on top [s]. */
  delayMargin: number | null
  /** Factor by which the gain may rise, and may fall (below 1, where the loop is conditionally stable) [dB]; null: without bound. */
  gainMargin: number | null
  gainMarginFrequency: number | null
  lowerGainMargin: number | null
  /** Largest |1/(1 + L)|, its frequency [rad/s], and its inverse: the least distance of L from −1. */
  peakSensitivity: number
  peakSensitivityFrequency: number
  modulusMargin: number
  /** Largest |L| read; 0 for a loop without a gain. */
  largestGain: number
  /** Lowest frequency at which |L/(1 + L)| falls through −3 dB [rad/s], and its peak over 1 [dB], 0 where it stays below. */
  bandwidth: number | null
  noBandwidth: NoBandwidth
  /** |L/(1 + L)| at the lowest frequency looked at: 1 where the loop follows a slow set point. */
  slowAnswer: number
  peaking: number
}

const DEGREES = 180 / Math.PI

/** `angles` rise, to π for a sampled loop, and are close enough together to tell every crossing (`searchAngles`). */
export function marginsOf(response: FrequencyResponse, angles: Float64Array, period: number): Margins {
  const readings = readingsOf(response, angles)
  const crossings = crossingsOf(response, readings)
  const falling = crossings.filter(({ falls }) => falls)
  return {
    crossover: falling.length > 0 ? falling.at(-1)!.angle / period : null,
    crossings: crossings.map(({ angle }) => angle / period),
    ...phaseMargins(response, crossings, period),
    ...gainMargins(response, readings, period),
    largestGain: readings.gain.reduce((most, gain) => Math.max(most, gain), 0),
    ...sensitivityPeak(response, readings, period),
    ...bandwidthOf(response, readings, period),
    slowAnswer: readings.tracking[0]!,
  }
}

/** A function of the angle from what the response then shows. */
const reading =
  (response: FrequencyResponse, value: () => number) =>
  (angle: number): number => {
    response.at(angle)
    return value()
  }

interface Crossing {
  angle: number
  /** |L| falls through 1 here, or rises. */
  falls: boolean
}

function crossingsOf(response: FrequencyResponse, { angles, gain }: Readings): Crossing[] {
  const logGain = reading(response, () => Math.log(response.gain))
  const found: Crossing[] = []
  const cross = (low: number, high: number, falls: boolean) => found.push({ angle: root(logGain, low, high), falls })
  for (let i = 1; i < angles.length; i++) {
    const above = gain[i - 1]! > 1
    if (above !== gain[i]! > 1) cross(angles[i - 1]!, angles[i]!, above)
    else if (i > 1 && turns(gain, i - 1) && gain[i - 2]! > 1 === above) touch(i - 1, above)
  }
  return found.sort((a, b) => a.angle - b.angle)

  /** Between three readings on one side of 1 the gain may reach over to the other. */
  function touch(i: number, above: boolean) {
    const sign = above ? -1 : 1
    const top = peak((angle) => sign * logGain(angle), angles[i - 1]!, angles[i + 1]!)
    if (!(top.value > 0)) return
    cross(angles[i - 1]!, top.angle, above)
    cross(top.angle, angles[i + 1]!, !above)
  }
}

/** A lowest value above 1 or a highest below it. */
function turns(gain: Float64Array, i: number): boolean {
  const [before, here, after] = [gain[i - 1]!, gain[i]!, gain[i + 1]!]
  return here > 1 ? here <= before && here <= after : here >= before && here >= after
}

function phaseMargins(response: FrequencyResponse, crossings: readonly Crossing[], period: number) {
  if (crossings.length === 0) return { phaseMargin: null, phaseMarginFrequency: null, delayMargin: null }
  let least = { behind: Number.POSITIVE_INFINITY, angle: 0 }
  let delay = Number.POSITIVE_INFINITY
  for (const { angle } of crossings) {
    response.at(angle)
    const behind = Math.atan2(-response.im, -response.re) // angle of L less −180°, within ±180°
    if (Math.abs(behind) < Math.abs(least.behind)) least = { behind, angle }
    delay = Math.min(delay, (behind > 0 ? behind : behind + 2 * Math.PI) / (angle / period))
  }
  return {
    phaseMargin: least.behind * DEGREES,
    phaseMarginFrequency: least.angle / period,
    delayMargin: delay,
  }
}

/** Where L is real and negative, −1/L is the gain that brings it to −1. */
function gainMargins(response: FrequencyResponse, { angles, gain, re, im }: Readings, period: number) {
  const imaginary = reading(response, () => response.im)
  let upper = { factor: Number.POSITIVE_INFINITY, angle: 0 }
  let lower = 0
  const meets = (angle: number, at: number) => {
    if (!(at < 0)) return
    const factor = -1 / at
    if (factor > 1 && factor < upper.factor) upper = { factor, angle }
    else if (factor < 1 && factor > lower) lower = factor
  }
  const last = angles.length - 1
  for (let i = 1; i < last; i++) {
    if (im[i - 1]! > 0 === im[i]! > 0 || !(re[i - 1]! < 0 || re[i]! < 0)) continue
    const angle = root(imaginary, angles[i - 1]!, angles[i]!)
    response.at(angle)
    meets(angle, response.re)
  }
  // At the Nyquist frequency the loop gain of a sampled loop is real.
  if (Math.abs(im[last]!) <= 1e-9 * gain[last]!) meets(angles[last]!, re[last]!)
  const bounded = Number.isFinite(upper.factor)
  return {
    gainMargin: bounded ? decibels(upper.factor) : null,
    gainMarginFrequency: bounded ? upper.angle / period : null,
    lowerGainMargin: lower > 0 ? decibels(lower) : null,
  }
}

function sensitivityPeak(response: FrequencyResponse, { angles, sensitivity }: Readings, period: number) {
  const most = summit(
    sensitivity,
    angles,
    reading(response, () => 1 / response.returned),
  )
  return {
    peakSensitivity: most.value,
    peakSensitivityFrequency: most.angle / period,
    modulusMargin: 1 / most.value,
  }
}

function bandwidthOf(response: FrequencyResponse, { angles, tracking }: Readings, period: number) {
  const closed = reading(response, () => response.gain / response.returned)
  const peaking = Math.max(0, decibels(summit(tracking, angles, closed).value))
  const first = tracking.findIndex((value) => value < Math.SQRT1_2)
  if (first < 0) return { bandwidth: null, noBandwidth: 'above' as const, peaking }
  if (first === 0) return { bandwidth: null, noBandwidth: 'below' as const, peaking }
  const angle = root((at) => closed(at) - Math.SQRT1_2, angles[first - 1]!, angles[first]!)
  return { bandwidth: angle / period, noBandwidth: '' as const, peaking }
}

const decibels = (factor: number) => 20 * Math.log10(factor)
