/**
 * One loop of the drive, tried in the time simulation. The axis stands in balance at a working point; the loop on trial takes over
 * without a bump, and its set point is stepped or its output disturbed. Plant, drive and control blocks are those of every run.
 */
import { deadBand } from '../control/dead-band.ts'
import { FilteredDerivative } from '../control/filters.ts'
import { ForcePid } from '../control/force-pid.ts'
import { PositionPid } from '../control/position-pid.ts'
import { VelocityPi } from '../control/velocity-pi.ts'
import { Drive } from '../grip/drive.ts'
import { substepsOf } from '../grip/step.ts'
import type { LoopId } from '../loops/model.ts'
import type { WorkingPoint } from '../loops/working-point.ts'
import { axisOf } from '../plant/axis.ts'
import { isOpenLoop } from '../plant/commutation.ts'
import { Plant } from '../plant/plant.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Measured, Strategy } from '../strategy/strategy.ts'
import { type Balance, balanceAt, setDown } from './balance.ts'

export interface Trial {
  loop: LoopId
  point: WorkingPoint
  /** From the step on [s]. */
  duration: number
  /** Factor on all gains of the loop; 1 if left out. */
  gain?: number
  /** Step of the set point [A, m, m/s, N], one sample of the loop after the hand-over, which would take it for a bump. */
  step?: number
  /** What is added to the controller's output (to the set point of the current loop), by time since the hand-over [s]. */
  disturbance?: (time: number) => number
}

/** A bound that the loop met: the linear one knows none of them. `contact`: a jaw lifts off; `part`: it breaks or dents. */
export type Bound = 'current' | 'voltage' | 'speed' | 'acceleration' | 'dead-band' | 'contact' | 'part'

export interface Tried {
  /**
   * Sample period of the columns [s], whose first sample is that of the step: what the controller gave, what went on from there,
   * and what the loop controls, as it measures it (the current: as it is), less its value at the hand-over.
   */
  period: number
  given: number[]
  got: number[]
  answer: number[]
  bounds: Set<Bound>
}

/** Shortest time in balance before the hand-over [s], and as a multiple of the gauge's time constant, which it takes to read right. */
const SHORTEST_REST = 0.005
const GAUGE_REST = 12

class LoopTrial implements Strategy {
  wantedSpeed = 0
  readonly engaged = Number.NaN
  readonly given: number[] = []
  readonly got: number[] = []
  readonly answer: number[] = []
  readonly bounds = new Set<Bound>()
  private readonly trial: Trial
  private readonly start: number
  private readonly balance: Balance
  private readonly position: PositionPid
  private readonly velocity: VelocityPi
  private readonly force: ForcePid
  private readonly speedometer: FilteredDerivative
  private readonly perForce: number
  private readonly band: number
  private readonly rise: number
  private readonly period: number
  private readonly ahead: number
  private seen: number
  private rest = Number.NaN
  private count = 0

  constructor(scenario: Scenario, trial: Trial, start: number, balance: Balance) {
    const { servo, strategies, approach, actuator } = scenario
    const { kp, ki, kd, rate, velocity, sensor, deadband, speedLimit } = strategies.sensedForce
    const period = 1 / servo.rate
    const by = (loop: LoopId) => (loop === trial.loop ? (trial.gain ?? 1) : 1)
    const scaled = <G extends object>(gains: G, factor: number) =>
      Object.fromEntries(Object.entries(gains).map(([name, value]) => [name, value * factor])) as G
    this.trial = trial
    this.start = start
    this.balance = balance
    this.period = period
    this.seen = balance.travel
    this.ahead = isOpenLoop(scenario) ? axisOf(actuator).cyclePitch / 4 : 0
    const limit = servo.currentLimit
    const gains = { kp: servo.kp, ki: servo.ki, kd: servo.kd }
    this.position = new PositionPid({ ...servo, ...scaled(gains, by('position')), period, limit })
    this.velocity = new VelocityPi({ ...scaled(velocity, by('velocity')), period, limit })
    this.force = new ForcePid({
      ...scaled({ kp, ki, kd }, by('force')),
      derivativeFilter: 1 / sensor.bandwidth,
      period: 1 / rate,
      limit: speedLimit,
    })
    this.speedometer = new FilteredDerivative({ timeConstant: servo.speedFilter, period })
    this.perForce = Math.round(servo.rate / rate)
    this.band = deadband
    this.rise = approach.acceleration * period * this.perForce
  }

  /** A step motor's field stays where it pulls most, as in the linear loops. */
  get target() {
    return this.seen + this.ahead
  }

  get measuredSpeed() {
    return this.speedometer.value
  }

  get saturated() {
    return this.trial.loop === 'position' ? this.position.saturated : this.velocity.saturated
  }

