/**
 * A strategy for the time simulation that measures its own loop: it carries the jaw to a working point, hands over to the loop on
 * trial without a bump, and adds a disturbance where that loop is cut. The control blocks are the drive's own.
 */
import { FilteredDerivative } from '../../sim/control/filters.ts'
import { ForcePid } from '../../sim/control/force-pid.ts'
import { PositionPid } from '../../sim/control/position-pid.ts'
import { Profile } from '../../sim/control/profile.ts'
import { VelocityPi } from '../../sim/control/velocity-pi.ts'
import { runGrip } from '../../sim/grip/run.ts'
import { substepsOf } from '../../sim/grip/step.ts'
import type { Scenario, StrategyKind } from '../../sim/index.ts'
import type { LoopId } from '../../sim/loops/model.ts'
import type { WorkingPoint } from '../../sim/loops/working-point.ts'
import type { Measured, Strategy } from '../../sim/strategy/strategy.ts'
import { openLoop } from './support.ts'

export interface Trial {
  loop: Exclude<LoopId, 'current'>
  point: WorkingPoint
  /** Factor on all gains of the loop. */
  gain: number
  /** What is added to the controller's output at its samples, from the hand-over on: time since then [s] → A or m/s. */
  disturbance: (time: number) => number
  /** Step of the set point one sample after the hand-over, which would take it for a bump [m, m/s, N]; none if left out. */
  step?: number
}

/** When the loop on trial takes over [s]. */
export const HANDOVER = 0.5
const LIMIT = 1e3

/** One row a sample of the loop: what its controller gave, and what the plant got. */
export interface Samples {
  given: number[]
  got: number[]
  /** What the loop controls, as it measures it, less its value at the hand-over. */
  answer: number[]
}

class Rig implements Strategy {
  target = 0
  wantedSpeed = 0
  readonly engaged = Number.NaN
  readonly saturated = 0
  readonly samples: Samples = { given: [], got: [], answer: [] }
  private readonly trial: Trial
  private readonly approach: PositionPid
  private readonly position: PositionPid
  private readonly velocity: VelocityPi
  private readonly force: ForcePid
  private readonly speedometer: FilteredDerivative
  private readonly profile: Profile
  private readonly perForce: number
  private command = 0
  private goal = Number.NaN
  private rest = 0
  private count = 0

  constructor(scenario: Scenario, trial: Trial) {
    const { servo, strategies } = scenario
    const { kp, ki, kd, rate, velocity, sensor } = strategies.sensedForce
    const period = 1 / servo.rate
    const by = (loop: LoopId) => (loop === trial.loop ? trial.gain : 1)
    const scaled = (g: { kp: number; ki: number; kd: number }, factor: number) => ({
      kp: g.kp * factor,
      ki: g.ki * factor,
      kd: g.kd * factor,
    })
    const pid = { ...servo, period, limit: LIMIT, velocityFeedforward: 0, accelerationFeedforward: 0 }
    this.trial = trial
    this.approach = new PositionPid(pid)
    this.position = new PositionPid({ ...pid, ...scaled(servo, by('position')) })
    this.velocity = new VelocityPi({
      kp: velocity.kp * by('velocity'),
      ki: velocity.ki * by('velocity'),
      period,
      limit: LIMIT,
    })
    this.force = new ForcePid({
      ...scaled({ kp, ki, kd }, by('force')),
      derivativeFilter: 1 / sensor.bandwidth,
      period: 1 / rate,
      limit: LIMIT,
    })
    this.speedometer = new FilteredDerivative({ timeConstant: servo.speedFilter, period })
    this.profile = new Profile({ distance: travelAt(scenario, trial.point), speed: 0.02, acceleration: 1, jerk: 100 })
    this.perForce = Math.round(servo.rate / rate)
  }

  get measuredSpeed() {
    return this.speedometer.value
  }

  tick({ time, position, force }: Measured): number {
    const speed = this.speedometer.tick(position)
    const since = time - HANDOVER
    if (since < -1e-9) {
      this.profile.at(time)
      this.command = this.approach.tick(this.profile.position, this.profile.speed, 0, position)
      this.position.tick(this.profile.position, this.profile.speed, 0, position)
      this.force.tick(0, force)
      return this.command
    }
    if (Number.isNaN(this.goal)) this.handOver(position, force)
    const step = this.samples.given.length > 0 ? (this.trial.step ?? 0) : 0
    if (this.trial.loop === 'position') {
      return this.cut(this.position.tick(this.profile.position + step, 0, 0, position), since, position)
    }
    if (this.trial.loop === 'velocity') return this.cut(this.velocity.tick(step, speed), since, speed)
    if (this.count++ % this.perForce === 0)
      this.wantedSpeed = this.cut(this.force.tick(this.goal + step, force), since, force)
    return this.velocity.tick(this.wantedSpeed, speed)
  }

  private handOver(position: number, force: number): void {
    this.rest = { position, velocity: 0, force }[this.trial.loop]
    this.goal = this.trial.point.contact ? force : 0
    this.position.preset(this.command)
    this.velocity.preset(this.command)
    this.force.reset()
    this.force.preset(0)
  }

  private cut(given: number, since: number, measured: number): number {
    const got = given + this.trial.disturbance(since)
    this.samples.given.push(given)
    this.samples.got.push(got)
    this.samples.answer.push(measured - this.rest)
    return got
  }
}

/** Travel of the motor side at which the jaw is at the working point: the transmission gives way under the load [m]. */
function travelAt({ jaws, actuator }: Scenario, { force, travel }: WorkingPoint): number {
  return travel + ((jaws.layout === 'mirrored' ? 2 : 1) * force) / actuator.transmission.stiffness
}

export function measure(scenario: Scenario, trial: Trial): Samples {
  let rig: Rig | undefined
  const kind: StrategyKind = {
    ...openLoop(() => 0),
    sensed: true,
    create: (given) => {
      rig = new Rig(given, trial)
      return rig
    },
  }
  runGrip(scenario, kind, substepsOf(scenario))
  return rig!.samples
}

/** Fourier coefficient of the last `window` values at `cycles` whole cycles in them. */
export function bin(values: readonly number[], window: number, cycles: number): { re: number; im: number } {
  let re = 0
  let im = 0
  const from = values.length - window
  for (let k = 0; k < window; k++) {
    const angle = (2 * Math.PI * cycles * k) / window
    re += values[from + k]! * Math.cos(angle)
    im -= values[from + k]! * Math.sin(angle)
  }
  return { re, im }
}

/** a/b in decibels and degrees. */
export function ratio(a: { re: number; im: number }, b: { re: number; im: number }) {
  const size = b.re * b.re + b.im * b.im
  const re = (a.re * b.re + a.im * b.im) / size
  const im = (a.im * b.re - a.re * b.im) / size
  return { decibels: 10 * Math.log10(re * re + im * im), degrees: (Math.atan2(im, re) * 180) / Math.PI }
}

/** Root mean square of the values about their mean. */
export function ripple(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length)
}
