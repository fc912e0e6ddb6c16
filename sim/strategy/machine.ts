import { Block, State } from '../core/block.ts'

class MachineState extends State {
  /** Where the profile is [m], and the speed that the drive wants at the moment [m/s]. */
  target: f64 = 0
  wantedSpeed: f64 = 0
  /** When the strategy halted its move or took over [s]; NaN before. */
  engaged: f64 = NaN
}

/** A strategy as it runs in the drive: a small state machine that the servo asks for a current at each of its samples. */
export abstract class Machine extends Block {
  readonly state: MachineState = new MachineState()

  /** Sets out from `travel` [m] at `time` [s], as if nothing had been before. */
  abstract begin(travel: f64, time: f64): void
  /**
   * Once a servo period: time [s], encoder reading [m] and gauge reading [N] (0 for a strategy without a gauge). Returns the current
   * command [A].
   */
  abstract tick(time: f64, position: f64, force: f64): f64
  /** Whether the command stands at its limit: −1, 0 or 1. */
  abstract saturated(): f64
  /** Speed as the drive measures it [m/s]. */
  abstract measuredSpeed(): f64
  /** After a change of constants or of state from outside. */
  abstract settle(): void
}
