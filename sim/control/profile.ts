/**
 * Jerk-limited move from rest to rest with a creep zone. Biagiotti and Melchiorri, *Trajectory Planning for Automatic Machines
 * and Robots* (2008), double-S trajectory. Their curve is the one here as long as both ramps reach the acceleration limit. Where
 * one does not, the book lowers that limit for *both* ramps by a search step until they do; here each ramp keeps the full limit
 * and a short one simply has no phase of constant acceleration, which is quicker. SI.
 */
import { Block } from '../core/block.ts'
import { item, type Numbers, numbers, whole } from '../core/native.ts'

/** Enough to narrow a speed down to neighbouring doubles whatever its size; a fixed number, so no tolerance decides. */
const HALVINGS: i32 = 128
/** Start, position, speed, acceleration and jerk of a phase; phases of two moves and of the rest at the end. */
const PHASE_SIZE: i32 = 5
const MOST_PHASES: i32 = 15

/**
 * Quickest change of speed with |acceleration| and |jerk| limited and no acceleration at either end. By its symmetry the mean
 * speed is (from + to)/2.
 */
export class Ramp {
  from: f64 = 0
  to: f64 = 0
  duration: f64 = 0
  distance: f64 = 0
  /** Length of each of the two phases at full jerk [s]; between them the acceleration is constant. */
  jerkTime: f64 = 0
  /** The signed peak. */
  acceleration: f64 = 0
}

export function ramp(from: f64, to: f64, acceleration: f64, jerk: f64): Ramp {
  const made = new Ramp()
  made.from = from
  made.to = to
  const change: f64 = Math.abs(to - from)
  if (change === 0) return made
  const reached: bool = change * jerk >= acceleration * acceleration
  const jerkTime: f64 = reached ? acceleration / jerk : Math.sqrt(change / jerk)
  const duration: f64 = reached ? change / acceleration + jerkTime : 2 * jerkTime
  const peak: f64 = reached ? acceleration : jerk * jerkTime
  made.duration = duration
  made.distance = ((from + to) / 2) * duration
  made.jerkTime = jerkTime
  made.acceleration = to > from ? peak : -peak
  return made
}

/** Distance of a ramp [m]. */
function distanceOf(from: f64, to: f64, acceleration: f64, jerk: f64): f64 {
  const change: f64 = Math.abs(to - from)
  if (change === 0) return 0
  const reached: bool = change * jerk >= acceleration * acceleration
  const jerkTime: f64 = reached ? acceleration / jerk : Math.sqrt(change / jerk)
  const duration: f64 = reached ? change / acceleration + jerkTime : 2 * jerkTime
  return ((from + to) / 2) * duration
}

/** Two ramps with a stretch at constant speed between them. */
export class SCurve {
  up: Ramp = new Ramp()
  down: Ramp = new Ramp()
  peakSpeed: f64 = 0
  /** Time at peakSpeed [s]. */
  cruise: f64 = 0
  duration: f64 = 0
}

/**
 * Quickest move over `distance` from speed v0 to speed v1 (both 0 … speed) that never falls below the smaller of the two:
 * ramp up, cruise, ramp down. Where the distance does not allow `speed`, the highest peak speed that fits is bisected.
 * The distance must allow the change from v0 to v1.
 */
export function sCurve(distance: f64, v0: f64, v1: f64, speed: f64, acceleration: f64, jerk: f64): SCurve {
  const curve = new SCurve()
  const peakSpeed: f64 = highestPeak(distance, v0, v1, speed, acceleration, jerk)
  curve.peakSpeed = peakSpeed
  curve.up = ramp(v0, peakSpeed, acceleration, jerk)
  curve.down = ramp(peakSpeed, v1, acceleration, jerk)
  curve.cruise = peakSpeed > 0 ? (distance - curve.up.distance - curve.down.distance) / peakSpeed : 0
  curve.duration = curve.up.duration + curve.cruise + curve.down.duration
  return curve
}

/** Highest speed up to `speed` for which both ramps fit in the distance. */
function highestPeak(distance: f64, v0: f64, v1: f64, speed: f64, acceleration: f64, jerk: f64): f64 {
  if (rampsTake(v0, v1, speed, acceleration, jerk) <= distance) return speed
  let best: f64 = Math.max(v0, v1)
  let above: f64 = speed
  for (let n: i32 = 0; n < HALVINGS; n++) {
    const middle: f64 = best + (above - best) / 2
    if (rampsTake(v0, v1, middle, acceleration, jerk) <= distance) best = middle
    else above = middle
  }
  return best
}

function rampsTake(v0: f64, v1: f64, peak: f64, acceleration: f64, jerk: f64): f64 {
  return distanceOf(v0, peak, acceleration, jerk) + distanceOf(peak, v1, acceleration, jerk)
}

/** Highest speed up to `speed` from which `distance` is long enough to stop. */
function highestEntry(distance: f64, speed: f64, acceleration: f64, jerk: f64): f64 {
  if (distanceOf(speed, 0, acceleration, jerk) <= distance) return speed
  let best: f64 = 0
  let above: f64 = speed
  for (let n: i32 = 0; n < HALVINGS; n++) {
    const middle: f64 = best + (above - best) / 2
    if (distanceOf(middle, 0, acceleration, jerk) <= distance) best = middle
    else above = middle
  }
  return best
}

