/**
 * A plant that runs on: no clock, no end, no events of its own. The person closes and opens the jaws, takes the support away,
 * shakes the arm, cuts the power, and turns parameters while it runs.
 */
import { travelToContact } from '../plant/axis.ts'
import { Plant } from '../plant/plant.ts'
import type { ArmMove, Scenario } from '../scenario/index.ts'
import type { Start } from '../strategy/course.ts'
import { strategyOf } from '../strategy/index.ts'
import { Move } from '../strategy/move.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { Bucket } from './bucket.ts'
import { Drive } from './drive.ts'
import { Fate } from './fate.ts'
import { SlidingFigures } from './live-figures.ts'
import { type LiveState, shakeOf } from './live-state.ts'
import { CHANNELS } from './result.ts'
import { substepsOf } from './step.ts'

/** Length of a bucket of the columns, as near as whole periods come to it [s]. */
const BUCKET = 5e-4
/** So much of a period is taken for rounding when time is cut into periods. */
const ROUNDING = 1e-6

export class LiveGrip {
  private scenario: Scenario
  private strategy: StrategyId
  private period: number
  /** Samples of the current loop since `origin` [s]. */
  private count = 0
  private origin = 0
  /** Time asked for that did not fill a period [s]. */
  private owed = 0
  private plant: Plant
  private drive: Drive
  private bucket: Bucket
  private figures: SlidingFigures
  private fate = new Fate()
  private left: LiveState['left'] = ''

  /** Jaws open and at rest, power on, the part on its support. Throws a RangeError where the scenario asks for too small a step. */
  constructor(scenario: Scenario, strategy: StrategyId) {
    this.scenario = scenario
    this.strategy = strategy
    this.period = 1 / scenario.drive.currentRate
    this.plant = plantOf(scenario)
    this.drive = driveOf(scenario, strategy)
    this.drive.hold(this.here)
    this.bucket = new Bucket(perBucket(this.period))
    this.figures = new SlidingFigures(this.period)
    this.look()
  }

  get time(): number {
    return this.origin + this.count * this.period
  }

  /**
   * Simulates `seconds` on, in whole periods of the current loop; what is left over counts for the next call. Returns the new
   * rows, one column a channel in the order of CHANNELS, two rows a bucket.
   */
  advance(seconds: number): Float64Array[] {
    const periods = Math.floor((this.owed + seconds) / this.period + ROUNDING)
    this.owed += seconds - periods * this.period
    const buckets = Math.floor((this.bucket.filled + periods) / perBucket(this.period))
    const columns = CHANNELS.map(() => new Float64Array(2 * buckets))
    let row = 0
    for (let n = 0; n < periods && this.left === ''; n++) {
      this.step()
      if (!this.bucket.add()) continue
      this.bucket.pour(columns, row)
      row += 2
    }
    return row === 2 * buckets ? columns : columns.map((column) => column.slice(0, row))
  }

  get state(): LiveState {
    const { plant, drive, fate } = this
    return {
      time: this.time,
      now: this.bucket.now.slice(),
      phase: this.phase,
      engaged: !Number.isNaN(drive.strategy.engaged),
      powered: drive.powered,
      supported: !plant.hanging && !plant.out,
      lost: fate.lost,
      crack: fate.crack,
      marked: { ...fate.marked },
      clear: plant.jawX <= travelToContact(this.scenario),
      moves: plant.arm.moves,
      figures: this.figures.now,
      left: this.left,
    }
  }

  /**
   * Goes on under other parameters. Kept: positions, speeds, current, bristles, temperatures; the part with its dents, relaxation,
   * slip and breakage; noise, measurements and loop integrals; the strategy's state and the place on its way, where a changed way
   * sets out anew from. Another part width, opening, stroke, layout or kind of axis is another bench: it starts open and at rest
   * with a new part, only as warm as before. Throws a RangeError as the constructor does, and then nothing has changed.
   */
  change(scenario: Scenario): void {
    const plant = plantOf(scenario)
    const drive = driveOf(scenario, this.strategy)
    if (sameBench(this.scenario, scenario)) {
      plant.take(this.plant)
      drive.take(this.drive, this.here)
    } else {
      plant.heat.take(this.plant.heat)
      drive.hold({ travel: 0, time: this.time })
      if (!this.drive.powered) drive.cut()
      this.fate = new Fate()
      this.figures.setOut()
    }
    this.scenario = scenario
    this.plant = plant
    this.drive = drive
    this.retime(1 / scenario.drive.currentRate)
  }

