import { Block } from '../core/block.ts'
import type { Numbers } from '../core/native.ts'
import type { Arm } from './arm.ts'
import type { Axis } from './axis.ts'

/**
 * What an axis works on, as the cycle sees it: the wall between axis and job. One period of the current loop is `begin`, then
 * `press` and `follow` at each step of the axis, then `end`.
 */
export abstract class Load extends Block {
  /** Fastest rate of what it works on [rad/s], with an output of so much mass [kg] and forces up to `force` [N]. */
  abstract fastest(outputMass: f64, force: f64): f64
  abstract setStep(step: f64): void
  /** Pull of the arm on the axis itself [m/s²], closing positive. */
  abstract pull(arm: Arm): f64
  /** Mass of the output with all that it carries by now, where that changes; 0: as it was filled in. */
  carries(): f64 {
    return 0
  }
  /** A period begins at `time` [s]: events of the job, and what pulls on it. */
  abstract begin(time: f64, arm: Arm, opening: bool): void
  /** The steps of the axis in a period, against this very load: `strides(axis, this, …)`. */
  abstract stride(axis: Axis, time: f64, voltage: f64, connected: bool, pull: f64, target: f64): void
  /** Force against the output [N] at its travel [m] and speed [m/s]; called once a step. */
  abstract press(travel: f64, speed: f64): f64
  /** The output has moved there at `time` [s]: what the axis works on follows. */
  abstract follow(travel: f64, speed: f64, time: f64): void
  /** The period is over: what has become of the job. */
  abstract end(time: f64, opening: bool): void
  /** What the axis presses with, as figures take it, and as the gauge feels it [N]. */
  abstract effort(): f64
  abstract felt(): f64
  /** Highest force in the period just past [N]. */
  abstract most(): f64
  /** First touch [s]; NaN: not yet. */
  abstract touched(): f64
  /** The output moves back on purpose: the work is set down first. */
  abstract release(): void
  /** Nothing that still comes can make it good. */
  abstract isLost(): bool
  /** Takes in what its figures need, once a period, after its end; the axis `yields` where only its force is given, not its place. */
  abstract observe(time: f64, arm: Arm, yields: bool): void
  /** Writes its channels from `from` on, as many as `channels` says. */
  abstract channels(): i32
  abstract show(now: Numbers, from: i32): void
  /** After a change of constants or of state from outside. */
  abstract settle(): void
}
