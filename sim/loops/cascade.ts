/**
 * The four loops of the drive at one working point, each with the faster ones closed inside it. What happens when is that of
 * the time simulation: at a sample the servo reads encoder and gauge and gives its command at once, the current loop computes a
 * voltage, and that voltage acts from the next sample on. A slower loop sees the faster one lifted over its own period.
 */

import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { smoothing } from '../control/filters.ts'
import { currentGains } from '../control/gains.ts'
import type { Scenario } from '../scenario/index.ts'
import { derivativeFilterOf } from '../strategy/sensed-force/filter.ts'
import type { PlantModel, PlantState, Weights } from './axis-plant.ts'
import { type Complex, power } from './complex.ts'
import { Dense, eigenvalues, held, lifted } from './matrix.ts'
import {
  closedMatrix,
  closedPoles,
  closeWith,
  columnOf,
  type LoopModel,
  lawOf,
  type SampledPlant,
  type ServoLoopId,
  withSlope,
} from './model.ts'
import type { Multirate } from './multirate.ts'
import { plantModel } from './plant.ts'
import type { WorkingPoint } from './working-point.ts'

/** States between the plant's and the servo's: the voltage that acts next, the current loop's integral, the gauge. */
type FastState = PlantState | 'voltage' | 'integral' | 'gauge'

export class Cascade {
  readonly plant: PlantModel
  private readonly scenario: Scenario
  private readonly point: WorkingPoint
  private readonly period: number
  /** The place of the output matters to what it presses on. */
  private readonly grounded: boolean
  private readonly sampled: { a: Dense; b: Dense }
  private readonly models = new Map<ServoLoopId, LoopModel>()
  private readonly poles = new Map<ServoLoopId, Complex[]>()
  private readonly servos = new Map<string, ReturnType<Cascade['servoPlant']>>()
  private servoPlantPoles: Complex[] | null = null

  /** `plant` in place of that of the scenario's job. */
  constructor(scenario: Scenario, point: WorkingPoint, plant = plantModel(scenario, point)) {
    this.scenario = scenario
    this.point = point
    this.period = 1 / scenario.drive.currentRate
    this.plant = plant
    const jaw = plant.names.indexOf('jaw')
    this.grounded = plant.names.some((_, row) => plant.a.at(row, jaw) !== 0)
    this.sampled = held(this.plant.a, this.plant.b, this.period)
  }

  loop(id: ServoLoopId): LoopModel {
    const known = this.models.get(id)
    if (known) return known
    const build = {
      position: () => this.position(),
      velocity: () => this.velocity(false),
      force: () => this.force(),
    }
    const model = build[id]()
    this.models.set(id, model)
    return model
  }

  closedPoles(id: ServoLoopId): Complex[] {
    let poles = this.poles.get(id)
    if (!poles) {
      poles = closedPoles(this.loop(id))
      this.poles.set(id, poles)
    }
    return poles
  }

  /**
   * The current loop with the position servo closed around it, or, with `servo` false, with its command held. In open loop a step
   * motor has no servo.
   */
  currentLoop(servo = !isOpenLoop(this.scenario)): Multirate {
    const { scenario, plant, period } = this
    const { drive } = scenario
    const { at, a, b, law } = this.fast(plant.names, false)
    const [current, voltage, integral] = [at.get('current')!, at.get('voltage')!, at.get('integral')!]
    const n = a.rows
    const [slope, servoIntegral, command, speed] = [n, n + 1, n + 2, n + 3]
    const size = n + 4
    const fast = a.grown(size, size)
    fast.set(voltage, current, 0)
    fast.set(integral, current, 0)
    fast.set(voltage, speed, b.at(voltage, 1))
    for (const held of [slope, servoIntegral, command, speed]) fast.set(held, held, 1)
    const input = new Float64Array(size)
    input[voltage] = law.gain
    input[integral] = law.step
    const error = unit(size, command)
    error[current] = -1
    return {
      period,
      count: Math.round(drive.currentRate / scenario.servo.rate),
      fast,
      input,
      jump: this.servoSample(at, { size, slope, integral: servoIntegral, command, speed }, servo),
      set: unit(size, command),
      error,
      servoStates: size - n,
      output: unit(size, current),
    }
  }

