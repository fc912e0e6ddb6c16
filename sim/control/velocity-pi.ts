import { LimitedPi } from './limited-pi.ts'

/** PI speed controller: gains in A·s/m and A/m, output and limit in A. */
export class VelocityPi extends LimitedPi {
  /** Speeds in m/s; returns the current wanted, A. */
  tick(target: f64, measured: f64): f64 {
    return this.output(target - measured, 0)
  }

  reset(): void {
    this.resetPi()
  }
}
