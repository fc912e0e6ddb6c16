/**
 * Output error: the values of some quantities at which the simulated axis shows what a log has measured, by least squares over
 * whole runs (Ljung, System Identification, 1999, chapter 7). The step of Levenberg and Marquardt is a library's; the differences are
 * runs, and whoever has several workers makes them side by side.
 */
import { Matrix } from 'ml-matrix'
import { type Astray, followsAt } from './astray.ts'
import type { AnswerChannel } from './measured.ts'
import type { Answer, Replayer } from './replay.ts'
import { type Reduced, reduced, stepFrom } from './step.ts'

/** A quantity that is free, with where it starts and what it may be. */
export interface FreeQuantity {
  path: string
  start: number
  least: number
  most: number
  /** A change that is felt and still small. */
  small: number
}

/** Answers of each recording at so many sets of values, a set a row; null: the model refuses the values. */
export type Answers = (sets: number[][]) => Promise<(Answer[] | null)[]>

/** One channel of one recording as the fit sees it. */
export interface Compared {
  recording: number
  channel: AnswerChannel
  /** Rows that count, and what was measured there. */
  rows: Int32Array
  measured: Float64Array
  /** What counts as one: rms of what is left [its unit]. */
  scale: number
}

export interface Fitted {
  values: number[]
  compared: Compared[]
  /** What is left, measured less simulated, of each compared; before: at the values that it started from. */
  left: Float64Array[]
  before: Float64Array[]
  answers: Answer[]
  /** Of what is left, over its scale, by each quantity; a column a quantity. */
  slopes: Matrix
  /** Sets of values that were simulated. */
  runs: number
  /** False: it ended before it had settled. */
  settled: boolean
}

/** Told before each round of runs: the share done, as far as it can be told; false ends the fit. */
export type OnFit = (done: number) => boolean

export class FitStopped extends Error {}

/** Share of the work that is done when the search is. */
const SEARCHED = 0.85
/** Rounds in which the scales of the channels are taken anew, steps in each, and what counts as settled. */
const ROUNDS = 3
const STEPS = 12
const SETTLED = 1e-3
/** Share of the cost that a step must promise for a run to be worth its while. */
const PROMISING = SETTLED / 10
/** Scale of a channel that the model meets exactly, as a share of its own size. */
const EXACT = 1e-9
const DAMPING = { first: 1e-3, up: 10, down: 0.2, most: 1e6 }

/** Channels of a recording that are compared, in the order of what tells more. */
export function comparedOf(
  logs: readonly (Pick<Replayer, 'measured' | 'setup'> & { astray: Astray[] })[],
  wanted?: readonly AnswerChannel[],
): Compared[] {
  return logs.flatMap(({ measured, setup, astray }, recording) => {
    const { channels } = measured
    const follows = followsAt(measured, astray)
    const drive: AnswerChannel = channels.current ? 'current' : 'command'
    const all: AnswerChannel[] = [
      ...(setup.contact || setup.drivenBy === 'current'
        ? ([channels.motorTravel ? 'motorTravel' : 'speed'] as const)
        : []),
      ...(channels.travel ? (['travel'] as const) : []),
      ...(setup.drivenBy === 'current' ? [] : [drive]),
      'voltage',
      ...(setup.contact ? (['force'] as const) : []),
    ]
    return (wanted ?? all).flatMap((channel) => {
      const column = channels[channel]
      if (!column) return []
      const rows = Int32Array.from(column.keys()).filter((k) => Number.isFinite(column[k]!) && follows(k))
      if (rows.length === 0) return []
      const values = Float64Array.from(rows, (k) => column[k]!)
      return [{ recording, channel, rows, measured: values, scale: Math.max(rmsAbout(values), Number.MIN_VALUE) }]
    })
  })
}

/** Throws a FitStopped where it is told to stop, a RangeError where the model refuses the values that it starts from. */
export async function fit(
  free: readonly FreeQuantity[],
  compared: Compared[],
  answers: Answers,
  told: OnFit = () => true,
): Promise<Fitted> {
  const search = new Search(free, compared, answers, told)
  await search.begin()
  const { left: before } = search.best
  // The scale of a channel that is alone decides nothing.
  const rounds = compared.length > 1 ? ROUNDS : 1
  for (let round = 0; round < rounds; round++) {
    search.rescale()
    const moved = await search.descend(round / rounds, 1 / rounds)
    if (!moved && round > 0) break
  }
  search.rescale()
  return search.end(before)
}

interface Point {
  values: number[]
  answers: Answer[]
  left: Float64Array[]
}

class Search {
  best: Point = { values: [], answers: [], left: [] }
  private readonly free: readonly FreeQuantity[]
  private readonly compared: Compared[]
  private readonly ask: Answers
  private readonly told: OnFit
  private runs = 0
  private settled = false
  private damping = DAMPING.first
  private done = 0

  constructor(free: readonly FreeQuantity[], compared: Compared[], ask: Answers, told: OnFit) {
    this.free = free
    this.compared = compared.map((each) => ({ ...each }))
    this.ask = ask
    this.told = told
  }

