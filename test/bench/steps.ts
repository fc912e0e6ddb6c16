/**
 * What a step of each preset takes beside one of the opening preset, all that a sample takes included. The work of some jobs is more than
 * that of a grip, but where a row stands out there is something to find: divisions in a chain, or a decay among the subnormal numbers.
 * Processor time of single cycles without a record, in turns; the least of each counts.
 */
import base64 from 'virtual:core'
import { ALL_PRESETS, compiledCore, jobOf, strategiesOn } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { runCycle } from '../../sim/run/run.ts'
import { processorTime } from './clock.ts'
import { row } from './report.ts'
import { least } from './stats.ts'

const ROUNDS = 7

export function steps(): void {
  const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)
  const models = ALL_PRESETS.map(({ id, scenario }) => ({
    id,
    models: strategiesOn(jobOf(scenario)).map((strategy) => modelOf(scenario, strategy)),
    times: [] as number[],
  }))
  for (let round = 0; round < ROUNDS; round++)
    for (const { models: each, times } of models) {
      const count = each.reduce((sum, { samples, bench }) => sum + samples * bench.axis.steps, 0)
      times.push(processorTime(() => each.map((model) => runCycle(model, { core }))) / count)
    }
  const first = least(models[0]!.times)
  for (const { id, times } of models)
    row(`a step of ${id}`, `${(least(times) / first).toFixed(2)} of the opening preset's`)
}
