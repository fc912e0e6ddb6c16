import { LimitedPi } from './limited-pi.ts'

/** PI speed controller: gains in A·s/m and A/m, output and limit in A. */
export class VelocityPi extends LimitedPi {
  /** Speeds in m/s; returns the current wanted, A. */
  tick(target: number, measured: number): number {
    return this.output(target - measured, 0)
  }
}
