/**
 * One loop of the drive, tried in the time simulation. The axis stands in balance at a working point; the loop on trial takes over
 * without a bump, and its set point is stepped or its output disturbed. Plant, drive and control blocks are those of every run.
 */
import { axisFilled } from '../axis/fill.ts'
import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { deadBand } from '../control/dead-band.ts'
import { FilteredDerivative } from '../control/filters.ts'
import { ForcePid } from '../control/force-pid.ts'
import { PositionPid } from '../control/position-pid.ts'
import { VelocityPi } from '../control/velocity-pi.ts'
import { Bench } from '../cycle/bench.ts'
import { jobOf } from '../job/index.ts'
import { loadOf } from '../job/loads.ts'
import { loopsOf } from '../loops/jobs/index.ts'
import type { WorkBound } from '../loops/jobs/job.ts'
import type { LoopId } from '../loops/model.ts'
import { type WorkingPoint, workAt } from '../loops/working-point.ts'
import { modelOf } from '../model/model.ts'
import type { Scenario } from '../scenario/index.ts'
import { fillPosition } from '../strategy/follow.ts'
import { Machine } from '../strategy/machine.ts'
import { derivativeFilterOf } from '../strategy/sensed-force/filter.ts'
import { sensedForce } from '../strategy/sensed-force/index.ts'
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

/** A bound that the loop met: the linear one knows none of them. */
export type Bound = 'current' | 'voltage' | 'speed' | 'acceleration' | 'dead-band' | WorkBound

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

/** Gains of the loops on trial; those of the loop itself by the trial's factor. */
function gainsOf(scenario: Scenario, { loop, gain = 1 }: Trial) {
  const { servo, strategies } = scenario
  const { sensedForce } = strategies
  const by = (id: LoopId) => (id === loop ? gain : 1)
  const scaled = (id: LoopId, gains: { kp: number; ki: number; kd?: number }) => ({
    kp: gains.kp * by(id),
    ki: gains.ki * by(id),
    kd: (gains.kd ?? 0) * by(id),
  })
  return {
    position: scaled('position', servo),
    velocity: scaled('velocity', sensedForce.velocity),
    force: scaled('force', sensedForce),
  }
}

class LoopTrial extends Machine {
  readonly given: number[] = []
  readonly got: number[] = []
  readonly answer: number[] = []
  readonly bounds = new Set<Bound>()
  private readonly trial: Trial
  private readonly start: number
  private readonly balance: Balance
  private readonly position = new PositionPid()
  private readonly velocity = new VelocityPi()
  private readonly force = new ForcePid()
  private readonly speedometer = new FilteredDerivative()
  private readonly perForce: number
  private readonly band: number
  private readonly rise: number
  private readonly period: number
  /** A step motor's field stays where it pulls most, as in the linear loops. */
  private readonly ahead: number
  /** Speed of an output that follows a line beyond that of the line [m/s]. */
  private readonly drift: number
  private rest = Number.NaN
  private count = 0

  constructor(scenario: Scenario, trial: Trial, start: number, balance: Balance, drift: number) {
    super()
    const { servo, strategies, approach, actuator } = scenario
    const { rate, deadband, speedLimit } = strategies.sensedForce
    const period = 1 / servo.rate
    this.trial = trial
    this.start = start
    this.balance = balance
    this.period = period
    this.drift = drift
    this.ahead = isOpenLoop(scenario) ? axisOf(actuator).cyclePitch / 4 : 0
    const gains = gainsOf(scenario, trial)
    fillPosition(this.position, scenario)
    this.position.setPi(gains.position.kp, gains.position.ki, period)
    this.position.kd = gains.position.kd
    this.velocity.setPi(gains.velocity.kp, gains.velocity.ki, period)
    this.velocity.limit = servo.currentLimit
    this.force.setPi(gains.force.kp, gains.force.ki, 1 / rate)
    this.force.kd = gains.force.kd
    this.force.slope.set(derivativeFilterOf(scenario), 1 / rate)
    this.force.limit = speedLimit
    this.speedometer.set(servo.speedFilter, period)
    this.perForce = Math.round(servo.rate / rate)
    this.band = deadband
    this.rise = approach.acceleration * period * this.perForce
    this.state.target = balance.travel + this.ahead
  }

  begin(): void {}
  settle(): void {}

  measuredSpeed() {
    return this.speedometer.state.value
  }

  saturated() {
    return this.trial.loop === 'position' ? this.position.state.saturated : this.velocity.state.saturated
  }