  /** A sample of the servo: it reads travel and speed, its integral goes on, command and speed are held. */
  private servoSample(
    at: Map<FastState, number>,
    to: { size: number; slope: number; integral: number; command: number; speed: number },
    closed: boolean,
  ): Dense {
    const { servo } = this.scenario
    const weight = smoothing(servo.speedFilter, 1 / servo.rate)
    const law = closed ? lawOf(servo, 1 / servo.rate) : { gain: 0, step: 0, kd: 0, forward: 0 }
    const jump = Dense.identity(to.size)
    const sampled = at.get('sampled')!
    jump.set(sampled, sampled, 0)
    jump.set(to.command, to.command, 0)
    jump.set(to.speed, to.speed, 0)
    for (const row of [to.slope, to.speed]) {
      jump.set(row, sampled, weight * servo.rate)
      jump.set(row, to.slope, 1 - weight)
    }
    for (const travel of [at.get('jaw')!, at.get('stretch')!]) {
      jump.set(to.command, travel, -law.gain)
      jump.set(to.integral, travel, -law.step)
    }
    if (law.step > 0) jump.set(to.command, to.integral, 1)
    else jump.set(to.integral, to.integral, 0)
    jump.set(to.command, sampled, -law.kd * weight * servo.rate)
    jump.set(to.command, to.slope, -law.kd * (1 - weight))
    return jump
  }

  /**
   * The plant's given states with the current loop closed. Inputs: current command and the measured speed of the back-EMF
   * feed-forward.
   */
  private fast(inner: PlantState[], gauge: boolean) {
    const { scenario, plant, period } = this
    const { actuator, drive } = scenario
    const { resistance, inductance } = actuator.motor
    const names: FastState[] = [...inner, 'voltage', 'integral']
    if (gauge) names.push('gauge')
    const at = new Map(names.map((name, i) => [name, i]))
    const from = inner.map((name) => plant.names.indexOf(name))
    const law = lawOf(currentGains(resistance, inductance, drive.currentBandwidth), period)
    const voltage = at.get('voltage')!
    const integral = at.get('integral')!
    const current = at.get('current')!
    const a = this.sampled.a.kept(from).grown(names.length, names.length)
    const b = new Dense(names.length, 2)
    for (const [i, row] of from.entries()) a.set(i, voltage, this.sampled.b.at(row, 0))
    a.set(voltage, current, -law.gain)
    a.set(voltage, integral, 1)
    a.set(integral, current, -law.step)
    a.set(integral, integral, 1)
    b.set(voltage, 0, law.gain)
    b.set(voltage, 1, drive.backEmfFeedforward * axisOf(actuator).forcePerAmpere)
    b.set(integral, 0, law.step)
    if (gauge) this.addGauge(a, at)
    return { names, at, a, b, law }
  }

  /** g⁺ = g + w·(F⁺ + m·(w⁺ − w)/T − g): the gauge feels the force at the end of the period and the finger's mean acceleration. */
  private addGauge(a: Dense, at: Map<FastState, number>): void {
    const { bandwidth, fingerMass } = this.scenario.sensors.gauge
    const weight = (this.period * bandwidth) / (1 + this.period * bandwidth)
    const gauge = at.get('gauge')!
    const inertia = fingerMass / this.period
    const felt: Weights = { ...this.plant.nearForce, jawSpeed: (this.plant.nearForce.jawSpeed ?? 0) + inertia }
    for (const [name, factor] of Object.entries(felt)) {
      const row = at.get(name as PlantState)!
      for (let j = 0; j < gauge; j++) a.add(gauge, j, weight * factor * a.at(row, j))
    }
    a.add(gauge, at.get('jawSpeed')!, -weight * inertia)
    a.set(gauge, gauge, 1 - weight)
  }

  /** What the servo's controller acts on, command to speed (`slope`) and, with `position`, to travel (`value`). */
  private servo(position: boolean, gauge: boolean) {
    const absolute = position || this.grounded
    const key = `${absolute} ${gauge}`
    let plant = this.servos.get(key)
    if (!plant) {
      plant = this.servoPlant(absolute, gauge)
      this.servos.set(key, plant)
    }
    return plant
  }

