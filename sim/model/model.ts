/**
 * A scenario compiled once into the constants of a run, each in the field of the block that it belongs to. The bench made here is
 * never run itself: whoever runs it lays a copy into memory (`run/core.ts`).
 */

import { fillAxis } from '../axis/fill.ts'
import { fillArm } from '../axis/fill-arm.ts'
import { axisOf, isOpenLoop } from '../axis/reflect.ts'
import { Bench } from '../cycle/bench.ts'
import type { Drive } from '../cycle/drive.ts'
import { jobOf } from '../job/index.ts'
import type { Job, Work } from '../job/job.ts'
import { loadOf } from '../job/loads.ts'
import { SETTLED } from '../job/sums.ts'
import { type Fault, Refusal, type Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import { fillMove } from '../strategy/follow.ts'
import { strategiesOn } from '../strategy/index.ts'
import { machineOf } from '../strategy/machines.ts'
import type { StrategyKind } from '../strategy/strategy.ts'
import { stepsOf } from './step.ts'

export interface Model {
  scenario: Scenario
  job: Job
  strategy: StrategyKind
  bench: Bench
  /** A bench of the same blocks, all constants at their neutral values. */
  make: () => Bench
  /** Places of job and strategy in the registries of the compiled core. */
  load: number
  machine: number
  /** Samples of the current loop in the run. */
  samples: number
}

/** Keeps the gauge's noise apart from that of the current measurement. */
const SEED_OFFSET = 0x9e3779b9

export interface ModelOptions {
  /** Works on something else than the scenario says. */
  job?: Job
  /** Makes the bench where job or strategy are none of the registries'. */
  make?: () => Bench
}

/** Throws a RangeError where the scenario would take more than 2e8 steps. */
export function modelOf(scenario: Scenario, strategy: StrategyKind, options: ModelOptions = {}): Model {
  const { job = jobOf(scenario) } = options
  if (job.refuses?.includes(strategy.id)) throw new Refusal(refusedStrategy(job, strategy))
  const { make = () => new Bench(loadOf(job.load), machineOf(strategy.machine)) } = options
  const work = job.workOf(scenario)
  const bench = make()
  const { drive, events } = scenario
  const period = 1 / drive.currentRate
  bench.period = period
  bench.powerLoss = events.powerLoss?.time ?? Number.POSITIVE_INFINITY
  bench.release = events.release?.time ?? Number.POSITIVE_INFINITY
  bench.shorted = events.powerLoss?.windings === 'shorted' ? 1 : 0
  bench.rails.reach = work.reach
  fillArm(bench.arm, scenario.arm)
  fillAxis(bench.axis, scenario.actuator, job.outputOf(scenario))
  job.fill(bench.load, scenario)
  fillDrive(bench.drive, scenario, strategy, work)
  job.follow?.(bench.drive.follower, scenario, strategy.sensed)
  fillFigures(bench, scenario)
  const steps = stepsOf(bench, scenario)
  bench.axis.setStep(period / steps, steps)
  bench.load.setStep(period / steps)
  bench.latest.period = period
  const samples = Math.round(scenario.run.duration / period)
  return { scenario, job, strategy, bench, make, load: job.load, machine: strategy.machine, samples }
}

const refusedStrategy = (job: Job, { id }: StrategyKind): Fault => ({
  path: 'strategy',
  given: `"${id}" on the job "${job.id}"`,
  allowed: strategiesOn(job)
    .map((each) => `"${each.id}"`)
    .join(', '),
})

function fillDrive(drive: Drive, scenario: Scenario, strategy: StrategyKind, work: Work): void {
  const { actuator, servo, sensors, run } = scenario
  const { motor } = actuator
  const period = 1 / scenario.drive.currentRate
  drive.period = period
  drive.rate = scenario.drive.currentRate
  drive.perServo = Math.round(scenario.drive.currentRate / servo.rate)
  drive.sensed = strategy.sensed ? 1 : 0
  drive.encoderResolution = sensors.encoder.resolution
  drive.encoderOffset = sensors.encoder.offset
  drive.currentOffset = scenario.drive.currentOffset
  drive.currentNoise = scenario.drive.currentNoise
  drive.currentResolution = scenario.drive.currentResolution
  drive.noise.state.word = run.seed | 0
  drive.currentLoop.set(motor.resistance, motor.inductance, scenario.drive.currentBandwidth, period)
  drive.currentLoop.voltageLimit = scenario.drive.busVoltage
  drive.currentLoop.backEmf = scenario.drive.backEmfFeedforward * axisOf(actuator).forcePerAmpere
  fillGauge(drive, scenario, period)
  fillMove(drive.move, scenario, work)
  strategy.fill(drive.strategy, scenario, work)
}

function fillGauge({ gauge }: Drive, { sensors, run }: Scenario, period: number): void {
  const { bandwidth, ...constants } = sensors.gauge
  Object.assign(gauge, constants)
  gauge.weight = (period * bandwidth) / (1 + period * bandwidth) // backward Euler of the first-order lag
  gauge.source.state.word = (run.seed + SEED_OFFSET) | 0
}

function fillFigures({ figures }: Bench, scenario: Scenario): void {
  const { run, arm, events } = scenario
  const ends = [run.duration, ...arm.moves.map((move) => move.start)]
  if (events.powerLoss) ends.push(events.powerLoss.time)
  if (events.release) ends.push(events.release.time)
  if (arm.lift !== null || arm.moves.length > 0) ends.push(liftTime(scenario))
  figures.windowEnd = Math.min(...ends)
  figures.windowStart = Math.max(0, figures.windowEnd - SETTLED)
  figures.period = 1 / scenario.drive.currentRate
  figures.perCycle = isOpenLoop(scenario) ? 1 / axisOf(scenario.actuator).cyclePitch : Number.NaN
}