  async begin(): Promise<void> {
    const [point] = await this.at([this.free.map(({ start }) => start)])
    if (!point) throw new RangeError('the model cannot be run with the values at the start')
    this.best = point
  }

  /** What is left is the measure of each channel, so that each counts by how well it can be met. */
  rescale(): void {
    for (const [c, each] of this.compared.entries())
      each.scale = Math.max(rms(this.best.left[c]!), EXACT * rms(each.measured), Number.MIN_VALUE)
  }

  /** Steps until they no longer help; whether any did. */
  async descend(from: number, share: number): Promise<boolean> {
    let moved = false
    this.damping = DAMPING.first
    this.settled = false
    for (let n = 0; n < STEPS && !this.settled; n++) {
      this.progress((from + share * (1 - 0.6 ** n)) * SEARCHED)
      const slopes = await this.slopes(false)
      const gain = await this.step(slopes)
      moved ||= gain > 0
      this.settled = gain < SETTLED
    }
    return moved
  }

  async end(before: Float64Array[]): Promise<Fitted> {
    this.progress(SEARCHED)
    const { values, answers, left } = this.best
    const slopes = await this.slopes(true)
    return { values, compared: this.compared, left, before, answers, slopes, runs: this.runs, settled: this.settled }
  }

  private progress(done: number): void {
    this.done = Math.max(this.done, done)
    if (!this.told(this.done)) throw new FitStopped()
  }

  private async at(sets: number[][]): Promise<(Point | null)[]> {
    this.runs += sets.length
    const all = await this.ask(sets)
    return all.map((answers, n) => {
      if (!answers) return null
      const left = this.compared.map(({ recording, channel, rows, measured }) => {
        const shown = answers[recording]![channel]
        return measured.map((value, k) => value - shown[rows[k]!]!)
      })
      return left.every((each) => each.every(Number.isFinite)) ? { values: sets[n]!, answers, left } : null
    })
  }

  private cost({ left }: Point): number {
    return left.reduce((sum, each, c) => sum + squares(each) / this.compared[c]!.scale ** 2, 0)
  }

  private stacked({ left }: Point): Float64Array {
    const made = new Float64Array(left.reduce((sum, each) => sum + each.length, 0))
    let at = 0
    for (const [c, each] of left.entries()) for (const value of each) made[at++] = value / this.compared[c]!.scale
    return made
  }

  /** Of what is left over its scale, by each quantity. */
  private async slopes(central: boolean): Promise<Matrix> {
    const { values } = this.best
    const moved = this.free.flatMap(({ small, least, most }, p) => {
      const up = Math.min(most, values[p]! + small)
      const down = Math.max(least, values[p]! - small)
      const ends = central ? [down, up] : [up > values[p]! ? up : down]
      return ends.map((value) => values.map((each, q) => (q === p ? value : each)))
    })
    const points = await this.at(moved)
    const base = this.stacked(this.best)
    const slopes = new Matrix(base.length, this.free.length)
    for (const p of this.free.keys()) {
      const own = central ? [points[2 * p], points[2 * p + 1]] : [null, points[p]]
      const [from, to] = own.map((point) => (point ? { x: point.values[p]!, left: this.stacked(point) } : null))
      const a = from ?? { x: values[p]!, left: base }
      const b = to ?? { x: values[p]!, left: base }
      if (b.x === a.x) continue
      for (let k = 0; k < base.length; k++) slopes.set(k, p, (b.left[k]! - a.left[k]!) / (b.x - a.x))
    }
    return slopes
  }

  /** Share of the cost that a step has saved, 0 where none could be found. */
  private async step(slopes: Matrix): Promise<number> {
    const cost = this.cost(this.best)
    const small = reduced(this.stacked(this.best), slopes)
    while (this.damping <= DAMPING.most) {
      const values = stepFrom({
        values: this.best.values,
        ...small,
        least: this.free.map(({ least }) => least),
        most: this.free.map(({ most }) => most),
        damping: this.damping,
      })
      const worth = promised(small, values, this.best.values) > PROMISING * cost
      const [point] = worth ? await this.at([values]) : [null]
      const next = point ? this.cost(point) : Number.POSITIVE_INFINITY
      if (point && next < cost) {
        this.best = point
        this.damping = Math.max(1e-9, this.damping * DAMPING.down)
        return 1 - next / cost
      }
      this.damping *= DAMPING.up
    }
    return 0
  }
}

/** What a step would save of the cost if all were straight. */
function promised({ left, slopes }: Reduced, values: readonly number[], best: readonly number[]): number {
  const there = left.map((each, k) =>
    values.reduce((sum, value, p) => sum + slopes.get(k, p) * (value - best[p]!), each),
  )
  return squares(left) - squares(there)
}

const squares = (values: Float64Array) => values.reduce((sum, each) => sum + each * each, 0)
export const rms = (values: Float64Array) => Math.sqrt(squares(values) / Math.max(1, values.length))
const rmsAbout = (values: Float64Array) => {
  const mean = values.reduce((sum, each) => sum + each, 0) / values.length
  return rms(values.map((each) => each - mean))
}
