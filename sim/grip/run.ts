/** One run: the schedule of plant, drive, events and record, a period of the current loop at a time. */

import { axisOf } from '../plant/axis.ts'
import { isOpenLoop } from '../plant/commutation.ts'
import type { Temperatures } from '../plant/heat.ts'
import { Plant } from '../plant/plant.ts'
import type { Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import type { StrategyKind } from '../strategy/strategy.ts'
import { Drive } from './drive.ts'
import { Figures } from './figures.ts'
import { Rails } from './rails.ts'
import { type OnChunk, Recorder } from './recorder.ts'
import type { GripEvents, Metrics, Traces } from './result.ts'
import { isLost, markLimit } from './verdict.ts'
import { neededForce } from './window.ts'

export interface Run {
  metrics: Metrics
  events: GripEvents
  traces: Traces
  /** The receiver of the chunks asked to stop. */
  cancelled: boolean
  /** Where the run left its rails, '' if it did not. */
  cause: Rails['cause']
  /** Temperatures at the end. */
  temperatures: Temperatures
  /** Least mean force of the two contacts while the part hung in them [N]; null: it never did. */
  weakest: number | null
}

export interface RunOptions {
  onChunk?: OnChunk | undefined
  /** Temperatures at the start; ambient if left out. */
  start?: Temperatures | undefined
  /** Ends the run as soon as the part can no longer be held; the figures are then those up to there. */
  untilLost?: boolean | undefined
}

const known = (time: number) => (Number.isFinite(time) ? time : null)

export function runGrip(scenario: Scenario, kind: StrategyKind, substeps: number, options: RunOptions = {}): Run {
  const { jaws, part } = scenario
  const period = 1 / scenario.drive.currentRate
  const samples = Math.round(scenario.run.duration / period)
  const plant = new Plant(scenario, period, substeps, options.start)
  const drive = new Drive(scenario, kind)
  const recorder = new Recorder(samples, options.onChunk)
  const figures = new Figures(scenario, samples)
  const rails = new Rails(10 * Math.max(jaws.stroke, jaws.opening))
  const perCycle = isOpenLoop(scenario) ? 1 / axisOf(scenario.actuator).cyclePitch : Number.NaN
  const markAbove = options.untilLost ? markLimit(scenario) : Number.POSITIVE_INFINITY
  const lift = liftTime(scenario)
  const powerLoss = scenario.events.powerLoss?.time ?? Number.POSITIVE_INFINITY
  const release = scenario.events.release?.time ?? Number.POSITIVE_INFINITY
  const shorted = scenario.events.powerLoss?.windings === 'shorted'
  const events: GripEvents = {
    lift: null,
    engaged: null,
    crack: null,
    slip: null,
    drop: null,
    release: null,
    unstable: null,
  }
  const { arm, slip } = plant
  let cancelled = false

  for (let k = 0; k < samples; k++) {
    const time = k * period
    arm.at(time)
    if (drive.powered && time >= powerLoss) drive.cut()
    if (drive.powered && !drive.opening && time >= release) {
      events.engaged = known(drive.strategy.engaged)
      plant.hanging = false
      drive.open({ travel: plant.x, time })
    }
    if (!plant.hanging && !plant.out && !drive.opening && time >= lift) {
      plant.lift()
      if (plant.hanging) events.lift = time
    }
    drive.sample(k, time, plant)
    const { target } = drive.strategy
    const speedBefore = plant.jawV
    plant.advance(time, drive.voltage, drive.powered || shorted, target)
    drive.feel(plant, speedBefore)

    let needed = 0
    let holds = Number.POSITIVE_INFINITY
    if (plant.hanging) {
      const across = Math.sqrt(arm.down * arm.down + arm.side * arm.side)
      needed = neededForce(scenario, across, arm.along)
      if (across > 0 && !plant.out)
        holds = (jaws.friction.static * plant.gripped * (plant.nearForce + plant.farForce)) / (part.mass * across)
      if (slip.sliding && events.slip === null) events.slip = time
      if (!plant.out && slip.distance > jaws.padLength) {
        events.drop = time
        plant.lose()
      }
    }
    if (drive.opening && events.release === null && plant.nearForce + plant.farForce === 0) events.release = time
    figures.sample(time, plant, needed, holds, perCycle * (target - plant.x))
    if (!recorder.sample(time, plant, drive, target)) {
      cancelled = true
      break
    }
    if (options.untilLost && isLost(plant, markAbove)) break
    if (rails.check(time, plant.jawX, plant.winding.current, drive.servoSaturated, drive.bridgeSaturated)) break
  }

  events.crack = known(plant.crackTime)
  if (!drive.opening) events.engaged = known(drive.strategy.engaged)
  events.unstable = known(rails.left)
  return {
    metrics: figures.metrics(plant),
    events,
    traces: recorder.finish(),
    cancelled,
    cause: rails.cause,
    temperatures: { winding: plant.heat.winding, housing: plant.heat.housing },
    weakest: known(figures.weakest),
  }
}
