import { forget, type Numbers, numbers } from '../core/native.ts'
import { loadOf } from '../job/loads.ts'
import { machineOf } from '../strategy/machines.ts'
import { Bench } from './bench.ts'

/** A bench for a job and a strategy, by their places in the registries; constants at their neutral values. */
export function build(load: i32, machine: i32): Bench {
  return new Bench(loadOf(load), machineOf(machine))
}

export function begin(bench: Bench, samples: f64): void {
  bench.begin(samples)
}

export function advance(bench: Bench, periods: i32): bool {
  return bench.advance(periods)
}

export function finish(bench: Bench): void {
  bench.finish()
}

export function resume(bench: Bench, size: f64, buckets: f64): void {
  bench.resume(size, buckets)
}

export function rewind(bench: Bench): void {
  bench.record.rewind()
}

export function reserve(length: i32): Numbers {
  return numbers(length)
}

export function clear(): void {
  forget()
}
