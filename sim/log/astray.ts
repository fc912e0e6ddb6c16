/**
 * Stretches of a log in which the axis does not follow its reference: it stands blocked far from it, or runs away from it. The model
 * does neither, so that they tell nothing of friction and mass. Thresholds: common practice, no source.
 */
import { slopeOf } from './grid.ts'
import { type Measured, wholeColumn } from './measured.ts'

export interface Astray {
  kind: 'blocked' | 'away'
  /** From the first row on [s]. */
  from: number
  to: number
}

/** How far from its reference the axis is, over the way that this goes: blocked, away, and following again. */
const BLOCKED = 0.25
const AWAY = 1
const FOLLOWS = 0.05
/** Standing is slower than this share of the fastest speed, of axis or reference: a reference that jumps has any speed. */
const STANDING = 0.02
/** How long it must last [s], and how much is left out before, where the drive pushes already, and behind, where it still swings [s]. */
const LASTS = { blocked: 0.05, away: 0.02 }
const BEFORE = 0.05
const BEHIND = 0.1

/** None where the log has no reference or no position, and where the reference stands still. */
export function astrayIn(measured: Measured): Astray[] {
  const { time } = measured
  const [target, position] = [wholeColumn(measured, 'target'), wholeColumn(measured, 'motorTravel')]
  if (!target || !position) return []
  const way = rangeOf(target)
  const offset = middleOf(position.map((x, k) => x - target[k]!))
  const error = position.map((x, k) => (x - target[k]! - offset) / (way || 1))
  const speed = slopeOf(time, position)
  const fastest = Math.min(mostOf(slopeOf(time, target)), mostOf(speed))
  if (way === 0 || fastest === 0) return []
  const is = {
    blocked: (k: number) => Math.abs(error[k]!) > BLOCKED && Math.abs(speed[k]!) < STANDING * fastest,
    away: (k: number) => Math.abs(error[k]!) > AWAY && error[k]! * speed[k]! > 0,
  }
  const found = (['blocked', 'away'] as const).flatMap((kind) =>
    runsOf(time, is[kind], LASTS[kind]).map(([from, to]) => ({ kind, ...widened(time, error, from, to) })),
  )
  return joined(found).map(({ kind, from, to }) => ({ kind, from: from - time[0]!, to: to - time[0]! }))
}

/** Rows at which a log is to be looked at, as a function of the row; `out` as `astrayIn` gives it. */
export function followsAt({ time }: Measured, out: readonly Astray[]): (row: number) => boolean {
  const start = time[0]!
  return (row) => !out.some(({ from, to }) => time[row]! - start >= from && time[row]! - start <= to)
}

/** First and last row of each run that lasts. */
function runsOf(time: Float64Array, is: (k: number) => boolean, lasts: number): [number, number][] {
  const runs: [number, number][] = []
  let from = -1
  for (let k = 0; k <= time.length; k++) {
    if (k < time.length && is(k)) {
      if (from < 0) from = k
      continue
    }
    if (from >= 0 && time[k - 1]! - time[from]! >= lasts) runs.push([from, k - 1])
    from = -1
  }
  return runs
}

/** From where it began to stay behind, to where it follows again and what swung has had time to end [s]. */
function widened(time: Float64Array, error: Float64Array, first: number, last: number): { from: number; to: number } {
  let [from, to] = [first, last]
  while (from > 0 && Math.abs(error[from]!) > FOLLOWS) from--
  while (to < time.length - 1 && Math.abs(error[to]!) > FOLLOWS) to++
  return { from: Math.max(time[0]!, time[from]! - BEFORE), to: time[to]! + BEHIND }
}

/** Stretches that touch are one, of the kind that comes first. */
function joined(list: Astray[]): Astray[] {
  const made: Astray[] = []
  for (const each of [...list].sort((a, b) => a.from - b.from)) {
    const last = made.at(-1)
    if (last && each.from <= last.to) last.to = Math.max(last.to, each.to)
    else made.push({ ...each })
  }
  return made
}

function rangeOf(values: Float64Array): number {
  const [least, most] = values.reduce(([a, b], v) => [Math.min(a, v), Math.max(b, v)], [Infinity, -Infinity])
  return most - least
}

const mostOf = (values: Float64Array) => values.reduce((most, v) => Math.max(most, Math.abs(v)), 0)

const middleOf = (values: Float64Array) => values.slice().sort()[values.length >> 1]!
