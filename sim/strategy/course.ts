import { Profile, type ProfileOptions } from '../control/profile.ts'

/** Where and when a strategy sets out: travel of the motor side [m] and time [s]. */
export interface Start {
  travel: number
  time: number
}

/** Jaws open, nothing has begun. */
export const AT_REST: Start = { travel: 0, time: 0 }

/** From where it is to `end` [m], within limits; `creepFrom` is a travel, too. */
export interface Way extends Omit<ProfileOptions, 'distance'> {
  end: number
}

/** A jerk-limited way of the jaws from a start to an end, asked at rising times. */
export class Course {
  readonly way: Way
  private profile: Profile
  private from: number
  private begun: number
  private now: number

  constructor(way: Way, start: Start) {
    this.way = way
    this.from = start.travel
    this.begun = start.time
    this.now = start.time
    this.profile = this.fromHere()
  }

  /** From its start to its end [s]. */
  get duration() {
    return this.profile.duration
  }

  get position() {
    return this.from + this.profile.position
  }

  get speed() {
    return this.profile.speed
  }

  get acceleration() {
    return this.profile.acceleration
  }

  at(time: number): void {
    this.now = time
    this.profile.at(time - this.begun)
  }

  /** Goes on with another course; where its way was a different one, sets out anew, at rest, from where that one is. */
  take(previous: Course): void {
    const same = alike(this.way, previous.way)
    this.from = same ? previous.from : previous.position
    this.begun = same ? previous.begun : previous.now
    this.profile = this.fromHere()
    this.at(previous.now)
  }

  private fromHere(): Profile {
    const { end, creepFrom = Infinity, ...limits } = this.way
    return new Profile({ ...limits, distance: end - this.from, creepFrom: Math.max(0, creepFrom - this.from) })
  }
}

const KEYS = ['end', 'speed', 'acceleration', 'jerk', 'creepSpeed', 'creepFrom'] as const

const alike = (a: Way, b: Way) => KEYS.every((key) => a[key] === b[key])