  tick({ time, position, force }: Measured): number {
    const speed = this.speedometer.tick(position)
    this.seen = position
    const since = time - this.start
    if (since < -0.5 * this.period) {
      this.position.tick(position, 0, 0, position)
      this.force.tick(force, force)
      return this.balance.command
    }
    if (Number.isNaN(this.rest)) this.handOver(position, force)
    const { loop, step, disturbance = () => 0 } = this.trial
    if (loop === 'current') return this.balance.command + (step ?? 0) + disturbance(since)
    if (loop === 'position')
      return this.cut(this.position.tick(this.rest + this.step(this.count++), 0, 0, position), since, position)
    if (loop === 'velocity') return this.cut(this.velocity.tick(this.step(this.count++), speed), since, speed)
    if (this.count % this.perForce === 0) this.press(force, since)
    this.count++
    return this.velocity.tick(this.wantedSpeed, speed)
  }

  private step(sample: number): number {
    return sample > 0 ? (this.trial.step ?? 0) : 0
  }

  /** The force loop as the strategy runs it. */
  private press(force: number, since: number): void {
    const wanted = this.force.tick(this.rest + this.step(this.count), force)
    const given = Math.min(deadBand(wanted, this.band), Math.max(0, this.wantedSpeed) + this.rise)
    if (this.force.saturated !== 0) this.bounds.add('speed')
    if (wanted !== 0 && Math.abs(wanted) <= this.band) this.bounds.add('dead-band')
    else if (given < wanted) this.bounds.add('acceleration')
    this.wantedSpeed = this.cut(given, since, force)
  }

  private handOver(position: number, force: number): void {
    const { loop, point } = this.trial
    this.rest = { current: 0, position, velocity: 0, force: point.contact ? force : 0 }[loop]
    this.position.preset(this.balance.command)
    this.velocity.preset(this.balance.command)
    this.force.preset(0)
  }

  private cut(given: number, since: number, measured: number): number {
    const { disturbance = () => 0 } = this.trial
    const got = given + disturbance(since)
    this.given.push(given)
    this.got.push(got)
    this.answer.push(measured - this.rest)
    if (this.saturated !== 0) this.bounds.add('current')
    return got
  }
}

/**
 * Runs a trial. `scenario` carries the part of the working point (`partAt`). Throws a RangeError where it would take more steps
 * than a run may.
 */
export function tryLoop(scenario: Scenario, trial: Trial): Tried {
  const { servo, strategies } = scenario
  const period = 1 / scenario.drive.currentRate
  const frame = 1 / strategies.sensedForce.rate
  const rest = frame * Math.ceil(Math.max(SHORTEST_REST, GAUGE_REST / strategies.sensedForce.sensor.bandwidth) / frame)
  const own = { current: period, position: 1 / servo.rate, velocity: 1 / servo.rate, force: frame }[trial.loop]
  const first = Math.round(rest / period)
  const skipped = trial.loop === 'current' ? 0 : 1
  const samples = first + Math.round((trial.duration + skipped * own) / period)
  const bandwidth = scenario.drive.currentBandwidth * (trial.loop === 'current' ? (trial.gain ?? 1) : 1)
  const tried: Scenario = {
    ...scenario,
    drive: { ...scenario.drive, currentBandwidth: bandwidth },
    run: { ...scenario.run, duration: samples * period },
  }
  const plant = new Plant(tried, period, substepsOf(tried))
  const balance = balanceAt(tried, trial.point, plant.heat)
  setDown(plant, trial.point, balance)
  const strategy = new LoopTrial(tried, trial, rest, balance)
  const drive = new Drive(tried, { sensed: true, create: () => strategy })
  drive.settle(balance.command, balance.voltage)
  const current: number[] = []
  for (let k = 0; k < samples; k++) {
    if (k >= first) current.push(plant.winding.current - balance.current)
    drive.sample(k, k * period, plant)
    const before = plant.jawV
    plant.advance(k * period, drive.voltage, true, strategy.target)
    drive.feel(plant, before)
    if (k < first) continue
    if (drive.bridgeSaturated !== 0) strategy.bounds.add('voltage')
    if (trial.point.contact && (plant.nearForce === 0 || plant.farForce === 0)) strategy.bounds.add('contact')
    if (plant.near.dent > 0 || plant.far.dent > 0 || plant.crackTime > 0) strategy.bounds.add('part')
  }
  if (trial.loop === 'current')
    return { period, given: current, got: current, answer: current, bounds: strategy.bounds }
  const [given, got, answer] = [strategy.given, strategy.got, strategy.answer].map((column) => column.slice(skipped))
  return { period: own, given: given!, got: got!, answer: answer!, bounds: strategy.bounds }
}
