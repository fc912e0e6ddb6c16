/**
 * A log laid over the model: what was measured drives the simulated axis, and the axis is looked at in the log's own instants. The
 * schedule, the axis and the servo are those of every run.
 */

import { SAMPLED } from '../cycle/samples.ts'
import { FreeLoad } from '../job/free.ts'
import { jobOf } from '../job/index.ts'
import type { Job } from '../job/job.ts'
import { LoadId } from '../job/load-id.ts'
import { type Model, modelOf } from '../model/model.ts'
import type { Core } from '../run/core.ts'
import type { Scenario } from '../scenario/index.ts'
import { currentClamp } from '../strategy/current-clamp/index.ts'
import { fillPosition } from '../strategy/follow.ts'
import { MachineId } from '../strategy/machine-id.ts'
import { Replay } from '../strategy/replay.ts'
import type { StrategyKind } from '../strategy/strategy.ts'
import { filled, interpolated, slopeOf, ticks } from './grid.ts'
import { logOf } from './jobs/index.ts'
import type { AnswerChannel, Measured } from './measured.ts'

/** What moves the axis: the way that was wanted, the way that was measured in its place, or the measured current. */
export type Driver = 'target' | 'motorTravel' | 'current'

export interface ReplaySetup {
  drivenBy: Driver
  /** The work is met: a part between the jaws, a bore, a thread; else the output moves free of it. */
  contact: boolean
  /** Travel of the output where the log's position reads 0 [m]. */
  origin: number
}

/** What the model shows at the rows of the log, in the log's own frame. */
export type Answer = Record<AnswerChannel, Float64Array>

const NOTHING = new Float64Array(0)

/** Rows from which the speed at the start is taken. */
const START = 5

/** A value a sample of the servo: what it is told [A], or where and how fast it is to be. */
interface Driving {
  step: number
  length: number
  currents: Float64Array
  way: Float64Array
  speeds: Float64Array
  accelerations: Float64Array
}

/** One recording, ready to be laid over many scenarios. */
export class Replayer {
  readonly measured: Measured
  readonly setup: ReplaySetup
  private readonly instants: Float64Array
  private readonly way: Float64Array
  private readonly currents: Float64Array
  /** At which the drive clearly held its command [A]; Infinity: nowhere. */
  private readonly limit: number
  private driving: Driving | null = null

  /** Throws a RangeError where the log has nothing that could drive the axis in the way that the setup says. */
  constructor(measured: Measured, setup: ReplaySetup) {
    const { time, channels } = measured
    this.measured = measured
    this.setup = setup
    this.instants = time.map((t) => t - time[0]!)
    const column = setup.drivenBy === 'current' ? (channels.command ?? channels.current) : channels[setup.drivenBy]
    if (!column || column.every(Number.isNaN)) throw new RangeError(`the log has no ${setup.drivenBy}`)
    const given = filled(this.instants, column)
    this.currents = given
    this.limit = plateauOf(channels.command ?? channels.current)
    this.way = given.map((value) => value + setup.origin)
  }

  /** The model of `scenario` under this log, in the channels that are `shown`, null for all; the others are empty. Throws a Refusal where that takes more steps than a run may. */
  run(scenario: Scenario, core: Core, shown: AnswerChannel[] | null = null): Answer {
    const model = this.model(scenario)
    const running = core.lay(model)
    running.begin(model.samples)
    running.advance(model.samples)
    const rows = this.instants.length
    const all = running.array('samples', 'columns')
    const column = (c: number, channel: AnswerChannel) =>
      !shown || shown.includes(channel) ? all.slice(c * rows, (c + 1) * rows) : NOTHING
    // A run that left the range of finite numbers shows nothing from there on.
    const taken = Math.min(rows, running.bench().samples.state.taken)
    for (let c = 0; c < SAMPLED; c++) all.fill(Number.NaN, c * rows + taken, (c + 1) * rows)
    const { gainError, offset } = scenario.sensors.gauge
    const moved = (values: Float64Array) => values.map((value) => value - this.setup.origin)
    return {
      motorTravel: moved(column(0, 'motorTravel')),
      travel: moved(column(2, 'travel')),
      speed: column(1, 'speed'),
      current: column(4, 'current').map((value) => value + scenario.drive.currentOffset),
      force: column(5, 'force').map((value) => value * (1 + gainError) + offset),
      command: column(6, 'command'),
      voltage: column(7, 'voltage'),
    }
  }

  private model(scenario: Scenario): Model {
    const period = 1 / scenario.drive.currentRate
    const last = this.instants.at(-1)!
    const quiet: Scenario = {
      ...scenario,
      drive: { ...scenario.drive, currentNoise: 0, currentResolution: 0 },
      sensors: { ...scenario.sensors, encoder: { ...scenario.sensors.encoder, resolution: 0 } },
      arm: { ...scenario.arm, moves: [], lift: null },
      events: { ...scenario.events, powerLoss: null, release: null },
      run: { ...scenario.run, duration: last + 2 * period },
    }
    const met: Job = { ...jobOf(quiet), follow: () => {} }
    const job = this.setup.contact ? met : freeAir(met)
    const model = modelOf(quiet, this.kind(), { job })
    const { bench } = model
    bench.untilBanging = 0
    bench.rails.reach = Number.POSITIVE_INFINITY
    bench.axis.stops.stiffness = 0
    bench.axis.stops.damping = 0
    if (this.setup.contact) logOf(quiet).quieten?.(bench.load)
    bench.sampling = 1
    bench.samples.period = period
    bench.samples.count = this.instants.length
    bench.samples.instants = this.instants
    bench.samples.columns = new Float64Array(SAMPLED * this.instants.length)
    this.start(model)
    return model
  }

