/** Keeps the logs that are open in the page, and fits to them with hands of its own, so that the page stays free. */
import '../../sim/others.ts'
import { crew } from './crew.ts'
import { LogDesk } from './log-desk.ts'
import type { LogRequest } from './log-messages.ts'

declare const self: DedicatedWorkerGlobalScope

const desk = new LogDesk(crew, (answer) => self.postMessage(answer))

self.onmessage = ({ data }: MessageEvent<LogRequest>) => {
  desk.take(data)
}
