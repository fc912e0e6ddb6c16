/** Change of speed with zero acceleration at both ends; `acceleration` is the signed peak. SI. */
export interface Ramp {
  readonly from: number
  readonly to: number
  readonly duration: number
  readonly distance: number
  /** length of each of the two phases at full jerk, s; between them the acceleration is constant */
  readonly jerkTime: number
  readonly acceleration: number
}

/** Two ramps with a stretch at constant speed between them. */
export interface SCurve {
  readonly up: Ramp
  readonly down: Ramp
  readonly peakSpeed: number
  /** time at peakSpeed, s */
  readonly cruise: number
  readonly duration: number
}

export interface Limits {
  /** m/s */
  speed: number
  /** m/s² */
  acceleration: number
  /** m/s³; Infinity gives trapezoids of speed */
  jerk: number
}

export interface ProfileOptions extends Limits {
  /** m; negative runs the other way */
  distance: number
  /** m/s */
  creepSpeed?: number | undefined
  /** distance travelled at which the jaw already moves at creepSpeed, m; left out or Infinity = no creep zone */
  creepFrom?: number | undefined
}

interface Phase {
  readonly start: number
  readonly position: number
  readonly speed: number
  readonly acceleration: number
  readonly jerk: number
}

/** Enough to narrow a speed down to neighbouring doubles whatever its size; a fixed number, so no tolerance decides. */
const HALVINGS = 128

/** Largest value in [low, high] that fits, given that `low` does and that whatever lies below a fitting value fits too. */
function largest(low: number, high: number, fits: (value: number) => boolean): number {
  if (fits(high)) return high
  let best = low
  let above = high
  for (let i = 0; i < HALVINGS; i++) {
    const middle = best + (above - best) / 2
    if (fits(middle)) best = middle
    else above = middle
  }
  return best
}

/**
 * Quickest change of speed with |acceleration| and |jerk| limited and no acceleration at either end. By its symmetry the
 * mean speed is (from + to)/2. Biagiotti and Melchiorri, *Trajectory Planning for Automatic Machines
 * and Robots* (2008), double-S trajectory.
 */
export function ramp(from: number, to: number, acceleration: number, jerk: number): Ramp {
  const change = Math.abs(to - from)
  if (change === 0) return { from, to, duration: 0, distance: 0, jerkTime: 0, acceleration: 0 }
  const reached = change * jerk >= acceleration * acceleration
  const jerkTime = reached ? acceleration / jerk : Math.sqrt(change / jerk)
  const duration = reached ? change / acceleration + jerkTime : 2 * jerkTime
  const peak = reached ? acceleration : jerk * jerkTime
  return {
    from,
    to,
    duration,
    distance: ((from + to) / 2) * duration,
    jerkTime,
    acceleration: to > from ? peak : -peak,
  }
}

/**
 * Quickest move over `distance` from speed v0 to speed v1 (both 0 … speed) that never falls below the smaller of the two:
 * ramp up, cruise, ramp down. Where the distance does not allow `speed`, the highest peak speed that fits is bisected.
 *
 * Biagiotti and Melchiorri's double-S is the same curve as long as both ramps reach the acceleration limit. Where one
 * does not, the book lowers that limit for *both* ramps by a search step until they do; here each ramp keeps the full
 * limit and a short one simply has no phase of constant acceleration, which is quicker.
 *
 * Throws RangeError when the distance is too short to change from v0 to v1 within the limits.
 */
export function sCurve(options: Limits & { distance: number; v0: number; v1: number }): SCurve {
  const { distance, v0, v1, speed, acceleration, jerk } = options
  if (!(v0 >= 0 && v1 >= 0 && v0 <= speed && v1 <= speed))
    throw new RangeError(`v0 and v1 must lie between 0 and the speed ${speed}, got ${v0} and ${v1}`)
  if (ramp(v0, v1, acceleration, jerk).distance > distance)
    throw new RangeError(`the speed cannot change from ${v0} to ${v1} within a distance of ${distance}`)

  const fits = (peak: number) =>
    ramp(v0, peak, acceleration, jerk).distance + ramp(peak, v1, acceleration, jerk).distance <= distance
  const peakSpeed = largest(Math.max(v0, v1), speed, fits)
  const up = ramp(v0, peakSpeed, acceleration, jerk)
  const down = ramp(peakSpeed, v1, acceleration, jerk)
  const cruise = peakSpeed > 0 ? (distance - up.distance - down.distance) / peakSpeed : 0
  return { up, down, peakSpeed, cruise, duration: up.duration + cruise + down.duration }
}

