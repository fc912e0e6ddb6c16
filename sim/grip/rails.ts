/** Tells when a run has left its rails: numbers no longer finite, a jaw far outside, or a loop that bangs between its limits. */

/** So many changes from one limit to the other within the window mean a loop that does not settle; common practice, no source. */
export const FLIPS = 8
export const WINDOW = 0.1

class Banging {
  private side = 0
  private readonly times: number[] = []

  /** `saturated` −1, 0 or 1. Returns the time at which the banging began, or NaN. */
  see(saturated: number, time: number): number {
    if (saturated === 0 || saturated === this.side) return Number.NaN
    this.side = saturated
    this.times.push(time)
    if (this.times.length <= FLIPS) return Number.NaN
    const first = this.times.shift()!
    return time - first < WINDOW ? first : Number.NaN
  }
}

export class Rails {
  /** When the run left its rails [s], and how; NaN while it has not. */
  left = Number.NaN
  cause: 'numbers' | 'travel' | 'position loop' | 'current loop' | '' = ''
  private readonly reach: number
  private readonly servo = new Banging()
  private readonly bridge = new Banging()

  constructor(reach: number) {
    this.reach = reach
  }

  /** Once a current sample; true when the run must end. */
  check(time: number, travel: number, current: number, servo: number, bridge: number): boolean {
    if (!Number.isFinite(travel) || !Number.isFinite(current)) return this.leave(time, 'numbers')
    if (Math.abs(travel) > this.reach) return this.leave(time, 'travel')
    const position = this.servo.see(servo, time)
    if (!Number.isNaN(position)) return this.leave(position, 'position loop')
    const voltage = this.bridge.see(bridge, time)
    return !Number.isNaN(voltage) && this.leave(voltage, 'current loop')
  }

  private leave(time: number, cause: Rails['cause']): true {
    this.left = time
    this.cause = cause
    return true
  }
}
