/** One simulator worker as the page sees it: takes a job, reports what comes of it, and notices when the worker is gone. */
import type { GripResult } from '../../sim/index.ts'
import type { Answer, GripJob, Request } from './messages.ts'
import { takeSimulator } from './simulators.ts'

export interface JobEvents {
  chunk(columns: Float64Array[]): void
  done(result: GripResult): void
  failed(message: string): void
  /** The job ended early because it was cancelled. */
  stopped(): void
}

/** Longest time without a sign of life [ms]: while the worker loads, until a job starts, between two pieces of a run, after a cancellation. */
const PATIENCE = { loading: 20_000, start: 6_000, piece: 15_000, stop: 2_000 }

export class SimulatorClient {
  private worker: Worker
  private loaded = false
  private job = 0
  private events: JobEvents | null = null
  private timer: ReturnType<typeof setTimeout> | undefined
  private newest: Int32Array | null = null

  private readonly lost: () => void

  /** `lost` is told once when the worker has died or hangs; the client is of no use afterwards. */
  constructor(lost: () => void) {
    this.lost = lost
    if (globalThis.crossOriginIsolated) this.newest = new Int32Array(new SharedArrayBuffer(4))
    this.worker = takeSimulator()
    this.worker.onmessage = ({ data }: MessageEvent<Answer>) => this.hear(data)
    this.worker.onerror = () => this.abandon()
    this.worker.onmessageerror = () => this.abandon()
  }

  get busy() {
    return this.events !== null
  }

  run(input: GripJob, events: JobEvents) {
    this.job += 1
    this.events = events
    if (this.newest) Atomics.store(this.newest, 0, this.job)
    const request: Request = { kind: 'grip', job: this.job, input, newest: this.newest }
    this.worker.postMessage(request)
    this.expect(this.loaded ? PATIENCE.start : PATIENCE.loading)
  }

  /** Asks the running job to stop; without shared memory it runs to its end unheard. */
  cancel() {
    if (!this.events) return
    if (this.newest) Atomics.store(this.newest, 0, 0)
    this.expect(PATIENCE.stop)
  }

  close() {
    clearTimeout(this.timer)
    this.events = null
    this.worker.onerror = null
    this.worker.terminate()
  }

  private hear(answer: Answer) {
    this.loaded = true
    if (answer.kind === 'ready' || answer.job !== this.job || !this.events) return
    const events = this.events
    switch (answer.kind) {
      case 'started':
        return this.expect(PATIENCE.piece)
      case 'chunk':
        this.expect(PATIENCE.piece)
        return events.chunk(answer.columns)
      case 'done':
        this.finish()
        return events.done(answer.result)
      case 'failed':
        this.finish()
        return events.failed(answer.message)
      case 'stopped':
        this.finish()
        return events.stopped()
    }
  }

  private finish() {
    clearTimeout(this.timer)
    this.events = null
  }

  private expect(within: number) {
    clearTimeout(this.timer)
    this.timer = setTimeout(() => this.abandon(), within)
  }

  private abandon() {
    this.close()
    this.lost()
  }
}
