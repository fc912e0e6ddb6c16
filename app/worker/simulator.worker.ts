/** The simulator's side of the door: runs one job at a time and hands out its traces piece by piece. */
import '../../sim/others.ts'
import { channelsOf, jobOf, judgeGrip, type Scenario, simulateGrip, type Traces } from '../../sim/index.ts'
import { newCore } from './core.ts'
import type { Answer, Request } from './messages.ts'

declare const self: DedicatedWorkerGlobalScope

/** Least time between two signs of life [ms]: a run that is quicker hands its traces out whole, which costs the page least. */
const PACE = 50

const core = newCore()

const answer = (message: Answer, transfer: Transferable[] = []) => self.postMessage(message, transfer)

self.onmessage = ({ data: { job, input, newest } }: MessageEvent<Request>) => {
  const wanted = () => newest === null || Atomics.load(newest, 0) === job
  if (!wanted()) return answer({ kind: 'stopped', job })
  answer({ kind: 'started', job })
  const send = (columns: Float64Array[]) =>
    answer(
      { kind: 'chunk', job, columns },
      columns.map((column) => column.buffer as ArrayBuffer),
    )
  let held: Float64Array[][] = []
  let streamed = false
  let last = performance.now()
  const release = () => {
    for (const columns of held) send(columns)
    streamed ||= held.length > 0
    held = []
  }
  const onProgress = (done: number) => {
    if (performance.now() - last > PACE) {
      last = performance.now()
      answer({ kind: 'progress', job, done })
      release()
    }
    return wanted()
  }
  const onChunk = (columns: Float64Array[]) => {
    held.push(columns)
    return wanted()
  }
  try {
    const { scenario, strategy, traces } = input
    const ran = traces
      ? simulateGrip(scenario, strategy, { core, onChunk, onProgress })
      : { ...judgeGrip(scenario, strategy, { core, onProgress }), traces: null }
    if (!wanted()) return answer({ kind: 'stopped', job })
    if (ran.traces && streamed) release()
    else if (ran.traces) send(columnsOf(scenario, ran.traces))
    answer({ kind: 'done', job, result: ran.result })
  } catch (error) {
    answer({ kind: 'failed', job, message: error instanceof Error ? error.message : String(error) })
  }
}

/** Columns of the job that the scenario describes. */
const columnsOf = (scenario: Scenario, traces: Traces) =>
  channelsOf(jobOf(scenario)).map(({ id }) => (traces as Record<string, Float64Array>)[id]!)

answer({ kind: 'ready' })
