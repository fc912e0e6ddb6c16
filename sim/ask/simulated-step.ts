/** Steps of a loop in the time simulation, to lay over those of the linear loop, and how far the two lie apart. */

import { axisFilled } from '../axis/fill.ts'
import { axisOf } from '../axis/reflect.ts'
import { smoothing } from '../control/filters.ts'
import { jobOf } from '../job/index.ts'
import { analyseLoops } from '../loops/analyse.ts'
import { Cascade } from '../loops/cascade.ts'
import { slopeOf } from '../loops/design/axis-figures.ts'
import { loopsOf } from '../loops/jobs/index.ts'
import type { LoopId } from '../loops/model.ts'
import { type StepResponse, stepOf, stepSpan } from '../loops/step-response.ts'
import {
  type WorkingPoint,
  type WorkingPointId,
  type WorkingPointOptions,
  workingPointsOf,
} from '../loops/working-point.ts'
import type { Actuator, Scenario } from '../scenario/index.ts'
import { balanceAt } from './balance.ts'
import { type Bound, tryLoop } from './loop-trial.ts'

export interface SimulatedStepOptions extends WorkingPointOptions {
  /** With the axis' dry friction, or without. */
  friction: boolean
  /** Steps so many times as large as those that stay clear of every bound; 1 if left out. */
  scale?: number | undefined
}

export interface SimulatedStep {
  workingPoint: WorkingPointId
  /** Step of the set point [A, m, m/s, N]. */
  size: number
  /** Answer less that of a run without the step, over the step: [s] and [1]. */
  step: StepResponse
  /** Largest difference from the linear answer [1]. */
  deviation: number
  bounds: Bound[]
}

export interface SimulatedSteps {
  loop: LoopId
  friction: boolean
  /** What one step of the measurement, or its noise, amounts to, in the unit of the step. */
  grain: number
  /** Stable loops that have a crossover. */
  steps: SimulatedStep[]
}

/** Where no step starts from: a simulated part is fresh, and what slides is passed on the way, without a balance to come back to. */
const UNTRIED: ReadonlySet<WorkingPointId> = new Set(['relaxed', 'sliding'])

/** Longest step that is run [s]. */
const LONGEST = 2

/** Throws as analyseLoops and tryLoop do. */
export function simulatedSteps(scenario: Scenario, loop: LoopId, options: SimulatedStepOptions): SimulatedSteps {
  const { friction, scale = 1 } = options
  const { loops, workingPoints } = analyseLoops(scenario, {
    ...options,
    loops: [loop],
    workingPoints: workingPointsOf(scenario).filter((id) => !UNTRIED.has(id)),
  })
  const cases = loops.flatMap(({ stable, crossover, workingPoint, period }) => {
    if (!stable || crossover === null) return []
    const point = workingPoints.find(({ id }) => id === workingPoint)!
    const count = Math.ceil(Math.min(LONGEST, stepSpan(period, crossover)) / period)
    return { point, linear: stepOf(new Cascade(scenario, point), loop, count * period, count) }
  })
  const free = clearStep(scenario, loop, cases, false)
  const pressed = clearStep(scenario, loop, cases, true)
  const axis = friction ? scenario : withoutFriction(scenario)
  const steps = cases.map(({ point, linear }): SimulatedStep => {
    const size = scale * (point.contact ? pressed : free)
    const duration = linear.time.length * linear.time[1]!
    const stepped = tryLoop(axis, { loop, point, duration, step: size })
    const still = tryLoop(axis, { loop, point, duration, step: 0 })
    const value = linear.time.map((_, k) => (stepped.answer[k]! - still.answer[k]!) / size)
    return {
      workingPoint: point.id,
      size,
      step: { time: linear.time, value },
      deviation: value.reduce((most, v, k) => Math.max(most, Math.abs(v - linear.value[k]!)), 0),
      bounds: [...stepped.bounds],
    }
  })
  return { loop, friction, grain: grainOf(scenario, loop), steps }
}

