/** The drive: encoder and gauge, the strategy at the servo rate, the current loop with one sample of delay. */
import { CurrentLoop, currentGains } from '../control/current-loop.ts'
import { axisOf } from '../plant/axis.ts'
import { Gauge } from '../plant/gauge.ts'
import { Noise } from '../plant/noise.ts'
import type { Plant } from '../plant/plant.ts'
import { quantise } from '../plant/quantise.ts'
import type { Scenario } from '../scenario/index.ts'
import type { Start } from '../strategy/course.ts'
import { Move } from '../strategy/move.ts'
import type { Strategy, StrategyKind } from '../strategy/strategy.ts'

/** What the drive needs to know of a strategy. */
type Kind = Pick<StrategyKind, 'sensed' | 'create'>

export class Drive {
  /** Current wanted [A], voltage at the winding during the present period [V], gauge reading [N]. */
  command = 0
  voltage = 0
  reading = 0
  powered = true
  opening = false
  strategy: Strategy
  private nextVoltage = 0
  private readonly scenario: Scenario
  private readonly kind: Kind
  private readonly sensed: boolean
  private readonly gauge: Gauge
  private readonly noise: Noise
  private readonly currentLoop: CurrentLoop
  private readonly perServo: number
  private readonly period: number

  constructor(scenario: Scenario, kind: Kind) {
    const { actuator, drive, servo, run } = scenario
    this.scenario = scenario
    this.kind = kind
    this.period = 1 / drive.currentRate
    this.perServo = Math.round(drive.currentRate / servo.rate)
    this.strategy = kind.create(scenario)
    this.sensed = kind.sensed
    this.gauge = new Gauge(scenario.sensors.gauge, this.period, run.seed)
    this.noise = new Noise(run.seed)
    this.currentLoop = new CurrentLoop({
      ...currentGains(actuator.motor.resistance, actuator.motor.inductance, drive.currentBandwidth),
      period: this.period,
      voltageLimit: drive.busVoltage,
      backEmf: drive.backEmfFeedforward * axisOf(actuator).forceConstant,
    })
  }

  get bridgeSaturated(): number {
    return this.powered ? this.currentLoop.saturated : 0
  }

  get servoSaturated(): number {
    return this.powered ? this.strategy.saturated : 0
  }

  /** Starts as if it had given this command [A] for long, at this voltage [V]. */
  settle(command: number, voltage: number): void {
    this.command = command
    this.nextVoltage = voltage
    this.currentLoop.integral = voltage
  }

  /** Opens the jaws on purpose, from now on. */
  open(now: Start): void {
    this.opening = true
    this.strategy = new Move(this.scenario, now, 0)
  }

  /** Closes them, from wherever they are. */
  close(now: Start): void {
    this.opening = false
    this.strategy = this.kind.create(this.scenario, now)
  }

  cut(): void {
    this.powered = false
    this.command = 0
    this.voltage = 0
    this.nextVoltage = 0
  }

  /** Power is back: the jaws are kept where they stand, and nothing moves by itself. */
  restore(now: Start): void {
    this.powered = true
    this.currentLoop.reset()
    this.hold(now)
  }

  /** Keeps the jaws where they stand. */
  hold(now: Start): void {
    this.opening = false
    this.strategy = new Move(this.scenario, now, now.travel)
  }

  /**
   * Goes on from where another drive stands: power, voltage on its way, measurements with their noise, current loop, and the move
   * or strategy under way; a strategy of another kind sets out from `now`.
   */
  take(previous: Drive, now: Start): void {
    this.command = previous.command
    this.voltage = previous.voltage
    this.nextVoltage = previous.nextVoltage
    this.reading = previous.reading
    this.powered = previous.powered
    this.opening = previous.opening
    this.gauge.take(previous.gauge)
    this.noise.take(previous.noise)
    this.currentLoop.take(previous.currentLoop)
    const { strategy } = previous
    if (strategy instanceof Move) this.strategy = new Move(this.scenario, now, strategy.end)
    else this.strategy = this.kind.create(this.scenario, now)
    if (this.kind === previous.kind || strategy instanceof Move) this.strategy.take?.(strategy)
  }

  /** Sample `k` of the current loop, at `time` [s]: sets the voltage of the coming period. */
  sample(k: number, time: number, plant: Plant): void {
    const { drive, sensors } = this.scenario
    if (k % this.perServo === 0) {
      plant.heat.step(plant.loss, this.perServo * this.period)
      if (this.sensed) this.reading = this.gauge.read(time)
      if (this.powered)
        this.command = this.strategy.tick({
          time,
          position: quantise(plant.x, sensors.encoder.resolution),
          force: this.reading,
        })
    }
    if (!this.powered) return
    this.voltage = this.nextVoltage
    let measured = plant.winding.current + drive.currentOffset
    if (drive.currentNoise > 0) measured += drive.currentNoise * this.noise.normal()
    this.nextVoltage = this.currentLoop.tick(
      this.command,
      quantise(measured, drive.currentResolution),
      this.strategy.measuredSpeed,
    )
  }

  /** What the gauge felt in the period just past; `speedBefore` [m/s] is the jaw's speed at its start. */
  feel(plant: Plant, speedBefore: number): void {
    if (this.sensed) this.gauge.feel(plant.nearForce, (plant.jawV - speedBefore) / this.period - plant.arm.along)
  }
}
