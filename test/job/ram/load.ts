/** A ram that runs against a spring with a damper beside it, as the axis sees it. */
import type { Arm } from '../../../sim/axis/arm.ts'
import { Load } from '../../../sim/axis/load.ts'
import { State } from '../../../sim/core/block.ts'

class RamState extends State {
  force: f64 = 0
  /** In the period just past, and in the whole run. */
  highest: f64 = 0
  peak: f64 = 0
  touch: f64 = NaN
}

export class RamLoad extends Load {
  /** Where the spring begins [m], its stiffness [N/m] and damping [N·s/m]. */
  gap: f64 = 0
  stiffness: f64 = 0
  damping: f64 = 0
  readonly state: RamState = new RamState()

  fastest(mass: f64, _force: f64): f64 {
    return Math.max(Math.sqrt(this.stiffness / mass), this.damping / mass)
  }
  setStep(): void {}
  pull(arm: Arm): f64 {
    return arm.state.along
  }
  begin(): void {
    this.state.highest = 0
  }
  press(travel: f64, speed: f64): f64 {
    const squeeze = travel - this.gap
    this.state.force = squeeze > 0 ? Math.max(0, this.stiffness * squeeze + this.damping * speed) : 0
    return this.state.force
  }
  follow(_travel: f64, _speed: f64, time: f64): void {
    const s = this.state
    if (s.force > 0 && Number.isNaN(s.touch)) s.touch = time
    s.highest = Math.max(s.highest, s.force)
    s.peak = Math.max(s.peak, s.force)
  }
  end(): void {}
  effort(): f64 {
    return this.state.force
  }
  most(): f64 {
    return this.state.highest
  }
  felt(): f64 {
    return this.state.force
  }
  touched(): f64 {
    return this.state.touch
  }
  release(): void {}
  isLost(): bool {
    return false
  }
  observe(): void {}
  channels(): i32 {
    return 1
  }
  show(now: Float64Array, from: i32): void {
    now[from] = this.state.force
  }
  settle(): void {}
}
