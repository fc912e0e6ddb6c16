/** The simulator's side of the door: runs one job at a time and hands out its traces piece by piece. */
import { simulateGrip } from '../../sim/index.ts'
import type { Answer, Request } from './messages.ts'

declare const self: DedicatedWorkerGlobalScope

const answer = (message: Answer, transfer: Transferable[] = []) => self.postMessage(message, transfer)

self.onmessage = ({ data: { job, input, newest } }: MessageEvent<Request>) => {
  const wanted = () => newest === null || Atomics.load(newest, 0) === job
  if (!wanted()) return answer({ kind: 'stopped', job })
  answer({ kind: 'started', job })
  try {
    const { result, cancelled } = simulateGrip(input.scenario, input.strategy, {
      onChunk(columns) {
        const unseen = input.traces ? columns : []
        answer(
          { kind: 'chunk', job, columns: unseen },
          unseen.map((column) => column.buffer as ArrayBuffer),
        )
        return wanted()
      },
    })
    answer(cancelled ? { kind: 'stopped', job } : { kind: 'done', job, result })
  } catch (error) {
    answer({ kind: 'failed', job, message: error instanceof Error ? error.message : String(error) })
  }
}

answer({ kind: 'ready' })
