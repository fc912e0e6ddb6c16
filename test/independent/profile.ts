/** Jerk-limited motion from rest to rest, with a creep zone: pieces of constant jerk one after the other. */
import type { Input } from './input.ts'

interface Limits {
  acceleration: number
  jerk: number
}

interface Piece {
  start: number
  duration: number
  travel: number
  speed: number
  acceleration: number
  jerk: number
}

export interface Aim {
  travel: number
  speed: number
  acceleration: number
}

/** Time for a change of speed [s]. */
const timeFor = (change: number, { acceleration: a, jerk: j }: Limits) =>
  change * j >= a * a ? change / a + a / j : 2 * Math.sqrt(change / j)

const wayFor = (from: number, to: number, limits: Limits) => ((from + to) / 2) * timeFor(Math.abs(to - from), limits)

export class Profile {
  private readonly pieces: Piece[] = []
  private end: Aim = { travel: 0, speed: 0, acceleration: 0 }
  duration = 0

  /** From rest at `from` over `legs`, each a way [m], a highest speed and the speed at its end [m/s]. Ways are positive. */
  constructor(limits: Limits, legs: { way: number; speed: number; last: number }[], from = 0) {
    this.end.travel = from
    for (const { way, speed, last } of legs) this.leg(way, speed, last, limits)
  }

  at(time: number): Aim {
    if (time >= this.duration) return this.end
    const piece = this.pieces.findLast(({ start }) => start <= time) ?? this.pieces[0]!
    const t = Math.max(0, time - piece.start)
    return {
      travel: piece.travel + t * (piece.speed + t * (piece.acceleration / 2 + (t * piece.jerk) / 6)),
      speed: piece.speed + t * (piece.acceleration + (t * piece.jerk) / 2),
      acceleration: piece.acceleration + t * piece.jerk,
    }
  }

  private leg(way: number, highest: number, last: number, limits: Limits) {
    const first = this.end.speed
    const needs = (speed: number) => wayFor(first, speed, limits) + wayFor(speed, last, limits)
    const least = Math.max(first, last)
    if (needs(least) > way * (1 + 1e-12)) throw new Error(`${way} m are too short to go from ${first} to ${last} m/s.`)
    const top = needs(highest) <= way ? highest : largest((speed) => needs(speed) <= way, least, highest)
    this.change(top - first, limits)
    this.add(Math.max(0, way - needs(top)) / top, 0)
    this.change(last - top, limits)
    this.end.acceleration = 0
  }

  private change(by: number, limits: Limits) {
    const size = Math.abs(by)
    if (size === 0) return
    const total = timeFor(size, limits)
    const rise = Math.min(limits.acceleration / limits.jerk, total / 2)
    const jerk = Math.sign(by) * limits.jerk
    this.add(rise, jerk)
    this.add(total - 2 * rise, 0)
    this.add(rise, -jerk)
    this.end.acceleration = 0
  }

  private add(duration: number, jerk: number) {
    if (!(duration > 0)) return
    const piece = { start: this.duration, duration, ...this.end, jerk }
    this.pieces.push(piece)
    this.duration += duration
    this.end = {
      travel: piece.travel + duration * (piece.speed + duration * (piece.acceleration / 2 + (duration * jerk) / 6)),
      speed: piece.speed + duration * (piece.acceleration + (duration * jerk) / 2),
      acceleration: piece.acceleration + duration * jerk,
    }
  }
}

/** The largest value for which a condition holds that holds at `low` and not at `high`. */
function largest(holds: (value: number) => boolean, low: number, high: number): number {
  let [inside, outside] = [low, high]
  for (let round = 0; round < 100; round++) {
    const middle = (inside + outside) / 2
    if (holds(middle)) inside = middle
    else outside = middle
  }
  return inside
}

/** The approach: as far as first touch and the overtravel, at most the stroke; slower from the opening of the creep zone on. */
export function approachOf({ approach, jaws, part }: Pick<Input, 'approach' | 'jaws' | 'part'>): Profile {
  const way = Math.min((jaws.opening - part.width) / jaws.contacts + approach.overtravel, jaws.stroke)
  const creep = Math.min(approach.creepSpeed, approach.speed)
  const before = (jaws.opening - approach.creepFrom) / jaws.contacts
  if (!(approach.creepFrom > part.width)) return new Profile(approach, [{ way, speed: approach.speed, last: 0 }])
  if (before < wayFor(0, creep, approach)) return new Profile(approach, [{ way, speed: creep, last: 0 }])
  return new Profile(approach, [
    { way: before, speed: approach.speed, last: creep },
    { way: way - before, speed: creep, last: 0 },
  ])
}
