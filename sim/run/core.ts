/** The core that carries out cycles: the files of the simulator as TypeScript, or the same compiled ahead of time. */
import type { Bench } from '../cycle/bench.ts'
import * as source from '../cycle/core.ts'
import { copyBlock, Memory } from './mirror.ts'

/** A bench that runs. */
export interface Running {
  /** From rest, for so many samples of the current loop. */
  begin(samples: number): void
  /** So many periods on; false once the run has ended before its time. */
  advance(periods: number): boolean
  /** Closes the record and the figures. */
  finish(): void
  /** The bench as it stands, without the columns of its record. */
  bench(): Bench
  /** Rows of the record from one on to another, a column a channel. */
  rows(from: number, to: number): Float64Array[]
}

export interface Core {
  /** A bench of its own with the constants and the state of `bench`; the one before is gone. */
  lay(bench: Bench, load: number, machine: number): Running
}

/** Runs the simulator's files as they are. */
export const sourceCore: Core = {
  lay(bench, load, machine) {
    const own = source.build(load, machine)
    copyBlock(bench, own)
    return {
      begin: (samples) => own.begin(samples),
      advance: (periods) => own.advance(periods),
      finish: () => own.finish(),
      bench: () => own,
      rows: (from, to) => rowsOf(own, own.record.columns, from, to),
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
  reserve(length: number): number
  clear(): void
}

/** Runs an instance of the compiled module. */
export function compiledCore(exports: object): Core {
  const core = exports as Exports
  const memory = new Memory(core.memory, core.reserve)
  return {
    lay(given, load, machine) {
      core.clear()
      const address = core.build(load, machine)
      memory.write(given, address)
      const own = source.build(load, machine)
      return {
        begin: (samples) => core.begin(address, samples),
        advance: (periods) => core.advance(address, periods) !== 0,
        finish: () => core.finish(address),
        bench() {
          memory.read(own, address)
          return own
        },
        rows: (from, to) => rowsOf(own, memory.numbers(own, address, ['record', 'columns']), from, to),
      }
    },
  }
}

/** `bench` has been read since its record began. */
function rowsOf({ record }: Bench, columns: Float64Array, from: number, to: number): Float64Array[] {
  const { bucket, stride } = record
  return Array.from({ length: bucket.width }, (_, c) => columns.slice(c * stride + from, c * stride + to))
}
