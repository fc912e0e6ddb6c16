/** Seeded noise from integer operations alone: mulberry32, four uniform draws summed to a near-normal one of unit rms. */
export class Noise {
  private state: number

  constructor(seed: number) {
    this.state = seed >>> 0
  }

  /** Goes on in another one's sequence. */
  take(previous: Noise): void {
    this.state = previous.state
  }

  /** Uniform in [0, 1). */
  uniform(): number {
    this.state = (this.state + 0x6d2b79f5) | 0
    let t = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }

  /** Mean 0, rms 1, bounded at ±√12. */
  normal(): number {
    return (this.uniform() + this.uniform() + this.uniform() + this.uniform() - 2) * 1.7320508075688772
  }
}
