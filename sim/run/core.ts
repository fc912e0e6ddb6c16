/** The core that carries out cycles: the files of the simulator as TypeScript, or the same compiled ahead of time. */
import type { Bench } from '../cycle/bench.ts'
import type { Model } from '../model/model.ts'
import { copyBlock, Memory } from './mirror.ts'

/** A bench that runs. */
export interface Running {
  /** From rest, for so many samples of the current loop. */
  begin(samples: number): void
  /** From the state that was laid, with room in the record for so many buckets of so many samples. */
  resume(size: number, buckets: number): void
  /** Empties the record. */
  rewind(): void
  /** Reads the bench whole, lets it be changed, and lays it down again. */
  change(edit: (bench: Bench) => void): void
  /** So many periods on; false once the run has ended before its time. */
  advance(periods: number): boolean
  /** Closes the record and the figures. */
  finish(): void
  /** The bench as it stands, without the columns of its record. */
  bench(): Bench
  /** A copy of the array that lies there, by the names of the fields on the way to it. */
  array(...path: string[]): Float64Array
  /** Rows of the record from one on to another, a column a channel. */
  rows(from: number, to: number): Float64Array[]
}

export interface Core {
  /** A bench of its own with the constants and the state of the model's; of a compiled core, the one before is gone. */
  lay(model: Pick<Model, 'bench' | 'make' | 'load' | 'machine'>): Running
}

/** Runs the simulator's files as they are. */
export const sourceCore: Core = {
  lay({ bench, make }) {
    const own = make()
    copyBlock(bench, own)
    return {
      begin: (samples) => own.begin(samples),
      resume: (size, buckets) => own.resume(size, buckets),
      rewind: () => own.record.rewind(),
      change: (edit) => edit(own),
      advance: (periods) => own.advance(periods),
      finish: () => own.finish(),
      bench: () => own,
      array: (...path) =>
        path.reduce<unknown>((at, name) => (at as Record<string, unknown>)[name], own) as Float64Array,
      rows: (from, to) => rowsOf(own.record, own.record.columns, from, to),
    }
  },
}

/** What the compiled module exports; a bench or an array is an address. */
interface Exports {
  memory: { buffer: ArrayBuffer }
  build(load: number, machine: number): number
  begin(bench: number, samples: number): void
  advance(bench: number, periods: number): number
  finish(bench: number): void
  resume(bench: number, size: number, buckets: number): void
  rewind(bench: number): void
  reserve(length: number): number
  clear(): void
}

/** Runs an instance of the compiled module. */
export function compiledCore(exports: object): Core {
  const core = exports as Exports
  const memory = new Memory(core.memory, core.reserve)
  return {
    lay({ bench, make, load, machine }) {
      core.clear()
      const address = core.build(load, machine)
      memory.write(bench, address)
      const own = make()
      return {
        begin: (samples) => core.begin(address, samples),
        resume(size, buckets) {
          core.resume(address, size, buckets)
          memory.read(own, address, false)
        },
        rewind: () => core.rewind(address),
        change(edit) {
          memory.read(own, address, true)
          edit(own)
          memory.write(own, address)
        },
        advance: (periods) => core.advance(address, periods) !== 0,
        finish: () => core.finish(address),
        bench() {
          memory.read(own, address, false)
          return own
        },
        array: (...path) => memory.numbers(own, address, path).slice(),
        rows: (from, to) => rowsOf(own.record, memory.numbers(own, address, ['record', 'columns']), from, to),
      }
    },
  }
}

/** The bench of the record has been read since it began. */
function rowsOf({ bucket, stride }: Bench['record'], columns: Float64Array, from: number, to: number): Float64Array[] {
  return Array.from({ length: bucket.width }, (_, c) => columns.slice(c * stride + from, c * stride + to))
}
