/** One simulator worker as the page sees it: takes a job, reports what comes of it, and notices when the worker is gone. */
import type { GripResult } from '../../sim/index.ts'
import type { Answer, GripJob, Request } from './messages.ts'
import { keepSimulator, newSimulator, takeSimulator } from './simulators.ts'

export interface JobEvents {
  /** The share of the job that is done. */
  progress(done: number): void
  chunk(columns: Float64Array[]): void
  done(result: GripResult): void
  failed(message: string): void
  /** The job ended early because it was cancelled. */
  stopped(): void
}

/** Silence after which a worker is doubted [ms]. */
const SILENCE = 6000
/** It is given up when it stays silent for so many times as long as another worker takes to start, on this machine in this hour. */
const MARGIN = 5

export class SimulatorClient {
  private worker: Worker
  private job = 0
  private events: JobEvents | null = null
  private timer: ReturnType<typeof setTimeout> | undefined
  private newest: Int32Array | null = null
  /** Started beside a worker that is doubted, and takes its place if that is gone. */
  private spare: Worker | null = null

  private readonly lost: () => void

  /** `lost` is told once when the worker has died, hangs or does not stop; the client is of no use afterwards. */
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
    this.listen()
  }

  /** Asks the running job to stop; without shared memory it cannot be asked, and the worker is ended. */
  cancel() {
    if (!this.events) return
    if (!this.newest) return this.abandon()
    Atomics.store(this.newest, 0, 0)
    this.listen()
  }

  close() {
    this.rest()
    this.events = null
    this.worker.onerror = null
    this.worker.terminate()
  }

  private hear(answer: Answer) {
    if (answer.kind === 'ready' || answer.job !== this.job || !this.events) return
    const events = this.events
    switch (answer.kind) {
      case 'started':
        return this.listen()
      case 'progress':
        this.listen()
        return events.progress(answer.done)
      case 'chunk':
        this.listen()
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
    this.rest()
    this.events = null
  }

  /** From now on a sign of life is expected. */
  private listen() {
    this.rest()
    this.timer = setTimeout(() => this.doubt(), SILENCE)
  }

  private rest() {
    clearTimeout(this.timer)
    if (!this.spare) return
    this.spare.onmessage = null
    this.spare.onerror = null
    keepSimulator(this.spare)
    this.spare = null
  }

  /**
   * Dead, or only slow? How slow the machine is another worker tells that is started now: while that one gets on and this one
   * does not, it is gone; while neither does, there is nothing to be learned.
   */
  private doubt() {
    const began = performance.now()
    this.spare = newSimulator()
    this.spare.onmessage = () => {
      this.timer = setTimeout(() => this.abandon(), MARGIN * (performance.now() - began))
    }
    this.spare.onerror = () => this.abandon()
  }

  private abandon() {
    this.close()
    this.lost()
  }
}
