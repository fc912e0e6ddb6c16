/** The drive: encoder and gauge, the strategy at the servo rate, the current loop with one sample of delay. */
import type { Arm } from '../axis/arm.ts'
import type { Axis } from '../axis/axis.ts'
import type { Load } from '../axis/load.ts'
import { CurrentLoop } from '../control/current-loop.ts'
import { Gauge } from '../control/gauge.ts'
import { LineFollower } from '../control/line-follower.ts'
import { Block, State } from '../core/block.ts'
import { Noise } from '../core/noise.ts'
import { quantise } from '../core/quantise.ts'
import type { Machine } from '../strategy/machine.ts'
import { Move } from '../strategy/move.ts'

class DriveState extends State {
  /** Current wanted [A], voltage at the winding during the present period and the next [V], gauge reading [N]. */
  command: f64 = 0
  voltage: f64 = 0
  nextVoltage: f64 = 0
  reading: f64 = 0
  powered: f64 = 1
  /** A move is under way, or has ended, in place of the strategy; it opens the jaws on purpose. */
  moving: f64 = 0
  opening: f64 = 0
  /** Samples of the current loop until the servo's next one. */
  due: f64 = 0
  /** What the servo has made of its last sample: the speed that it measures [m/s], and whether it stands at its limit: −1, 0 or 1. */
  speed: f64 = 0
  saturated: f64 = 0
}

export class Drive extends Block {
  /** Period of the current loop [s] and samples a second, its samples for each of the servo. */
  period: f64 = 5e-5
  rate: f64 = 2e4
  perServo: f64 = 1
  /** The strategy works with the gauge. */
  sensed: f64 = 0
  /** Of the encoder [m]; offset, rms noise and resolution of the current measurement [A]. */
  encoderResolution: f64 = 0
  encoderOffset: f64 = 0
  currentOffset: f64 = 0
  currentNoise: f64 = 0
  currentResolution: f64 = 0
  readonly gauge: Gauge = new Gauge()
  readonly noise: Noise = new Noise()
  readonly currentLoop: CurrentLoop = new CurrentLoop()
  /** Where the axis follows a line the machine works in travels ahead of it. */
  readonly follower: LineFollower = new LineFollower()
  readonly move: Move = new Move()
  readonly strategy: Machine
  readonly state: DriveState = new DriveState()

  constructor(strategy: Machine) {
    super()
    this.strategy = strategy
  }

  /** What gives the command at present: the strategy, or a move. */
  machine(): Machine {
    return this.state.moving > 0 ? this.move : this.strategy
  }

  bridgeSaturated(): f64 {
    return this.state.powered > 0 ? this.currentLoop.state.saturated : 0
  }

  servoSaturated(): f64 {
    return this.state.powered > 0 ? this.state.saturated : 0
  }

  /** Keeps no place: it presses with its limit, or has no power. */
  yields(): bool {
    return this.state.powered === 0 || this.state.saturated !== 0
  }

  /** Starts as if it had given this command [A] for long, at this voltage [V]. */
  rest(command: f64, voltage: f64): void {
    this.state.command = command
    this.state.nextVoltage = voltage
    this.currentLoop.state.integral = voltage
  }

  /** Closes the jaws, or whatever the strategy does, from `travel` [m] at `time` [s]. */
  begin(travel: f64, time: f64): void {
    this.state.moving = 0
    this.state.opening = 0
    this.strategy.begin(this.ahead(travel), time)
    this.see()
  }

  /** What the encoder makes of a travel [m], but for its steps. */
  private read(travel: f64): f64 {
    return this.encoderOffset === 0 ? travel : travel + this.encoderOffset
  }

  /** Where the machine wants the output to be [m]: it knows the encoder's zero only. */
  target(): f64 {
    let target: f64 = this.machine().state.target
    if (this.follows()) target += this.follower.state.angle
    return this.encoderOffset === 0 ? target : target - this.encoderOffset
  }

