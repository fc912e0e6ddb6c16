/** Runs one study and hands out its items as they come; to stop it, the page ends the worker. */
import '../../sim/others.ts'
import { runnerOn } from '../../sim/index.ts'
import { newCore } from './core.ts'
import { runStudy, type StudyAnswer, type StudyRequest } from './studies.ts'

declare const self: DedicatedWorkerGlobalScope

const run = runnerOn(newCore())

const answer = (message: StudyAnswer) => self.postMessage(message)

self.onmessage = ({ data }: MessageEvent<StudyRequest>) => {
  try {
    for (const item of runStudy(data, run)) answer({ kind: 'item', item })
    answer({ kind: 'done' })
  } catch (error) {
    answer({ kind: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
}
