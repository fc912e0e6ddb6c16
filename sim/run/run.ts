/** One cycle of a model, carried out by a core, with the observers that were asked for. */
import type { Temperatures } from '../axis/cooling.ts'
import type { Bench } from '../cycle/bench.ts'
import type { Model } from '../model/model.ts'
import { type Core, type Running, sourceCore } from './core.ts'

/** New rows, a column a channel in the order of the job's channels; false asks the run to stop. */
export type OnChunk = (columns: Float64Array[]) => boolean

/** Who looks on. What nobody asks for costs nothing. */
export interface Observers {
  /** What the headline figures are made from. */
  figures?: boolean | undefined
  /** Traces and their fingerprint. */
  record?: boolean | undefined
  /** The traces piece by piece while the run goes on. */
  onChunk?: OnChunk | undefined
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
  /** The receiver of the chunks asked to stop. */
  cancelled: boolean
}

/** Buckets of the record in a chunk handed out while the run goes on. */
const CHUNK = 100

export function runCycle(model: Model, options: CycleOptions = {}): Cycle {
  const { core = sourceCore, start, onChunk, figures = true, untilLost = false } = options
  const record = options.record === true || onChunk !== undefined
  const bench = model.bench
  bench.figuring = figures ? 1 : 0
  bench.recording = record ? 1 : 0
  bench.untilLost = untilLost ? 1 : 0
  bench.axis.heat.state.winding = start?.winding ?? bench.axis.heat.ambient
  bench.axis.heat.state.housing = start?.housing ?? bench.axis.heat.ambient
  const running = core.lay(model)
  running.begin(model.samples)
  const chunks = onChunk ? new Chunks(running, onChunk) : null
  if (chunks) chunks.run(model.samples)
  else running.advance(model.samples)
  running.finish()
  const end = running.bench()
  chunks?.hand(end.record.rows)
  return {
    bench: end,
    columns: record ? running.rows(0, end.record.rows) : null,
    hash: record ? word(end.record.hashHigh) + word(end.record.hashLow) : '',
    cancelled: chunks?.cancelled ?? false,
  }
}

/** Hands out the record of a run piece by piece. */
class Chunks {
  cancelled = false
  private handed = 0
  private readonly running: Running
  private readonly onChunk: OnChunk

  constructor(running: Running, onChunk: OnChunk) {
    this.running = running
    this.onChunk = onChunk
  }

  run(samples: number): void {
    let left = samples
    let going = true
    while (going && left > 0 && !this.cancelled) {
      const periods = Math.min(left, CHUNK * this.running.bench().record.bucket.size)
      going = this.running.advance(periods)
      left -= periods
      this.hand(this.running.bench().record.rows)
    }
  }

  hand(rows: number): void {
    if (this.cancelled || rows === this.handed) return
    this.cancelled = !this.onChunk(this.running.rows(this.handed, rows))
    this.handed = rows
  }
}

const word = (value: number) => value.toString(16).padStart(8, '0')