  /** Another strategy. It starts with open jaws: from a grip they open first. */
  changeStrategy(strategy: StrategyId): void {
    const drive = driveOf(this.scenario, strategy)
    drive.take(this.drive, this.here)
    const closing = this.phase === 'closing'
    this.strategy = strategy
    this.drive = drive
    if (closing) this.open()
  }

  /** From wherever the jaws are; not again while they close or grip. */
  close(): void {
    if (!this.drive.powered || this.phase === 'closing') return
    this.drive.close(this.here)
    this.figures.setOut()
  }

  /** Opens the jaws; a part that hangs in them is set down on its support first, as at a release. */
  open(): void {
    if (!this.drive.powered) return
    this.plant.hanging = false
    this.drive.open(this.here)
    this.figures.setOut()
  }

  /** The support goes: what nothing grips stays behind. */
  lift(): void {
    const { plant } = this
    if (plant.hanging || plant.out) return
    plant.arm.at(this.time) // what pulls from now on, in the plant of this very moment
    plant.lift()
  }

  /** One move of the arm, as `shakeOf` says, unless one is going on; an arm that moves leaves the support behind. */
  shake(axis: ArmMove['axis']): void {
    const { arm } = this.plant
    if (arm.moves.some(({ start, duration }) => this.time < start + duration)) return
    this.lift()
    arm.add({ ...shakeOf(this.scenario, axis), start: this.time })
  }

  /** The windings are left as the scenario's power loss says, open if it has none. */
  cutPower(): void {
    this.drive.cut()
  }

  restorePower(): void {
    if (!this.drive.powered) this.drive.restore(this.here)
  }

  /** A new part on its support, unless the jaws stand where it has to go. Whether there was room. */
  newPart(): boolean {
    if (this.plant.jawX > travelToContact(this.scenario)) return false
    const plant = plantOf(this.scenario)
    plant.takeAxis(this.plant)
    this.plant = plant
    this.fate = new Fate()
    this.figures.setOut()
    return true
  }

  private get phase(): LiveState['phase'] {
    if (this.drive.opening) return 'opening'
    return this.drive.strategy instanceof Move ? 'holding' : 'closing'
  }

  private get here(): Start {
    return { travel: this.plant.x, time: this.time }
  }

  private step(): void {
    const { plant, drive, time } = this
    plant.arm.at(time)
    drive.sample(this.count, time, plant)
    const { target } = drive.strategy
    const speedBefore = plant.jawV
    plant.advance(time, drive.voltage, drive.powered || shorted(this.scenario), target)
    drive.feel(plant, speedBefore)
    this.count++
    this.fate.see(time, plant, this.scenario)
    this.watch()
    this.bucket.see(time, plant, drive, target)
    this.figures.sample(plant)
  }

  /** Numbers that are none, or a jaw far outside, end it; a loop that bangs between its limits may be watched. */
  private watch(): void {
    const { jawX, winding } = this.plant
    const { stroke, opening } = this.scenario.jaws
    if (!Number.isFinite(jawX) || !Number.isFinite(winding.current)) this.left = 'numbers'
    else if (Math.abs(jawX) > 10 * Math.max(stroke, opening)) this.left = 'travel'
  }

  private look(): void {
    this.bucket.see(this.time, this.plant, this.drive, this.drive.strategy.target)
  }

  /** Another period of the current loop: time goes on from where it is. */
  private retime(period: number): void {
    if (period === this.period) return
    this.origin = this.time
    this.count = 0
    this.owed = 0
    this.period = period
    this.bucket = new Bucket(perBucket(period))
    this.figures = new SlidingFigures(period)
    this.look()
  }
}

const perBucket = (period: number) => Math.max(1, Math.round(BUCKET / period))

const shorted = ({ events }: Scenario) => events.powerLoss?.windings === 'shorted'

function plantOf(scenario: Scenario): Plant {
  const still = { ...scenario, arm: { ...scenario.arm, moves: [] } }
  return new Plant(still, 1 / scenario.drive.currentRate, substepsOf(scenario))
}

const driveOf = (scenario: Scenario, strategy: StrategyId) => new Drive(scenario, strategyOf(strategy))

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