/**
 * The moves that make up a profile. The creep zone is entered without acceleration: at creepSpeed or, where the way left
 * is too short to stop from it, at the highest speed from which it is long enough. A zone that starts before creepSpeed
 * can be reached from rest covers the whole move.
 */
function moves(options: ProfileOptions, distance: number): SCurve[] {
  const { speed, acceleration, jerk, creepSpeed = speed, creepFrom = Infinity } = options
  const move = (length: number, v0: number, v1: number, limit: number) =>
    sCurve({ distance: length, v0, v1, speed: limit, acceleration, jerk })
  if (creepFrom >= distance || creepSpeed >= speed) return [move(distance, 0, 0, speed)]
  if (creepFrom <= ramp(0, creepSpeed, acceleration, jerk).distance) return [move(distance, 0, 0, creepSpeed)]

  const left = distance - creepFrom
  const entry = largest(0, creepSpeed, (v) => ramp(v, 0, acceleration, jerk).distance <= left)
  return [move(creepFrom, 0, entry, speed), move(left, entry, 0, entry)]
}

/** Phases of constant jerk, one after the other, closed by rest at `distance`. */
function phases(parts: readonly SCurve[], distance: number, jerk: number): Phase[] {
  const list: Phase[] = []
  let [start, position] = [0, 0]
  const add = (duration: number, speed: number, acceleration: number, phaseJerk: number) => {
    if (!(duration > 0)) return
    list.push({ start, position, speed, acceleration, jerk: phaseJerk })
    start += duration
    position += duration * (speed + duration * (acceleration / 2 + (duration * phaseJerk) / 6))
  }
  const addRamp = ({ from, to, duration, jerkTime, acceleration }: Ramp) => {
    const signed = acceleration > 0 ? jerk : -jerk
    const bend = (acceleration * jerkTime) / 2
    add(jerkTime, from, 0, signed)
    add(duration - 2 * jerkTime, from + bend, acceleration, 0)
    add(jerkTime, to - bend, acceleration, -signed)
  }
  for (const part of parts) {
    addRamp(part.up)
    add(part.cruise, part.peakSpeed, 0, 0)
    addRamp(part.down)
  }
  list.push({ start, position: distance, speed: 0, acceleration: 0, jerk: 0 })
  return list
}

function check(options: ProfileOptions): void {
  const { distance, speed, acceleration, jerk, creepSpeed = speed, creepFrom = Infinity } = options
  if (!Number.isFinite(distance)) throw new RangeError(`distance must be a finite number, got ${distance}`)
  if (Number.isNaN(creepFrom)) throw new RangeError('creepFrom must be a number, got NaN')
  for (const [name, value] of Object.entries({ speed, acceleration, jerk, creepSpeed }))
    if (!(value > 0)) throw new RangeError(`${name} must be above 0, got ${value}`)
}

/**
 * Jerk-limited move from rest to rest with a creep zone. `at` may be asked for any time in any order, and costs least
 * when time only grows. Throws RangeError for limits that are not above 0 or a distance that is not finite.
 */
export class Profile {
  /** s */
  readonly duration: number
  /** m/s */
  readonly peakSpeed: number
  position = 0
  speed = 0
  acceleration = 0
  private readonly direction: number
  private readonly phases: readonly Phase[]
  private index = 0
  private phase: Phase
  private phaseEnd: number

  constructor(options: ProfileOptions) {
    check(options)
    const distance = Math.abs(options.distance)
    const parts = moves(options, distance)
    this.direction = options.distance < 0 ? -1 : 1
    this.phases = phases(parts, distance, options.jerk)
    this.duration = this.phases[this.phases.length - 1]!.start
    this.peakSpeed = Math.max(...parts.map((part) => part.peakSpeed))
    this.phase = this.phases[0]!
    this.phaseEnd = this.phases[1]?.start ?? Infinity
  }

  /** Sets position, speed and acceleration to those at `time` (s from the start; at rest before it and after the end). */
  at(time: number): void {
    const t = Math.max(0, time)
    if (t < this.phase.start || t >= this.phaseEnd) this.seek(t)
    const { start, position, speed, acceleration, jerk } = this.phase
    const s = t - start
    this.position = this.direction * (position + s * (speed + s * (acceleration / 2 + (s * jerk) / 6)))
    this.speed = this.direction * (speed + s * (acceleration + (s * jerk) / 2))
    this.acceleration = this.direction * (acceleration + s * jerk)
  }

  private seek(time: number): void {
    let i = this.index
    while (i > 0 && time < this.phases[i]!.start) i--
    while (i < this.phases.length - 1 && time >= this.phases[i + 1]!.start) i++
    this.index = i
    this.phase = this.phases[i]!
    this.phaseEnd = this.phases[i + 1]?.start ?? Infinity
  }
}
