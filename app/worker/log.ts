/** The log worker as the page sees it: opened when it is first asked, and anew after it broke. */
import type { LogAnswer, LogRequest } from './log-messages.ts'

export interface LogWorker {
  ask(request: LogRequest): void
}

/** `lost`: it broke, and with it all that it kept. */
export function logWorker(hear: (answer: LogAnswer) => void, lost: () => void): LogWorker {
  let worker: Worker | null = null
  const open = () => {
    const opened = new Worker(new URL('./log.worker.ts', import.meta.url), { type: 'module' })
    opened.onmessage = ({ data }: MessageEvent<LogAnswer>) => hear(data)
    opened.onerror = () => {
      opened.terminate()
      worker = null
      lost()
    }
    return opened
  }
  return {
    ask(request) {
      worker ??= open()
      worker.postMessage(request)
    },
  }
}