  private servoPlant(absolute: boolean, gauge: boolean): SampledPlant & { gauge: number } {
    const { scenario, plant } = this
    const { drive, servo } = scenario
    const { at, a, b } = this.fast(
      plant.names.filter((name) => absolute || name !== 'jaw'),
      gauge,
    )
    const n = a.rows
    const span = lifted(a, b, Math.round(drive.currentRate / servo.rate))
    const weight = smoothing(servo.speedFilter, 1 / servo.rate)
    const moved = at.get('sampled')!
    const slope = new Float64Array(n + 1)
    slope[moved] = weight * servo.rate
    slope[n] = 1 - weight
    const whole = span.a.grown(n + 1, n + 1)
    for (let i = 0; i < n; i++) whole.set(i, moved, 0) // the reading starts the next span
    for (let i = 0; i < n; i++) for (let j = 0; j <= n; j++) whole.add(i, j, span.b.at(i, 1) * slope[j]!)
    for (let j = 0; j <= n; j++) whole.set(n, j, slope[j]!)
    const value = new Float64Array(n + 1)
    if (absolute) {
      value[at.get('jaw')!] = 1
      value[at.get('stretch')!] = 1
    }
    const command = new Float64Array(n + 1)
    command.set(span.b.column(0))
    return { a: whole, b: command, value, slope, poles: [], gauge: at.get('gauge') ?? -1 }
  }

  private position(): LoopModel {
    const { servo } = this.scenario
    const plant = this.servo(true, false)
    const poles = this.servoPoles()
    return closeWith(
      { ...plant, poles: this.grounded ? poles : [...poles, { re: 1, im: 0 }] },
      lawOf(servo, 1 / servo.rate, servo.setpointWeights.proportional),
      1 / servo.rate,
    )
  }

  private velocity(gauge: boolean): LoopModel {
    const { servo, strategies } = this.scenario
    const plant = this.servo(false, gauge)
    const poles = gauge ? [] : this.servoPoles()
    const law = lawOf(strategies.sensedForce.velocity, 1 / servo.rate)
    const model = closeWith({ ...plant, value: plant.slope, poles }, law, 1 / servo.rate)
    // Pressing on something, the loop is content with any force: a mode that the speed does not show.
    return { ...model, neutral: this.point.contact !== null && !this.plant.leaks && law.step > 0 }
  }

  /** Poles of what the servo acts on, the position apart of an axis whose place does not matter. */
  private servoPoles(): Complex[] {
    this.servoPlantPoles ??= eigenvalues(this.servo(false, false).a)
    return this.servoPlantPoles
  }

  private force(): LoopModel {
    const { servo, drive, sensors, strategies } = this.scenario
    const { rate, kp, ki, kd } = strategies.sensedForce
    const inner = this.velocity(true)
    const count = Math.round(servo.rate / rate)
    const span = lifted(closedMatrix(inner), columnOf(inner.reference), count)
    const gauge = this.servo(false, true).gauge
    const value = new Float64Array(span.a.rows)
    // A gauge that feels nothing shows nothing, to the last bit.
    const feels = sensors.gauge.fingerMass > 0 || Object.keys(this.plant.nearForce).length > 0
    if (feels) value[gauge] = 1 + sensors.gauge.gainError
    const gaugePole = 1 / (1 + sensors.gauge.bandwidth * this.period)
    const plant: SampledPlant = {
      a: span.a,
      b: span.b.column(0),
      value,
      slope: new Float64Array(span.a.rows),
      poles: [
        ...this.closedPoles('velocity').map((pole) => power(pole, count)),
        { re: gaugePole ** Math.round(drive.currentRate / rate), im: 0 },
      ],
    }
    const period = 1 / rate
    // In free air the integral stands at the speed limit and takes no part.
    const law = lawOf({ kp, ki: this.point.contact ? ki : 0, kd }, period)
    return closeWith(
      kd > 0 ? withSlope(plant, smoothing(derivativeFilterOf(this.scenario), period), rate) : plant,
      law,
      period,
    )
  }
}

function unit(size: number, index: number): Float64Array {
  const made = new Float64Array(size)
  made[index] = 1
  return made
}