/**
 * A planned move: `plan` once, then `at` for any time in any order; it costs least when time only grows. Made of phases of constant
 * jerk, one after the other, closed by rest at the end.
 */
export class Profile extends Block {
  position: f64 = 0
  speed: f64 = 0
  acceleration: f64 = 0
  /** [s], [m/s] */
  duration: f64 = 0
  peakSpeed: f64 = 0
  direction: f64 = 1
  phases: Numbers = numbers(PHASE_SIZE * MOST_PHASES)
  count: f64 = 0
  index: f64 = 0
  /** While planning: where the next phase begins [s], [m]. */
  start: f64 = 0
  reached: f64 = 0

  /** Distance [m], negative runs the other way; limits above 0; distance travelled at which the creep speed has been reached. */
  plan(distance: f64, speed: f64, acceleration: f64, jerk: f64, creepSpeed: f64, creepFrom: f64): void {
    const way: f64 = Math.abs(distance)
    this.direction = distance < 0 ? -1 : 1
    this.count = 0
    this.index = 0
    this.start = 0
    this.reached = 0
    this.peakSpeed = 0
    this.planMoves(way, speed, acceleration, jerk, creepSpeed, creepFrom)
    this.duration = this.start
    this.reached = way
    this.addPhase(0, 0, 0)
    this.at(0)
  }

  /**
   * The creep zone is entered without acceleration: at creepSpeed or, where the way left is too short to stop from it, at the
   * highest speed from which it is long enough. A zone that starts before creepSpeed can be reached from rest covers the whole move.
   */
  private planMoves(way: f64, speed: f64, acceleration: f64, jerk: f64, creepSpeed: f64, creepFrom: f64): void {
    if (creepFrom >= way || creepSpeed >= speed) {
      this.add(sCurve(way, 0, 0, speed, acceleration, jerk), jerk)
    } else if (creepFrom <= distanceOf(0, creepSpeed, acceleration, jerk)) {
      this.add(sCurve(way, 0, 0, creepSpeed, acceleration, jerk), jerk)
    } else {
      const left: f64 = way - creepFrom
      const entry: f64 = highestEntry(left, creepSpeed, acceleration, jerk)
      this.add(sCurve(creepFrom, 0, entry, speed, acceleration, jerk), jerk)
      this.add(sCurve(left, entry, 0, entry, acceleration, jerk), jerk)
    }
  }

  private add(curve: SCurve, jerk: f64): void {
    this.peakSpeed = Math.max(this.peakSpeed, curve.peakSpeed)
    this.addRamp(curve.up, jerk)
    this.addFor(curve.cruise, curve.peakSpeed, 0, 0)
    this.addRamp(curve.down, jerk)
  }

  private addRamp(made: Ramp, jerk: f64): void {
    const signed: f64 = made.acceleration > 0 ? jerk : -jerk
    const bend: f64 = (made.acceleration * made.jerkTime) / 2
    this.addFor(made.jerkTime, made.from, 0, signed)
    this.addFor(made.duration - 2 * made.jerkTime, made.from + bend, made.acceleration, 0)
    this.addFor(made.jerkTime, made.to - bend, made.acceleration, -signed)
  }

  private addFor(duration: f64, speed: f64, acceleration: f64, jerk: f64): void {
    if (!(duration > 0)) return
    this.addPhase(speed, acceleration, jerk)
    this.start += duration
    this.reached += duration * (speed + duration * (acceleration / 2 + (duration * jerk) / 6))
  }

  private addPhase(speed: f64, acceleration: f64, jerk: f64): void {
    const from: i32 = PHASE_SIZE * whole(this.count)
    this.phases[from] = this.start
    this.phases[from + 1] = this.reached
    this.phases[from + 2] = speed
    this.phases[from + 3] = acceleration
    this.phases[from + 4] = jerk
    this.count += 1
  }

  /** Sets position, speed and acceleration to those at `time` (s from the start; at rest before it and after the end). */
  at(time: f64): void {
    const t: f64 = Math.max(0, time)
    const from: i32 = PHASE_SIZE * this.seek(t)
    const speed: f64 = item(this.phases, from + 2)
    const acceleration: f64 = item(this.phases, from + 3)
    const jerk: f64 = item(this.phases, from + 4)
    const s: f64 = t - item(this.phases, from)
    this.position =
      this.direction * (item(this.phases, from + 1) + s * (speed + s * (acceleration / 2 + (s * jerk) / 6)))
    this.speed = this.direction * (speed + s * (acceleration + (s * jerk) / 2))
    this.acceleration = this.direction * (acceleration + s * jerk)
  }

  /** The phase in which a time lies. */
  private seek(time: f64): i32 {
    const last: i32 = whole(this.count) - 1
    let n: i32 = whole(this.index)
    while (n > 0 && time < item(this.phases, PHASE_SIZE * n)) n--
    while (n < last && time >= item(this.phases, PHASE_SIZE * (n + 1))) n++
    this.index = n
    return n
  }
}
