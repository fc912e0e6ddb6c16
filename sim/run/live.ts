/**
 * A bench that runs on: no clock, no end, no events of its own. The person closes and opens the jaws, takes the support away,
 * shakes the arm, cuts the power, and turns parameters while it runs. The schedule is that of every run.
 */
import { DIRECTIONS, fillArm } from '../axis/fill-arm.ts'
import type { Bench } from '../cycle/bench.ts'
import { travelToContact } from '../job/grip/geometry.ts'
import { GripLoad } from '../job/grip/load.ts'
import { type Model, modelOf } from '../model/model.ts'
import type { ArmMove, Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type Core, type Running, sourceCore } from './core.ts'
import { type LiveState, movesOf, shakeOf, stateOf } from './live-state.ts'
import { copyBlock, copyState } from './mirror.ts'

/** Length of a bucket of the columns, as near as whole periods come to it [s], and how many are kept at a time. */
const BUCKET = 5e-4
const ROOM = 200
/** So much of a period is taken for rounding when time is cut into periods. */
const ROUNDING = 1e-6
/** Moves of the arm that may overlap. */
const MOVES = 4

export class LiveGrip {
  private readonly core: Core
  private model: Model
  private running: Running
  /** Time asked for that did not fill a period [s]. */
  private owed = 0

  /**
   * Jaws open and at rest, power on, the part on its support. `core` is this bench's own. Throws a RangeError where the scenario
   * asks for too small a step.
   */
  constructor(scenario: Scenario, strategy: StrategyId, core: Core = sourceCore) {
    this.core = core
    this.model = liveModel(scenario, strategy)
    this.model.bench.drive.hold(0, 0)
    this.running = this.lay()
  }

  get time(): number {
    return this.running.bench().time()
  }

  /**
   * Simulates `seconds` on, in whole periods of the current loop; what is left over counts for the next call. Returns the new
   * rows, one column a channel in the order of CHANNELS, two rows a bucket.
   */
  advance(seconds: number): Float64Array[] {
    const { period } = this.model.bench
    let periods = Math.floor((this.owed + seconds) / period + ROUNDING)
    this.owed += seconds - periods * period
    const pieces = [this.running.rows(0, 0)]
    let going = true
    while (periods > 0 && going) {
      const some = Math.min(periods, ROOM * this.perBucket - this.running.bench().record.bucket.filled)
      this.running.rewind()
      going = this.running.advance(some)
      periods -= some
      pieces.push(this.running.rows(0, this.running.bench().record.rows))
    }
    return joined(pieces)
  }

  get state(): LiveState {
    const { running } = this
    const bench = running.bench()
    bench.arm.moves = running.array('arm', 'moves')
    bench.latest.sums = running.array('latest', 'sums')
    return stateOf(this.model.scenario, bench, running.array('record', 'bucket', 'now'))
  }

  /**
   * Goes on under other parameters. Kept: positions, speeds, current, bristles, temperatures; the part with its dents, relaxation,
   * slip and breakage; noise, measurements and loop integrals; the strategy's state and the place on its way, where a changed way
   * sets out anew from. Another part width, opening, stroke, layout or kind of axis is another bench: it starts open and at rest
   * with a new part, only as warm as before. Throws a RangeError as the constructor does, and then nothing has changed.
   */
  change(scenario: Scenario): void {
    const model = liveModel(scenario, this.model.strategy.id)
    this.running.change((old) => {
      if (sameBench(this.model.scenario, scenario)) takeAll(old, model.bench)
      else takeWarmth(old, model.bench)
    })
    this.become(model)
  }

  /** Another strategy. It starts with open jaws: from a grip they open first. */
  changeStrategy(strategy: StrategyId): void {
    const model = liveModel(this.model.scenario, strategy)
    this.running.change((old) => {
      takeAll(old, model.bench)
      if (closing(old)) open(model.bench)
    })
    this.become(model)
  }

  /** From wherever the jaws are; not again while they close or grip. */
  close(): void {
    this.running.change((bench) => {
      if (bench.drive.state.powered === 0 || closing(bench)) return
      bench.drive.begin(bench.axis.state.motorTravel, bench.time())
      bench.latest.state.peak = 0
    })
  }

  /** Opens the jaws; a part that hangs in them is set down on its support first, as at a release. */
  open(): void {
    this.running.change((bench) => {
      if (bench.drive.state.powered > 0) open(bench)
    })
  }

  /** The support goes: what nothing grips stays behind. */
  lift(): void {
    this.running.change(lift)
  }

  /** One move of the arm, as `shakeOf` says, unless one is going on; an arm that moves leaves the support behind. */
  shake(axis: ArmMove['axis']): void {
    const { acceleration, duration, jerk } = shakeOf(this.model.scenario, axis)
    this.running.change((bench) => {
      const time = bench.time()
      if (movesOf(bench).some((move) => time < move.start + move.duration)) return
      lift(bench)
      bench.arm.add(time, DIRECTIONS[axis], acceleration, duration, jerk)
    })
  }

