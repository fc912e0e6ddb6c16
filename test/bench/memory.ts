/**
 * The heap after 100 and after 1,000 runs of the opening preset: what a run leaves behind must be nothing. Short runs come
 * first, since the engine's own notes on the code fill some hundred kilobytes over the first thousands of calls.
 */
import { editScenario, PRESETS, STRATEGIES, simulateGrip } from '../../sim/index.ts'
import { goal, row } from './report.ts'

const SHORT_RUNS = 5000
const FIRST = 100
const ALL = 1000
/** Allowed growth over the 900 runs between [bytes a run]; a leaked column of one trace would be over 16,000. */
const NOISE = 100

const OPTIONS = { onChunk: () => true }

function inUse(): number {
  if (!globalThis.gc) throw new Error('run with --expose-gc')
  for (let n = 0; n < 4; n++) globalThis.gc()
  const { heapUsed, arrayBuffers } = process.memoryUsage()
  return heapUsed + arrayBuffers
}

export function memory(): void {
  const { scenario } = PRESETS[0]!
  const short = editScenario(scenario, [
    { path: 'run.duration', value: 0.3 },
    { path: 'arm.moves', value: [] },
    { path: 'arm.lift', value: 0.25 },
  ])
  if (!short.ok) throw new Error(JSON.stringify(short.faults))
  for (let n = 1; n <= SHORT_RUNS; n++) simulateGrip(short.scenario, STRATEGIES[n % STRATEGIES.length]!.id, OPTIONS)
  let atFirst = 0
  for (let n = 1; n <= ALL; n++) {
    simulateGrip(scenario, STRATEGIES[n % STRATEGIES.length]!.id, OPTIONS)
    if (n === FIRST) atFirst = inUse()
  }
  const atEnd = inUse()
  const kilobytes = (bytes: number) => `${(bytes / 1000).toFixed(1)} kB`
  row(`heap and buffers after ${FIRST} runs`, kilobytes(atFirst))
  row(`heap and buffers after ${ALL} runs`, kilobytes(atEnd))
  const growth = (atEnd - atFirst) / (ALL - FIRST)
  goal('growth a run', `${growth.toFixed(1)} bytes`, `≤ ${NOISE} bytes`, growth <= NOISE)
}
