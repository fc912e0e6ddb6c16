/**
 * The time lens: a mapping between simulated time and the time bar that stretches around first contact and arm moves, so that
 * milliseconds there take seconds of play. Play runs along the bar at constant speed.
 *
 * The stretch w(t), play seconds for each simulated second, is piecewise linear and positive; the bar is its running integral.
 * Both directions are closed forms (a quadratic and its root), so the mapping is strictly monotone and exactly invertible.
 */
export interface LensInput {
  /** Length of the run [s]. */
  duration: number
  /** Times of first contact [s]. */
  contacts: number[]
  /** Arm moves [s]. */
  moves: { start: number; end: number }[]
}

export interface TimeLens {
  /** Place on the bar, 0 to 1, of a time [s]. */
  toDisplay(time: number): number
  /** Time [s] at a place on the bar. */
  toTime(display: number): number
  /** Stretch at a time: play seconds for each simulated second. */
  rate(time: number): number
  /** Length of the whole play [s]. */
  seconds: number
}

interface Bump {
  /** Feet and shoulders of a trapezoid [s], and its height [play seconds for each second]. */
  corners: [number, number, number, number]
  height: number
}

/** Around first contact [s]: ramp before, flat before, flat after, ramp after. */
const CONTACT = [0.012, 0.006, 0.05, 0.05] as const
/** Play seconds that one contact takes. */
const CONTACT_PLAY = 4
const MOVE_RAMP = 0.03
/** A move is slowed to this many times its length, but all moves together take at most so many play seconds more. */
const MOVE_STRETCH = 5
const MOVES_PLAY = 8
/** Away from contact and moves a long run is played quicker than it was, so that it fits into so many seconds. */
const LONGEST_REST = 6

export function buildLens({ duration, contacts, moves }: LensInput): TimeLens {
  return lensOf(duration, Math.min(1, LONGEST_REST / duration), [
    ...contactBumps(duration, contacts),
    ...moveBumps(duration, moves),
  ])
}

/** No stretch: the bar is simulated time, played as it was. */
export const flatLens = (duration: number): TimeLens => lensOf(duration, 1, [])

function contactBumps(duration: number, contacts: number[]): Bump[] {
  const size = Math.min(1, (0.5 * duration) / CONTACT.reduce((sum, part) => sum + part, 0))
  const [rampIn, before, after, rampOut] = CONTACT.map((part) => part * size) as [number, number, number, number]
  const area = before + after + 0.5 * (rampIn + rampOut)
  return united(
    contacts.map((time) => ({ start: time - before, end: time + after })),
    rampIn + rampOut,
  ).map(({ start, end }) => ({ corners: [start - rampIn, start, end, end + rampOut], height: CONTACT_PLAY / area }))
}

function moveBumps(duration: number, moves: LensInput['moves']): Bump[] {
  const spans = united(moves, 2 * MOVE_RAMP).filter(({ start, end }) => start < duration && end > 0)
  const total = spans.reduce((sum, { start, end }) => sum + end - start, 0)
  const height = Math.min(MOVE_STRETCH - 1, MOVES_PLAY / total)
  return spans.map(({ start, end }) => ({ corners: [start - MOVE_RAMP, start, end, end + MOVE_RAMP], height }))
}

/** Spans in order, those that lie nearer than `near` joined. */
function united(spans: { start: number; end: number }[], near: number): { start: number; end: number }[] {
  const joined: { start: number; end: number }[] = []
  for (const span of [...spans].sort((a, b) => a.start - b.start)) {
    const last = joined.at(-1)
    if (last && span.start - last.end < near) last.end = Math.max(last.end, span.end)
    else joined.push({ ...span })
  }
  return joined
}

function lensOf(duration: number, base: number, bumps: Bump[]): TimeLens {
  const inside = (time: number) => time > 0 && time < duration
  const corners = [...new Set(bumps.flatMap((bump) => bump.corners).filter(inside))].sort((a, b) => a - b)
  const knots = [0, ...corners, duration]
  const rates = knots.map((time) => bumps.reduce((sum, bump) => sum + bump.height * heightOf(bump.corners, time), base))
  const sums = [0]
  for (let i = 1; i < knots.length; i++) {
    sums.push(sums[i - 1]! + 0.5 * (rates[i - 1]! + rates[i]!) * (knots[i]! - knots[i - 1]!))
  }
  const seconds = sums.at(-1)!
  const slope = (i: number) => (rates[i + 1]! - rates[i]!) / (knots[i + 1]! - knots[i]!)

  return {
    seconds,
    rate(time) {
      const t = Math.min(duration, Math.max(0, time))
      const i = segment(knots, t)
      return rates[i]! + slope(i) * (t - knots[i]!)
    },
    toDisplay(time) {
      if (!(time > 0)) return 0
      if (time >= duration) return 1
      const i = segment(knots, time)
      const s = time - knots[i]!
      return (sums[i]! + s * (rates[i]! + 0.5 * slope(i) * s)) / seconds
    },
    toTime(display) {
      if (!(display > 0)) return 0
      if (display >= 1) return duration
      const i = segment(sums, display * seconds)
      const rest = display * seconds - sums[i]!
      const rate = rates[i]!
      return Math.min(knots[i + 1]!, knots[i]! + (2 * rest) / (rate + Math.sqrt(rate * rate + 2 * slope(i) * rest)))
    },
  }
}

/** Height of a unit trapezoid with the given corners. */
function heightOf([foot, shoulder, end, last]: Bump['corners'], time: number): number {
  if (time <= foot || time >= last) return 0
  if (time < shoulder) return (time - foot) / (shoulder - foot)
  return time > end ? (last - time) / (last - end) : 1
}

/** Index i with sorted[i] ≤ value < sorted[i + 1]; the last segment for the end. */
function segment(sorted: number[], value: number): number {
  let low = 0
  let high = sorted.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (sorted[middle]! <= value) low = middle
    else high = middle
  }
  return low
}