  tick(time: number, position: number, force: number): number {
    const speed = this.speedometer.tick(position)
    this.state.target = position + this.ahead
    const since = time - this.start
    if (since < -0.5 * this.period) {
      this.position.tick(position, 0, 0, position)
      this.force.tick(force, force)
      return this.balance.command
    }
    if (Number.isNaN(this.rest)) this.handOver(position, force)
    const { loop, step, disturbance = () => 0 } = this.trial
    if (loop === 'current') return this.balance.command + (step ?? 0) + disturbance(since)
    if (loop === 'position') {
      const way = this.drift * this.count * this.period
      const wanted = this.rest + way + this.step(this.count++)
      return this.cut(this.position.tick(wanted, 0, 0, position), since, position - way)
    }
    if (loop === 'velocity')
      return this.cut(this.velocity.tick(this.rest + this.step(this.count++), speed), since, speed)
    if (this.count % this.perForce === 0) this.press(force, since)
    this.count++
    return this.velocity.tick(this.state.wantedSpeed, speed)
  }

  private step(sample: number): number {
    return sample > 0 ? (this.trial.step ?? 0) : 0
  }

  /** The force loop as the strategy runs it. */
  private press(force: number, since: number): void {
    const wanted = this.force.tick(this.rest + this.step(this.count), force)
    const given = Math.min(deadBand(wanted, this.band), Math.max(0, this.state.wantedSpeed) + this.rise)
    if (this.force.state.saturated !== 0) this.bounds.add('speed')
    if (wanted !== 0 && Math.abs(wanted) <= this.band) this.bounds.add('dead-band')
    else if (given < wanted) this.bounds.add('acceleration')
    this.state.wantedSpeed = this.cut(given, since, force)
  }

  private handOver(position: number, force: number): void {
    const { loop, point } = this.trial
    this.rest = { current: 0, position, velocity: this.drift, force: point.contact ? force : 0 }[loop]
    this.position.preset(this.balance.command)
    this.velocity.preset(this.balance.command)
    this.force.preset(this.drift)
    this.state.wantedSpeed = this.drift
  }

  private cut(given: number, since: number, measured: number): number {
    const { disturbance = () => 0 } = this.trial
    const got = given + disturbance(since)
    this.given.push(given)
    this.got.push(got)
    this.answer.push(measured - this.rest)
    if (this.saturated() !== 0) this.bounds.add('current')
    return got
  }
}

/** A bench whose strategy is the trial, in balance, with nothing that pulls on it. */
function trialBench(scenario: Scenario, trial: Trial, rest: number) {
  const { point } = trial
  const job = jobOf(scenario)
  const work = workAt(scenario, point)
  const load = loadOf(job.load)
  const balance = balanceAt(scenario, point, axisFilled(scenario.actuator, job.outputOf(work)))
  const line = loopsOf(scenario).lineSpeed?.(work, point) ?? 0
  const machine = new LoopTrial(scenario, trial, rest, balance, point.speed - line)
  const kind = { ...sensedForce, fill: () => {} }
  const still = { ...work, arm: { ...work.arm, gravity: 'none' as const, moves: [], lift: null } }
  const { bench } = modelOf(still, kind, { make: () => new Bench(load, machine) })
  // What the drive adds for the line by itself is no business of the loops.
  balance.command -= bench.drive.follower.losses * line
  bench.powerLoss = Number.POSITIVE_INFINITY
  bench.release = Number.POSITIVE_INFINITY
  bench.untilBanging = 0
  bench.settle()
  loopsOf(scenario).setDown(load, work, point, bench.drive.follower)
  setDown(bench.axis, point, balance)
  bench.drive.rest(balance.command, balance.voltage)
  bench.drive.currentLoop.state.integral -= bench.drive.currentLoop.backEmf * line
  return { bench, load, machine, balance }
}

/** Runs a trial. Throws a RangeError where it would take more steps than a run may. */
export function tryLoop(scenario: Scenario, trial: Trial): Tried {
  const { servo, sensors, strategies } = scenario
  const period = 1 / scenario.drive.currentRate
  const frame = 1 / strategies.sensedForce.rate
  const rest = frame * Math.ceil(Math.max(SHORTEST_REST, GAUGE_REST / sensors.gauge.bandwidth) / frame)
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
  const { bench, load, machine, balance } = trialBench(tried, trial, rest)
  const { bounds } = machine
  const { met } = loopsOf(scenario)
  const current: number[] = []
  for (let k = 0; k < samples; k++) {
    if (k >= first) current.push(bench.axis.current() - balance.current)
    if (!bench.advance(1)) break
    if (k < first) continue
    if (bench.drive.bridgeSaturated() !== 0) bounds.add('voltage')
    for (const bound of met(load, trial.point)) bounds.add(bound)
  }
  if (trial.loop === 'current') return { period, given: current, got: current, answer: current, bounds }
  const [given, got, answer] = [machine.given, machine.got, machine.answer].map((column) => column.slice(skipped))
  return { period: own, given: given!, got: got!, answer: answer!, bounds }
}