/** With viscous friction only, as the linear loops have it. */
export function withoutFriction(scenario: Scenario): Scenario {
  const calm = loopsOf(scenario).calm(scenario)
  const { transmission } = calm.actuator
  const dry = {
    coulomb: 0,
    breakaway: 0,
    ...('threadFriction' in transmission ? { threadFriction: 0 } : {}),
    ...('efficiency' in transmission ? { efficiency: 1 } : {}),
  }
  return { ...calm, actuator: { ...calm.actuator, transmission: { ...transmission, ...dry } } as Actuator }
}

interface Case {
  point: WorkingPoint
  linear: StepResponse
}

/** Shares of what is there that a step may take: of current and voltage left, and of the way before the work. */
const DRIVE_SHARE = 0.5
const WAY_SHARE = 0.25

/** A round size that keeps a linear loop clear of its bounds, in free air or at all working points in contact. */
function clearStep(scenario: Scenario, loop: LoopId, cases: Case[], contact: boolean): number {
  const { servo, drive, strategies, approach, actuator } = scenario
  const { kp, ki, rate, velocity, speedLimit } = strategies.sensedForce
  const axis = axisFilled(actuator, jobOf(scenario).outputOf(scenario))
  const { perEffort } = jobOf(scenario).workOf(scenario)
  const proportional = (gains: { kp: number; ki: number }, sample: number) => gains.kp + (gains.ki * sample) / 2
  const inner = proportional(velocity, 1 / servo.rate)
  const speed = proportional({ kp, ki }, 1 / rate)
  const kick = { current: 1, position: proportional(servo, 1 / servo.rate), velocity: inner, force: speed * inner }[
    loop
  ]
  const volts = kick * actuator.motor.inductance * drive.currentBandwidth
  const sizes = loop === 'force' ? [speedLimit / speed / 2, approach.acceleration / rate / speed / 2] : []
  for (const { point, linear } of cases) {
    if ((point.contact !== null) !== contact) continue
    const { current, voltage } = balanceAt(scenario, point, axis)
    sizes.push((DRIVE_SHARE * left(servo.currentLimit, current)) / kick)
    sizes.push((DRIVE_SHARE * left(drive.busVoltage, voltage)) / volts)
    const swept = linear.value.reduce((sum, value) => sum + value, 0) * linear.time[1]!
    const way = { current: 0, position: 1, velocity: swept, force: 0 }[loop]
    if (point.contact) {
      const { room } = point
      if (way > 0) sizes.push(room / (way * slopeOf(scenario, point.contact)))
      if (loop === 'force') sizes.push(room)
      if (loop === 'current') sizes.push((perEffort * room) / axisOf(actuator).forcePerAmpere)
    } else if (way > 0) sizes.push((WAY_SHARE * point.travel) / way)
  }
  return roundDown(Math.min(...sizes.filter((size) => size > 0 && Number.isFinite(size))))
}

/** What is left of a limit beyond what the balance takes; a twentieth of it where that takes all. */
const left = (limit: number, taken: number) => Math.max(limit / 20, limit - Math.abs(taken))

/** 1, 2 or 5 of a decade. */
function roundDown(size: number): number {
  const power = Math.floor(Math.log10(size))
  const leading = size / 10 ** power + 1e-9
  return Number(`${leading >= 5 ? 5 : leading >= 2 ? 2 : 1}e${power}`)
}

function grainOf({ drive, servo, sensors }: Scenario, loop: LoopId): number {
  const { encoder, gauge } = sensors
  const { speedFilter, rate } = servo
  return {
    current: Math.max(drive.currentResolution, drive.currentNoise),
    position: encoder.resolution,
    velocity: smoothing(speedFilter, 1 / rate) * rate * encoder.resolution,
    force: Math.max(gauge.resolution, gauge.noise),
  }[loop]
}