  /** The windings are left as the scenario's power loss says, open if it has none. */
  cutPower(): void {
    this.running.change((bench) => bench.drive.cut())
  }

  restorePower(): void {
    this.running.change((bench) => {
      if (bench.drive.state.powered === 0) bench.drive.restore(bench.axis.state.motorTravel, bench.time())
    })
  }

  /** A new part on its support, unless the jaws stand where it has to go. Whether there was room. */
  newPart(): boolean {
    let room = false
    const { bench: fresh, scenario } = liveModel(this.model.scenario, this.model.strategy.id)
    this.running.change((bench) => {
      room = bench.axis.state.travel <= travelToContact(scenario)
      if (!room) return
      copyState(fresh.load, bench.load)
      bench.load.settle()
      bench.latest.state.peak = 0
    })
    return room
  }

  /** Goes on as another model, whose bench holds the state to go on from. */
  private become(model: Model): void {
    const retimed = model.bench.period !== this.model.bench.period
    this.model = model
    if (retimed) this.owed = 0
    this.running = this.lay()
  }

  private lay(): Running {
    const running = this.core.lay(this.model)
    running.resume(this.perBucket, ROOM)
    return running
  }

  private get perBucket(): number {
    return Math.max(1, Math.round(BUCKET / this.model.bench.period))
  }
}

/** Nothing happens by itself, and everybody who looks at a bench that runs on looks on. */
function liveModel(scenario: Scenario, strategy: StrategyId): Model {
  const model = modelOf(scenario, strategyOf(strategy))
  const { bench } = model
  fillArm(bench.arm, { ...scenario.arm, moves: [] }, MOVES)
  bench.powerLoss = Number.POSITIVE_INFINITY
  bench.release = Number.POSITIVE_INFINITY
  if (bench.load instanceof GripLoad) bench.load.liftTime = Number.POSITIVE_INFINITY
  bench.recording = 1
  bench.sliding = 1
  bench.untilBanging = 0
  return model
}

/** All that moves goes on in another bench; a strategy of another kind sets out from here. */
function takeAll(old: Bench, next: Bench): void {
  const time = old.time()
  copyState(old, next)
  next.arm.moves.set(old.arm.moves)
  next.arm.count = old.arm.count
  next.latest.sums.set(old.latest.sums)
  if (next.period === old.period) copyBlock(old.record.bucket, next.record.bucket)
  retime(next, old, time)
  const other = old.drive.strategy.constructor !== next.drive.strategy.constructor
  if (other && next.drive.state.moving === 0) next.drive.strategy.begin(next.axis.state.motorTravel, time)
}

/** Another bench at the same time, open and at rest, as warm as the old one and under the same power. */
function takeWarmth(old: Bench, next: Bench): void {
  copyState(old.axis.heat, next.axis.heat)
  copyState(old.latest, next.latest)
  retime(next, old, old.time())
  next.latest.state.peak = 0
  next.drive.hold(0, old.time())
  if (old.drive.state.powered === 0) next.drive.cut()
}

/** Time goes on from where it is, also where the period of the current loop is another one. */
function retime(next: Bench, old: Bench, time: number): void {
  const same = next.period === old.period
  next.state.origin = same ? old.state.origin : time
  next.state.count = same ? old.state.count : 0
  if (!same) next.latest.sums.fill(0)
}

const closing = ({ drive }: Bench) => drive.state.moving === 0

function open(bench: Bench): void {
  bench.load.release()
  bench.drive.open(bench.axis.state.motorTravel, bench.time())
  bench.latest.state.peak = 0
}

function lift(bench: Bench): void {
  const { load } = bench
  if (!(load instanceof GripLoad) || load.state.hanging > 0 || load.state.out > 0) return
  bench.arm.at(bench.time()) // what pulls from now on, in the plant of this very moment
  load.lift(bench.time(), bench.arm)
}

/** Pieces of the same columns, one behind the other. */
function joined(pieces: Float64Array[][]): Float64Array[] {
  return pieces[0]!.map((_, c) => {
    const column = new Float64Array(pieces.reduce((rows, piece) => rows + piece[c]!.length, 0))
    let row = 0
    for (const piece of pieces) {
      column.set(piece[c]!, row)
      row += piece[c]!.length
    }
    return column
  })
}

/** Whether the jaws of one may stand in the other without being somewhere else. */
function sameBench(a: Scenario, b: Scenario): boolean {
  return (
    a.part.width === b.part.width &&
    a.jaws.opening === b.jaws.opening &&
    a.jaws.stroke === b.jaws.stroke &&
    a.jaws.layout === b.jaws.layout &&
    a.actuator.kind === b.actuator.kind
  )
}