  /** Where and how fast the axis was in the first row, under the current that it had. */
  private start({ bench }: Model): void {
    const { channels } = this.measured
    const { axis, drive } = bench
    const position = channels.motorTravel && filled(this.instants, channels.motorTravel)
    const travel = (position?.[0] ?? channels.target?.[0] ?? 0) + this.setup.origin
    const n = Math.min(START, this.instants.length - 1)
    const speed = position ? (position[n]! - position[0]!) / this.instants[n]! : 0
    Object.assign(axis.state, { travel, motorTravel: travel, speed, motorSpeed: speed })
    const current = firstOf(channels.command) ?? firstOf(channels.current) ?? 0
    axis.winding.state.current = current
    drive.rest(current, current * axis.winding.resistance + speed * axis.forcePerAmpere)
    const machine = drive.strategy
    if (machine instanceof Replay && machine.loop.integralStep > 0) {
      machine.starts = 1
      machine.first = current
    }
  }

  /** What drives the axis, at the servo's samples; the same for all scenarios of one rate. */
  private drivingAt({ servo, run }: Scenario): Driving {
    const step = 1 / servo.rate
    const length = Math.ceil(run.duration / step) + 2
    if (this.driving?.step !== step || this.driving.length !== length) this.driving = this.driven(step, length)
    return this.driving
  }

  private driven(step: number, length: number): Driving {
    const at = ticks(length, step)
    // In a trace a row shows what was wanted at the servo's sample before it.
    const given = this.measured.trace ? this.instants.map((t) => step * Math.floor(t / step + 1e-6)) : this.instants
    const on = (values: Float64Array) => interpolated(given, values, at)
    if (this.setup.drivenBy === 'current')
      return { step, length, currents: on(this.currents), way: NOTHING, speeds: NOTHING, accelerations: NOTHING }
    // Rows may come unevenly: rates of change are taken on even instants, as far apart as the rows are on average.
    const last = this.instants.at(-1)!
    const even = Math.max(step, last / (this.instants.length - 1))
    const places = ticks(Math.ceil(last / even) + 1, even)
    const speeds = slopeOf(places, interpolated(given, this.way, places))
    return {
      step,
      length,
      currents: NOTHING,
      way: on(this.way),
      speeds: interpolated(places, speeds, at),
      accelerations: interpolated(places, slopeOf(places, speeds), at),
    }
  }

  /** What stands in the drive in a strategy's place. */
  private kind(): StrategyKind {
    return {
      ...currentClamp,
      machine: MachineId.replay,
      fill: (machine, scenario) => {
        if (!(machine instanceof Replay)) return
        const { length, currents, way, speeds, accelerations } = this.drivingAt(scenario)
        fillPosition(machine.loop, scenario)
        machine.loop.limit = Math.min(machine.loop.limit, this.limit)
        machine.length = length
        if (this.setup.drivenBy === 'current') {
          machine.commanded = 1
          machine.currents = currents
          return
        }
        Object.assign(machine, { way, speeds, accelerations })
      },
    }
  }
}

/** The job with its output free of the work. */
const freeAir = (job: Job): Job => ({
  ...job,
  load: LoadId.free,
  fill: (load, scenario) => {
    if (load instanceof FreeLoad) load.pulled = logOf(scenario).pulled(scenario) ? 1 : 0
  },
})

/** A limit holds a signal to this share of itself over this share of the rows, and lets few rows go beyond by more than some. */
const HELD = { within: 0.002, rows: 0.05, beyond: 1.05, few: 0.005 }

/** Size at which a signal is held, as by a limit; Infinity where it is not. */
function plateauOf(column: Float64Array | undefined): number {
  if (!column) return Number.POSITIVE_INFINITY
  const sizes = column.map(Math.abs).filter(Number.isFinite)
  let [best, longest, from] = [Number.POSITIVE_INFINITY, HELD.rows * sizes.length, 0]
  for (let k = 1; k <= sizes.length; k++) {
    if (k < sizes.length && Math.abs(sizes[k]! - sizes[from]!) <= HELD.within * sizes[from]!) continue
    if (k - from > longest) [best, longest] = [sizes[from]!, k - from]
    from = k
  }
  const beyond = sizes.filter((size) => size > HELD.beyond * best).length
  return beyond <= HELD.few * sizes.length ? best : Number.POSITIVE_INFINITY
}

const firstOf = (column: Float64Array | undefined): number | null => {
  const value = column?.find((each) => !Number.isNaN(each))
  return value ?? null
}
