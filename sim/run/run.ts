/** One cycle of a model, carried out by a core, with the observers that were asked for. */
import type { Temperatures } from '../axis/cooling.ts'
import type { Bench } from '../cycle/bench.ts'
import type { Model } from '../model/model.ts'
import { type Core, type Running, sourceCore } from './core.ts'

/** New rows, a column a channel in the order of the job's channels; false asks the run to stop. */
export type OnChunk = (columns: Float64Array[]) => boolean

/** Told again and again while a run goes on: the share of it that is done. False asks the run to stop. */
export type OnProgress = (done: number) => boolean

/** What is told of the whole where a run is the part of it between two shares. */
export const partOf = (onProgress: OnProgress | undefined, from: number, to: number): OnProgress | undefined =>
  onProgress && ((done) => onProgress(from + (to - from) * done))

/** Who looks on. What nobody asks for costs nothing. */
export interface Observers {
  /** What the headline figures are made from. */
  figures?: boolean | undefined
  /** Traces and their fingerprint. */
  record?: boolean | undefined
  /** The traces piece by piece while the run goes on. */
  onChunk?: OnChunk | undefined
  onProgress?: OnProgress | undefined
}

export interface CycleOptions extends Observers {
  core?: Core | undefined
  /** Temperatures at the start; ambient if left out. */
  start?: Temperatures | undefined
  /** Ends the run as soon as nothing that still comes can make it good. */
  untilLost?: boolean | undefined
}

export interface Cycle {
  /** The bench at the end, without the columns of its record. */
  bench: Bench
  /** A column a channel; null: not recorded. */
  columns: Float64Array[] | null
  /** Fingerprint of the columns; '' where there are none. */
  hash: string
  /** Who was told of chunks or progress asked to stop. */
  cancelled: boolean
}

/** Buckets of the record in a chunk handed out while the run goes on, and steps of the axis after which the run is heard of. */
const CHUNK = 100
const PIECE = 2e5

export function runCycle(model: Model, options: CycleOptions = {}): Cycle {
  const { core = sourceCore, start, onChunk, onProgress, figures = true, untilLost = false } = options
  const record = options.record === true || onChunk !== undefined
  const bench = model.bench
  bench.figuring = figures ? 1 : 0
  bench.recording = record ? 1 : 0
  bench.untilLost = untilLost ? 1 : 0
  bench.axis.heat.state.winding = start?.winding ?? bench.axis.heat.ambient
  bench.axis.heat.state.housing = start?.housing ?? bench.axis.heat.ambient
  const running = core.lay(model)
  running.begin(model.samples)
  const pieces = onChunk || onProgress ? new Pieces(running, onChunk, onProgress) : null
  if (pieces) pieces.run(model.samples)
  else running.advance(model.samples)
  running.finish()
  const end = running.bench()
  pieces?.hand(end.record.rows)
  return {
    bench: end,
    columns: record ? running.rows(0, end.record.rows) : null,
    hash: record ? word(end.record.hashHigh) + word(end.record.hashLow) : '',
    cancelled: pieces?.cancelled ?? false,
  }
}

/** Carries a run out piece by piece, hands out its record and tells how far it is. */
class Pieces {
  cancelled = false
  private handed = 0
  private readonly running: Running
  private readonly onChunk: OnChunk | undefined
  private readonly onProgress: OnProgress | undefined

  constructor(running: Running, onChunk: OnChunk | undefined, onProgress: OnProgress | undefined) {
    this.running = running
    this.onChunk = onChunk
    this.onProgress = onProgress
  }

  run(samples: number): void {
    const most = Math.max(1, Math.floor(PIECE / this.running.bench().axis.steps))
    let left = samples
    let going = true
    while (going && left > 0 && !this.cancelled) {
      const chunk = this.onChunk ? CHUNK * this.running.bench().record.bucket.size : left
      const periods = Math.min(left, chunk, most)
      going = this.running.advance(periods)
      left -= periods
      this.hand(this.running.bench().record.rows)
      if (this.onProgress?.(1 - left / samples) === false) this.cancelled = true
    }
  }

  hand(rows: number): void {
    if (this.cancelled || rows === this.handed || !this.onChunk) return
    this.cancelled = !this.onChunk(this.running.rows(this.handed, rows))
    this.handed = rows
  }
}

const word = (value: number) => value.toString(16).padStart(8, '0')
