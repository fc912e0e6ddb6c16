/**
 * The angles ω·T at which a loop is looked at. A search for crossings knows no frequency range: it begins below the slowest pole
 * and zero, goes down until a loop with an integrator has a gain above 1, and halves every interval over which the response bends.
 */
import type { Complex } from './complex.ts'
import type { FrequencyResponse } from './response.ts'

/** Distance from z = 1 below which a pole counts as an integrator. */
const INTEGRATOR = 1e-9
/** Points a decade before any halving, share of the slowest corner to begin at, and the lowest angle of all. */
const PER_DECADE = 12
const BELOW = 0.01
const LOWEST = 1e-11
/** How far log gain and phase [rad] may lie off the straight line between two neighbours. */
const BEND = 0.04
const HALVINGS = 10
/** Log gain beyond which a loop is so far from 1 and −1 that its bends are of no account: 104 dB. */
const FAR = 12

const distance = ({ re, im }: Complex) => Math.hypot(re - 1, im)

/** Angles, rising to π, close enough together to tell every crossing. `corners`: poles and zeros of 1 + L, L or both. */
export function searchAngles(response: FrequencyResponse, corners: readonly Complex[]): Float64Array {
  const slowest = Math.min(1, ...corners.map(distance).filter((d) => d > INTEGRATOR))
  const first = lowEnd(response, Math.max(slowest * BELOW, LOWEST))
  const steps = Math.ceil(PER_DECADE * Math.log10(Math.PI / first))
  const coarse = Array.from({ length: steps }, (_, i) => first * (Math.PI / first) ** (i / steps))
  const near = corners.flatMap((corner) => around(corner, first))
  return halved(
    response,
    [...coarse, ...near, Math.PI].sort((a, b) => a - b),
  )
}

/** From `first` down until the gain no longer rises, or is above 1 with a decade to spare. */
function lowEnd(response: FrequencyResponse, first: number): number {
  const gainAt = (angle: number) => {
    response.at(angle)
    return response.gain
  }
  let angle = first
  while (angle > LOWEST) {
    const gain = gainAt(angle)
    if (gain > 10 || gainAt(angle / 10) < 2 * gain) break
    angle /= 10
  }
  return angle
}

/** Angles about a lightly damped pole or zero, as close as it is sharp. */
function around({ re, im }: Complex, first: number): number[] {
  const angle = Math.abs(Math.atan2(im, re))
  const width = Math.max(Math.abs(Math.log(Math.hypot(re, im))), 1e-7 * angle)
  if (!(width < angle)) return []
  return [-4, -2, -1, -0.5, 0, 0.5, 1, 2, 4]
    .map((k) => angle + k * width)
    .filter((near) => near > first && near < Math.PI)
}

interface Reading {
  angle: number
  gain: number
  phase: number
}

function halved(response: FrequencyResponse, angles: readonly number[]): Float64Array {
  const read = (angle: number): Reading => {
    response.at(angle)
    return { angle, gain: Math.log(response.gain), phase: Math.atan2(response.im, response.re) }
  }
  const made: number[] = []
  const between = (low: Reading, high: Reading, left: number) => {
    const middle = read(Math.sqrt(low.angle * high.angle))
    const straight = left === 0 || !bends(low, middle, high)
    if (!straight) between(low, middle, left - 1)
    made.push(middle.angle)
    if (!straight) between(middle, high, left - 1)
  }
  let before = read(angles[0]!)
  made.push(before.angle)
  for (const angle of angles.slice(1)) {
    if (!(angle > before.angle * (1 + 1e-12))) continue
    const next = read(angle)
    between(before, next, HALVINGS)
    made.push(angle)
    before = next
  }
  return Float64Array.from(made)
}

function bends(low: Reading, middle: Reading, high: Reading): boolean {
  const gain = middle.gain - (low.gain + high.gain) / 2
  const turn = wrapped(middle.phase - low.phase) - wrapped(high.phase - middle.phase)
  const near = Math.max(low.gain, middle.gain, high.gain) > -FAR && Math.min(low.gain, middle.gain, high.gain) < FAR
  return near && (Math.abs(gain) > BEND || Math.abs(turn) > 2 * BEND)
}

const wrapped = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))

/** Angles of a chart on a logarithmic grid up to π, closer together about lightly damped poles; they begin a decade below `lowest`. */
export function anglesFor(
  closed: readonly Complex[],
  open: readonly Complex[],
  count: number,
  lowest = Number.POSITIVE_INFINITY,
): Float64Array {
  const slowest = Math.min(...closed.map(distance).filter((d) => d > INTEGRATOR))
  const usual = Math.min(Math.max(slowest / 10, 1e-4), 1e-2) * Math.PI
  const first = Math.min(usual, lowest / 10)
  const angles: number[] = []
  const last = count - 1
  for (let i = 0; i < last; i++) angles.push(first * (Math.PI / first) ** (i / last))
  angles.push(Math.PI)
  const spacing = Math.log(Math.PI / first) / last
  for (const { re, im } of [...closed, ...open]) {
    const angle = Math.atan2(im, re)
    const width = Math.abs(Math.log(Math.hypot(re, im)))
    if (!(angle > first && angle < Math.PI) || width > 4 * spacing * angle) continue
    for (const k of [-4, -2, -1, -0.5, 0, 0.5, 1, 2, 4]) {
      const near = angle + k * width
      if (near > first && near < Math.PI) angles.push(near)
    }
  }
  return Float64Array.from(angles).sort()
}
