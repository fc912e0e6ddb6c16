/**
 * A whole grip, integrated on the full continuous equations between the samples of the current loop. It shares no code with the
 * simulator: written from design, Model page and the notes of the schema, to be held against it.
 */
import { accelerationOf, liftOf } from './arm.ts'
import { CurrentLoop, Encoder, rounded } from './drive.ts'
import { type Input, readInput } from './input.ts'
import { Integrator } from './integrate.ts'
import { AT, Plant, slidOf } from './plant.ts'
import { Opening, type StrategyId, strategyOf } from './strategies.ts'

/** Figures of a grip as the format of results defines them; null: there is none. */
export interface Figures {
  contactTime: number | null
  contactSpeed: number | null
  peakForce: number
  peakForceTime: number | null
  settledForce: number | null
  settledCurrent: number | null
  minForceInMove: number | null
  maxForceInMove: number | null
  slipDistance: number
  /** Angle by which the part has turned in the end [rad]. */
  turned: number
  jawTravel: number | null
  dent: number
  windingTemperature: number
}

export interface Sample {
  time: number
  state: number[]
  near: number
  far: number
  command: number
}

const SETTLED = 0.05
const TOLERANCE = 1e-6

/**
 * `scenario` is complete, in either version of the format, without noise; `tolerance` is that of one step of odex; `watch` sees every
 * sample of the current loop. Throws where the scenario asks for what is left out here.
 */
export function integrateGrip(
  scenario: object,
  strategyId: StrategyId,
  tolerance = TOLERANCE,
  watch: (sample: Sample) => void = () => {},
): Figures {
  const input = readInput(scenario)
  if (input.drive.noise !== 0 || input.gauge.noise !== 0) throw new Error('Noise is left out: set it to zero.')
  const plant = new Plant(input)
  const integrator = new Integrator(plant, tolerance)
  const encoder = new Encoder(input.servo)
  const currentLoop = new CurrentLoop(input)
  const figures = new FigureBook(input, plant)
  let strategy = strategyOf(strategyId, input)
  let state = plant.start()
  let command = 0
  let nextVoltage = 0

  const { period } = input.drive
  const sampleOf = (time: number | undefined) => (time === undefined ? -1 : Math.round(time / period))
  const lift = sampleOf(liftOf(input))
  const release = sampleOf(input.release?.time)
  const loss = sampleOf(input.powerLoss?.time)
  const samples = Math.round(input.duration / period)
  for (let k = 0; k < samples; k++) {
    const time = k * period
    const servoTick = k % input.servo.every === 0
    if (k === lift && !(release >= 0 && release <= k)) state = plant.lift(time, state)
    if (k === release) state = plant.stand(state)
    if (k === loss) {
      plant.winding = input.powerLoss!.windings === 'open' ? 'open' : 'shorted'
      if (plant.winding === 'open') state[AT.current] = 0
    }
    if (servoTick) {
      encoder.take(state[AT.travel]!)
      if (k === release || (release >= 0 && k > release && !(strategy instanceof Opening)))
        strategy = new Opening(input, time, encoder.travel)
      command = strategy.tick(time, encoder, reading(input, time, state))
    }
    plant.voltage = nextVoltage
    nextVoltage = currentLoop.take(command, state[AT.current]!, encoder.speed)
    plant.derivative(time, state)
    figures.sample(time, state)
    watch({ time, state, near: plant.nearForce, far: plant.farForce, command })
    state = integrator.run(state, time, time + period, figures.step)
    if (plant.part === 'hangs' && slidOf(state) > input.jaws.padLength) state = plant.leave(state)
  }
  return figures.close(state)
}

function reading({ gauge }: Input, time: number, state: number[]): number {
  return rounded((1 + gauge.gainError) * state[AT.gauge]! + gauge.offset + gauge.drift * time, gauge.resolution)
}

class FigureBook {
  private readonly input: Input
  private readonly plant: Plant
  private readonly settled: { from: number; to: number }
  private touch: { time: number; speed: number } | null = null
  private before = { time: 0, gap: Number.NEGATIVE_INFINITY }
  private peak = { force: 0, time: Number.NaN }
  private readonly window = { samples: 0, force: 0, current: 0, jaw: 0 }
  private least = Number.POSITIVE_INFINITY
  private most = Number.NEGATIVE_INFINITY
  private slid = 0
  private winding = Number.NEGATIVE_INFINITY

  constructor(input: Input, plant: Plant) {
    this.input = input
    this.plant = plant
    const ends = [liftOf(input), ...input.arm.moves.map(({ start }) => start), input.duration]
    if (input.release) ends.push(input.release.time)
    if (input.powerLoss) ends.push(input.powerLoss.time)
    const to = Math.min(...ends)
    this.settled = { from: to - SETTLED, to }
  }

  /** After each accepted step; the plant holds the forces of that instant. */
  readonly step = (time: number, y: number[]) => {
    const { nearForce, farForce } = this.plant
    const force = Math.max(nearForce, farForce)
    if (force > this.peak.force) this.peak = { force, time }
    if (this.touch === null) this.look(time, y)
    this.slid = Math.max(this.slid, slidOf(y))
    this.winding = Math.max(this.winding, y[AT.winding]!)
  }

  /** At each sample of the current loop. */
  sample(time: number, y: number[]) {
    const { nearForce, farForce } = this.plant
    const half = this.input.drive.period / 2
    if (time > this.settled.from - half && time < this.settled.to - half) {
      this.window.samples += 1
      this.window.force += (nearForce + farForce) / 2
      this.window.current += y[AT.current]!
      this.window.jaw = y[AT.jaw]!
    }
    if (this.input.arm.moves.some((move) => accelerationOf(move, time) !== 0)) {
      this.least = Math.min(this.least, nearForce, farForce)
      this.most = Math.max(this.most, nearForce, farForce)
    }
  }

  close(y: number[]): Figures {
    const { samples, force, current, jaw } = this.window
    const mean = (sum: number) => (samples > 0 ? sum / samples : null)
    const moved = this.most > Number.NEGATIVE_INFINITY
    return {
      contactTime: this.touch?.time ?? null,
      contactSpeed: this.touch?.speed ?? null,
      peakForce: this.peak.force,
      peakForceTime: this.peak.force > 0 ? this.peak.time : null,
      settledForce: mean(force),
      settledCurrent: mean(current),
      minForceInMove: moved ? this.least : null,
      maxForceInMove: moved ? this.most : null,
      slipDistance: this.slid,
      turned: this.plant.turnedOf(y),
      jawTravel: samples > 0 ? jaw : null,
      dent: Math.max(this.plant.dents.near, this.plant.dents.far),
      windingTemperature: this.winding,
    }
  }

  /** First touch of the driven jaw, between two accepted steps on a straight line. */
  private look(time: number, y: number[]) {
    const gap = y[AT.jaw]! - y[AT.shift]! - this.plant.touch
    if (gap <= 0) {
      this.before = { time, gap }
      return
    }
    const share = Number.isFinite(this.before.gap) ? -this.before.gap / (gap - this.before.gap) : 1
    this.touch = { time: this.before.time + share * (time - this.before.time), speed: y[AT.jawSpeed]! }
  }
}
