/** The live plant as the page sees it: a worker of its own that is asked for one piece of time after the other. */
import type { LiveAnswer, LivePiece, LiveRequest } from './live-messages.ts'

export interface LiveEvents {
  piece(piece: LivePiece): void
  /** What was asked for cannot be simulated; the plant is as it was. */
  refused(message: string): void
  /** The worker has died or hangs; the client is of no use afterwards. */
  lost(): void
}

/** Longest wait for a piece [ms]; the first includes the loading of the worker. */
const PATIENCE = 20_000

export class LiveClient {
  /** A piece is on its way. */
  busy = false
  private readonly worker = new Worker(new URL('./live.worker.ts', import.meta.url), { type: 'module' })
  private readonly events: LiveEvents
  private timer: ReturnType<typeof setTimeout> | undefined

  constructor(events: LiveEvents) {
    this.events = events
    this.worker.onmessage = ({ data }: MessageEvent<LiveAnswer>) => this.hear(data)
    this.worker.onerror = () => this.abandon()
    this.worker.onmessageerror = () => this.abandon()
  }

  send(request: Exclude<LiveRequest, { kind: 'advance' }>) {
    this.worker.postMessage(request)
  }

  /** Asks for `seconds` of simulated time within `budget` real milliseconds, unless a piece is still on its way. */
  advance(seconds: number, budget: number) {
    if (this.busy) return
    this.busy = true
    this.timer = setTimeout(() => this.abandon(), PATIENCE)
    this.worker.postMessage({ kind: 'advance', seconds, budget } satisfies LiveRequest)
  }

  close() {
    clearTimeout(this.timer)
    this.worker.onerror = null
    this.worker.terminate()
  }

  private hear(answer: LiveAnswer) {
    if (answer.kind === 'refused') return this.events.refused(answer.message)
    clearTimeout(this.timer)
    this.busy = false
    this.events.piece(answer)
  }

  private abandon() {
    this.close()
    this.events.lost()
  }
}
