/**
 * A bench that runs on: no clock, no end, no events of its own. The person sends the output out and back, does to the work what its job
 * knows (`Job.live`), shakes the arm, cuts the power, and turns parameters while it runs. The schedule is that of every run.
 */
import { fillArm } from '../axis/fill-arm.ts'
import type { Bench } from '../cycle/bench.ts'
import { jobOf } from '../job/index.ts'
import type { LiveAct, LiveState } from '../job/live.ts'
import { type Model, modelOf } from '../model/model.ts'
import type { Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type Core, type Running, sourceCore } from './core.ts'
import { actsOf, CUT, canNow, handsOf, RESTORE, shakeMove, stateOf } from './live-state.ts'
import { copyBlock, copyState } from './mirror.ts'

/** Length of a bucket of the columns, as near as whole periods come to it [s], and how many are kept at a time. */
const BUCKET = 5e-4
const ROOM = 200
/** So much of a period is taken for rounding when time is cut into periods. */
const ROUNDING = 1e-6
/** Moves of the arm that may overlap. */
const MOVES = 4

export class LivePlant {
  private readonly core: Core
  private model: Model
  private running: Running
  /** Time asked for that did not fill a period [s]. */
  private owed = 0

  /**
   * At rest, power on, the work untouched. `core` is this bench's own. Throws a RangeError where the scenario asks for too small a step,
   * a Refusal where the strategy makes no sense on the job.
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
   * rows, one column a channel of the job in their order, two rows a bucket.
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
   * Goes on under other parameters. Kept: positions, speeds, current, bristles, temperatures; the work with all that has become of it;
   * noise, measurements and loop integrals; the strategy's state and the place on its way, where a changed way sets out anew from. Where
   * a value changes that the job has `fixed`, or the kind of axis, it is another bench: it starts at rest with new work, only as warm as
   * before. Throws a RangeError as the constructor does, and then nothing has changed.
   */
  change(scenario: Scenario): void {
    const before = this.model.scenario
    const model = liveModel(scenario, this.model.strategy.id)
    this.running.change((old) => {
      if (sameBench(before, scenario)) takeAll(old, before, model)
      else takeWarmth(old, model.bench)
    })
    this.become(model)
  }

  /** Another strategy. From one that works the output goes back first, or stands, as the job has it. */
  changeStrategy(strategy: StrategyId): void {
    const { scenario } = this.model
    const { before } = jobOf(scenario).live
    const model = liveModel(scenario, strategy)
    this.running.change((old) => {
      takeAll(old, scenario, model)
      const { bench } = model
      if (!working(old) || old.drive.state.powered === 0) return
      const first = before === null ? undefined : actsOf(scenario).find(({ id }) => id === before)
      if (first && canNow(first, handsOf(scenario, bench), bench)) carryOut(first, scenario, bench)
      else bench.drive.hold(bench.axis.state.motorTravel, bench.time())
    })
    this.become(model)
  }

  /** Something that the job knows, by its id, or the power. Whether it made sense; if not, nothing has changed. */
  act(id: string): boolean {
    const { scenario, strategy } = this.model
    const act = actsOf(scenario).find((each) => each.id === id)
    let done = false
    let anew: Model | null = null
    this.running.change((bench) => {
      if (id === CUT || id === RESTORE) {
        done = turnPower(bench, id)
        return
      }
      if (!act || !canNow(act, handsOf(scenario, bench), bench)) return
      done = true
      if (act.kind === 'anew' || act.kind === 'fresh') {
        const model = liveModel(scenario, strategy.id)
        if (act.kind === 'anew') takeWarmth(bench, model.bench)
        else putFresh(act, scenario, bench, model.bench)
        if (act.kind === 'anew') anew = model
      } else carryOut(act, scenario, bench)
    })
    if (anew) this.become(anew)
    return done
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
  const { bench, job } = model
  fillArm(bench.arm, { ...scenario.arm, moves: [] }, MOVES)
  bench.powerLoss = Number.POSITIVE_INFINITY
  bench.release = Number.POSITIVE_INFINITY
  job.live.still(bench.load, bench.drive.follower)
  // What turns for ever gets as far as it likes.
  if (job.outputOf(scenario).endless) bench.rails.reach = Number.POSITIVE_INFINITY
  bench.recording = 1
  bench.sliding = 1
  bench.untilBanging = 0
  return model
}

const working = ({ drive }: Bench) => drive.state.moving === 0

/** An act that leaves work and machine what they are. */
function carryOut(act: LiveAct, scenario: Scenario, bench: Bench): void {
  const at = handsOf(scenario, bench)
  const { drive, axis, arm } = bench
  const to = act.to?.(at) ?? 0
  act.act?.(at)
  if (act.shake) {
    const { axis: direction, acceleration, duration, jerk } = shakeMove(scenario, act.shake)
    arm.add(at.time, direction, acceleration, duration, jerk)
  }
  if (act.kind === 'out') drive.begin(axis.state.motorTravel, at.time)
  if (act.kind === 'back') drive.back(to, axis.state.motorTravel, at.time)
  if (act.kind !== 'work') bench.latest.state.peak = 0
}

/** New work under the output as it stands. */
function putFresh(act: LiveAct, scenario: Scenario, bench: Bench, fresh: Bench): void {
  copyState(fresh.load, bench.load)
  act.act?.(handsOf(scenario, bench))
  bench.load.settle()
  bench.latest.state.peak = 0
}

/** The windings are left as the scenario's power loss says, open if it has none; back again, the output is kept where it is. */
function turnPower(bench: Bench, id: string): boolean {
  const { drive, axis } = bench
  const powered = drive.state.powered > 0
  if (powered !== (id === CUT)) return false
  if (powered) drive.cut()
  else drive.restore(axis.state.motorTravel, bench.time())
  return true
}

/** All that moves goes on in another bench; a strategy of another kind sets out from here. */
function takeAll(old: Bench, scenario: Scenario, { bench: next, job, scenario: later }: Model): void {
  const time = old.time()
  copyState(old, next)
  next.arm.moves.set(old.arm.moves)
  next.arm.count = old.arm.count
  job.live.carry?.(handsOf(scenario, old), handsOf(later, next))
  next.latest.sums.set(old.latest.sums)
  if (next.period === old.period) copyBlock(old.record.bucket, next.record.bucket)
  retime(next, old, time)
  const other = old.drive.strategy.constructor !== next.drive.strategy.constructor
  if (other && next.drive.state.moving === 0) next.drive.begin(next.axis.state.motorTravel, time)
}

/** Another bench at the same time, at rest, as warm as the old one and under the same power. */
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

/** Whether what stands in one may stand in the other without being somewhere else. */
function sameBench(a: Scenario, b: Scenario): boolean {
  if (a.job !== b.job || a.actuator.kind !== b.actuator.kind) return false
  const [one, other] = [a, b].map((each) => jobOf(each).live.fixed(each))
  return one!.every((value, n) => value === other![n])
}