  /** Speed at which the machine wants the output [m/s]. */
  wantedSpeed(): f64 {
    const speed: f64 = this.machine().state.wantedSpeed
    return this.follows() ? speed + this.follower.state.speed : speed
  }

  private follows(): bool {
    return this.follower.on > 0
  }

  /** A travel as a machine counts it. */
  private ahead(travel: f64): f64 {
    return this.follows() ? this.read(travel) - this.follower.state.angle : this.read(travel)
  }

  /** Goes back to where the output is at travel 0, on purpose, from now on. */
  open(travel: f64, time: f64): void {
    this.state.opening = 1
    this.moveTo(this.read(0), travel, time)
  }

  /** Takes the output to another travel [m], on purpose, from now on. */
  back(to: f64, travel: f64, time: f64): void {
    this.state.opening = 1
    this.moveTo(this.ahead(to), travel, time)
  }

  /** Keeps the output where it stands. */
  hold(travel: f64, time: f64): void {
    this.state.opening = 0
    this.moveTo(this.ahead(travel), travel, time)
  }

  private moveTo(end: f64, travel: f64, time: f64): void {
    this.state.moving = 1
    this.move.to.end = end
    this.move.begin(this.ahead(travel), time)
    this.see()
  }

  private see(): void {
    const machine = this.machine()
    const speed: f64 = machine.measuredSpeed()
    this.state.speed = this.follows() ? speed + this.follower.state.speed : speed
    this.state.saturated = machine.saturated()
  }

  cut(): void {
    const s = this.state
    s.powered = 0
    s.command = 0
    s.voltage = 0
    s.nextVoltage = 0
  }

  /** Power is back: the output is kept where it stands, and nothing moves by itself. */
  restore(travel: f64, time: f64): void {
    this.state.powered = 1
    this.currentLoop.reset()
    if (this.follows()) this.follower.resume(time)
    this.hold(travel, time)
  }

  /** A sample of the current loop at `time` [s]: sets the voltage of the coming period. */
  sample(time: f64, axis: Axis): void {
    const s = this.state
    const measured: f64 = s.powered > 0 ? this.measured(axis) : 0
    if (s.due <= 0) {
      s.due = this.perServo
      this.serve(time, axis)
    }
    s.due -= 1
    if (s.powered === 0) return
    s.voltage = s.nextVoltage
    s.nextVoltage = this.currentLoop.tick(s.command, measured, s.speed)
  }

  /** The motor current as it is measured [A]. */
  private measured(axis: Axis): f64 {
    const current: f64 = axis.current() + this.currentOffset
    const noisy: f64 = this.currentNoise > 0 ? current + this.currentNoise * this.noise.normal() : current
    return quantise(noisy, this.currentResolution)
  }

  /** A sample of the servo. */
  private serve(time: f64, axis: Axis): void {
    const s = this.state
    axis.warm(this.perServo * this.period)
    if (this.sensed > 0) s.reading = this.gauge.read(time)
    if (s.powered === 0) return
    const position: f64 = quantise(this.read(axis.state.motorTravel), this.encoderResolution)
    if (this.follows()) {
      const ahead: f64 = this.follower.seen(time, position, this.machine().state.target)
      s.command = this.follower.carried(this.machine().tick(time, ahead, s.reading))
    } else s.command = this.machine().tick(time, position, s.reading)
    this.see()
  }

  /** What the gauge felt in the period just past; `speedBefore` [m/s] is the output's speed at its start. */
  feel(axis: Axis, load: Load, arm: Arm, speedBefore: f64): void {
    if (this.sensed > 0) this.gauge.feel(load.felt(), (axis.state.speed - speedBefore) * this.rate - arm.state.along)
  }

  settle(): void {
    this.move.settle()
    this.strategy.settle()
    this.see()
    if (this.state.due > this.perServo) this.state.due = this.perServo
  }
}
