import type { Arm } from '../axis/arm.ts'
import type { Axis } from '../axis/axis.ts'
import { Load } from '../axis/load.ts'
import { strides } from '../axis/strides.ts'
import type { Numbers } from '../core/native.ts'

/** Nothing: the output moves in free air, and feels the arm that carries it along its way. */
export class FreeLoad extends Load {
  /** The arm's pull does not cancel between two driven jaws. */
  pulled: f64 = 0

  fastest(_outputMass: f64, _force: f64): f64 {
    return 0
  }
  setStep(_step: f64): void {}
  pull(arm: Arm): f64 {
    return this.pulled > 0 ? arm.state.along : 0
  }
  begin(_time: f64, _arm: Arm, _opening: bool): void {}
  stride(axis: Axis, time: f64, voltage: f64, connected: bool, pull: f64, target: f64): void {
    strides(axis, this, time, voltage, connected, pull, target)
  }

  press(_travel: f64, _speed: f64): f64 {
    return 0
  }
  follow(_travel: f64, _speed: f64, _time: f64): void {}
  end(_time: f64, _opening: bool): void {}
  effort(): f64 {
    return 0
  }
  felt(): f64 {
    return 0
  }
  most(): f64 {
    return 0
  }
  touched(): f64 {
    return NaN
  }
  release(): void {}
  isLost(): bool {
    return false
  }
  observe(_time: f64, _arm: Arm, _yields: bool): void {}
  channels(): i32 {
    return 0
  }
  show(_now: Numbers, _from: i32): void {}
  settle(): void {}
}
