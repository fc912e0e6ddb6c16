/** Scales and figures of the trade-off chart: time by its logarithm, so that quick ones are not crowded; effort evenly. */

import type { View } from '../../../ui/chart/group.ts'
import { formatPlain } from '../../../ui/format.ts'
import type { ShownUnit } from '../../../ui/unit.ts'
import type { Placed } from './points.ts'

/** px */
export const HEIGHT = 240
export const ROOM = { left: 52, right: 16, top: 12, bottom: 24 }

export interface Tick {
  /** px */
  place: number
  text: string
}

/** Part of the chart: natural logarithm of the time [s], and effort [N or N·m]. */
export type Part = Required<View>

export interface Frame {
  shown: Part
  /** Places of a time [s] and of an effort [N or N·m], px. */
  x(time: number): number
  y(force: number): number
  timeTicks: Tick[]
  effortTicks: Tick[]
}

/** All that there is to see. */
export function wholeOf(points: Placed[]): Part {
  const times = points.map((point) => Math.log(Math.max(point.time, 1e-5)))
  const efforts = points.map((point) => point.peak)
  return { x: roomy(times, 0.1), y: roomy(efforts, 0.01 * Math.max(...efforts, 1e-3)) }
}

/** `width` in px; figures in the shown units. */
export function frameOf(shown: Part, width: number, time: ShownUnit, effort: ShownUnit): Frame {
  const [from, to] = shown.x
  const [low, high] = shown.y
  const x = (value: number) =>
    ROOM.left + ((Math.log(Math.max(value, 1e-5)) - from) / (to - from)) * Math.max(1, width - ROOM.left - ROOM.right)
  const y = (value: number) => HEIGHT - ROOM.bottom - ((value - low) / (high - low)) * (HEIGHT - ROOM.top - ROOM.bottom)
  const shownTimes = logTicks(time.toShown(Math.exp(from)), time.toShown(Math.exp(to)))
  return {
    shown,
    x,
    y,
    timeTicks: apart(shownTimes.map((value) => ({ place: x(time.toSi(value)), text: formatPlain(value, 3) }))),
    effortTicks: evenTicks(effort.toShown(low), effort.toShown(high)).map((value) => ({
      place: y(effort.toSi(value)),
      text: formatPlain(value, 4),
    })),
  }
}

/** The range of values with a tenth of air on either side, `least` wide at least. */
function roomy(values: number[], least: number): [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const air = Math.max(0.1 * (high - low), least)
  return [low - air, high + air]
}

/** 1, 2 and 5 of each decade; where a range has less than two of them, even steps. */
export function logTicks(low: number, high: number): number[] {
  const ticks: number[] = []
  for (let power = Math.floor(Math.log10(low)); power <= Math.log10(high); power++)
    for (const digit of [1, 2, 5]) {
      const value = Number(`${digit}e${power}`)
      if (value >= low && value <= high) ticks.push(value)
    }
  return ticks.length > 1 ? ticks : evenTicks(low, high)
}

/** Two to six round figures. */
export function evenTicks(low: number, high: number): number[] {
  const rough = (high - low) / 5
  const decade = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((digit) => digit * decade).find((each) => each >= rough)!
  const ticks: number[] = []
  for (let n = Math.ceil(low / step); n * step <= high; n++) ticks.push(Number((n * step).toPrecision(12)))
  return ticks
}

/** Without those that would touch the one before. */
function apart(ticks: Tick[]): Tick[] {
  let free = Number.NEGATIVE_INFINITY
  return ticks.filter(({ place }) => {
    if (place < free) return false
    free = place + 34
    return true
  })
}
