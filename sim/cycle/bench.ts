/**
 * The one schedule of arm, events, drive, axis and job, a period of the current loop at a time. Whoever runs a cycle builds a bench,
 * fills in its constants, begins, and advances it; `record` and `figures` look on where somebody asked for them.
 */
import { Arm } from '../axis/arm.ts'
import { Axis } from '../axis/axis.ts'
import type { Load } from '../axis/load.ts'
import { Block, State } from '../core/block.ts'
import { type Numbers, put } from '../core/native.ts'
import type { Machine } from '../strategy/machine.ts'
import { Drive } from './drive.ts'
import { Figures } from './figures.ts'
import { Rails } from './rails.ts'
import { Recorder } from './recorder.ts'
import { Samples } from './samples.ts'
import { Sliding } from './sliding.ts'

class BenchState extends State {
  /** Samples of the current loop since `origin` [s]. */
  count: f64 = 0
  origin: f64 = 0
  /** When the strategy had halted its move or taken over as the output was sent back [s]. */
  engaged: f64 = NaN
  released: f64 = 0
  ended: f64 = 0
}

/** Channels of the axis and its drive, behind time and those of the job. */
export const AXIS_CHANNELS: i32 = 10

export class Bench extends Block {
  /** [s] */
  period: f64 = 5e-5
  /** When the power goes and when the output is sent back [s]; Infinity: never. Windings shorted while there is no power. */
  powerLoss: f64 = Infinity
  release: f64 = Infinity
  shorted: f64 = 0
  /** Who looks on: 1 or 0. A run ends when it can no longer be good, and when a loop bangs between its limits. */
  recording: f64 = 0
  figuring: f64 = 0
  sliding: f64 = 0
  sampling: f64 = 0
  untilLost: f64 = 0
  untilBanging: f64 = 1
  readonly arm: Arm = new Arm()
  readonly axis: Axis = new Axis()
  readonly load: Load
  readonly drive: Drive
  readonly rails: Rails = new Rails()
  readonly record: Recorder = new Recorder()
  readonly figures: Figures = new Figures()
  readonly latest: Sliding = new Sliding()
  readonly samples: Samples = new Samples()
  readonly state: BenchState = new BenchState()

  constructor(load: Load, strategy: Machine) {
    super()
    this.load = load
    this.drive = new Drive(strategy)
  }

  time(): f64 {
    return this.state.origin + this.state.count * this.period
  }

  /** Ready for a run of so many samples, from rest, with the strategy at its start. */
  begin(samples: f64): void {
    this.settle()
    this.drive.begin(0, 0)
    this.prepare(samples)
  }

  /** Goes on from the state that it was given, with room for so many buckets of so many samples in its record. */
  resume(size: f64, buckets: f64): void {
    this.settle()
    const fresh: bool = this.record.bucket.width === 0
    this.record.prepareRoom(this.channels(), size, buckets)
    if (fresh) this.show(this.record.bucket.now, 0, this.time(), this.drive.target())
  }

  /** Room for what looks on. */
  private prepare(samples: f64): void {
    if (this.recording > 0) this.record.prepare(this.channels(), samples)
    if (this.figuring > 0) this.figures.prepare(samples)
  }

  private channels(): i32 {
    return 1 + this.load.channels() + AXIS_CHANNELS
  }

  /** After a change of constants or of state from outside. */
  settle(): void {
    this.arm.settle()
    this.axis.settle()
    this.load.settle()
    this.drive.settle()
  }

  /** So many periods of the current loop; false once the run has ended before its time. */
  advance(periods: i32): bool {
    let going: bool = true
    for (let n: i32 = 0; n < periods && going; n++) going = this.sample()
    this.record.bucket.latest()
    return going
  }

  /** At the end of a run: closes record and figures. */
  finish(): void {
    if (this.state.released === 0) this.state.engaged = this.drive.strategy.state.engaged
    if (this.recording > 0) {
      this.record.finish()
      this.record.fingerprint()
    }
    if (this.figuring > 0) this.figures.finish(this.load)
  }

  private sample(): bool {
    const s = this.state
    const axis = this.axis
    const load = this.load
    const drive = this.drive
    const arm = this.arm
    if (s.ended > 0) return false
    const time: f64 = this.time()
    arm.at(time)
    this.happen(time)
    load.begin(time, arm, drive.state.opening > 0)
    const carried: f64 = load.carries()
    if (carried > 0) axis.carry(carried)
    drive.sample(time, axis)
    if (this.sampling > 0) this.samples.sample(time, axis, load, drive.state.command, drive.state.voltage)
    const target: f64 = drive.target()
    const speedBefore: f64 = axis.state.speed
    const connected: bool = drive.state.powered > 0 || this.shorted > 0
    axis.advance(load, time, drive.state.voltage, connected, load.pull(arm), target)
    drive.feel(axis, load, arm, speedBefore)
    load.end(time, drive.state.opening > 0)
    s.count += 1
    if (this.figuring > 0) this.figures.sample(time, axis, load, arm, target, drive.yields(), drive.state.voltage)
    if (this.sliding > 0) this.latest.sample(axis, load)
    if (this.recording > 0) {
      const bucket = this.record.bucket
      this.show(bucket.kept, bucket.place(), time, target)
      this.record.sample(load.touched() >= 0)
    }
    if (this.ends(time)) s.ended = 1
    return s.ended === 0
  }

  /** Events of the run. */
  private happen(time: f64): void {
    const drive = this.drive
    if (drive.state.powered > 0 && time >= this.powerLoss) drive.cut()
    if (drive.state.powered > 0 && drive.state.opening === 0 && time >= this.release) {
      this.state.engaged = drive.strategy.state.engaged
      this.state.released = 1
      this.load.release()
      drive.open(this.axis.state.motorTravel, time)
    }
  }

  private ends(time: f64): bool {
    if (this.untilLost > 0 && this.load.isLost()) return true
    if (this.rails.outside(time, this.axis.state.travel, this.axis.current())) return true
    return this.untilBanging > 0 && this.rails.bangs(time, this.drive.servoSaturated(), this.drive.bridgeSaturated())
  }

  /** Puts time, the channels of the job and those of axis and drive into an array from a place on. */
  show(to: Numbers, at: i32, time: f64, target: f64): void {
    const axis = this.axis.state
    const drive = this.drive.state
    put(to, at, time)
    this.load.show(to, at + 1)
    const from: i32 = at + 1 + this.load.channels()
    put(to, from, this.axis.current())
    put(to, from + 1, drive.command)
    put(to, from + 2, drive.voltage)
    put(to, from + 3, axis.travel)
    put(to, from + 4, target)
    put(to, from + 5, axis.motorTravel)
    put(to, from + 6, axis.speed)
    put(to, from + 7, this.axis.heat.state.winding)
    put(to, from + 8, drive.reading)
    put(to, from + 9, this.drive.wantedSpeed())
  }
}
