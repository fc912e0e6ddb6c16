/** The simulator's side of the door: runs one job at a time and hands out its traces piece by piece. */
import { CHANNELS, simulateGrip, type Traces } from '../../sim/index.ts'
import { newCore } from './core.ts'
import type { Answer, Request } from './messages.ts'

declare const self: DedicatedWorkerGlobalScope

/** Least time between two pieces [ms]: a run that is quicker hands its traces out whole, which costs the page least. */
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
    held = []
  }
  try {
    const { result, traces, cancelled } = simulateGrip(input.scenario, input.strategy, {
      core,
      onChunk(columns) {
        held.push(input.traces ? columns : [])
        if (performance.now() - last > PACE) {
          last = performance.now()
          streamed = true
          release()
        }
        return wanted()
      },
    })
    if (cancelled) return answer({ kind: 'stopped', job })
    if (input.traces && streamed) release()
    else if (input.traces) send(columnsOf(traces))
    answer({ kind: 'done', job, result })
  } catch (error) {
    answer({ kind: 'failed', job, message: error instanceof Error ? error.message : String(error) })
  }
}

const columnsOf = (traces: Traces) => CHANNELS.map(({ id }) => traces[id])

answer({ kind: 'ready' })
