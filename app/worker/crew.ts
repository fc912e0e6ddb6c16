/** The page's crew for studies of many grips: a worker for each processor core, kept from one study to the next. */
import { type Answer, type Crew, crewOf, type Hand, type Telling } from '../../sim/index.ts'

/** Beyond this the page itself, and the memory, would feel it. */
const MOST = 8

const LOST = 'a worker ended before its work was done'

class PageHand implements Hand {
  private readonly worker = new Worker(new URL('./crew.worker.ts', import.meta.url), { type: 'module' })
  private readonly waits: { take(answer: Answer): void; fail(error: unknown): void }[] = []
  private lost = false

  constructor() {
    this.worker.onmessage = ({ data }: MessageEvent<Answer>) => this.waits.shift()?.take(data)
    this.worker.onerror = () => {
      this.lost = true
      this.worker.terminate()
      this.failAll(new Error(LOST))
    }
  }

  tell(telling: Telling): Promise<Answer> {
    if (this.lost) return Promise.reject(new Error(LOST))
    return new Promise((take, fail) => {
      this.waits.push({ take, fail })
      this.worker.postMessage(telling)
    })
  }

  rest(): void {}

  rouse(): void {}

  private failAll(error: unknown) {
    for (const { fail } of this.waits.splice(0)) fail(error)
  }
}

const cores = () => Math.max(1, Math.min(navigator.hardwareConcurrency || 2, MOST))

let hired: ReturnType<typeof crewOf> | null = null
const own = () => {
  hired ??= crewOf(cores(), () => new PageHand())
  return hired
}

export const crew: Crew = {
  get size() {
    return cores()
  },
  work: (...given) => own().work(...given),
}

/** Starts the workers before there is anything to do, where there soon will be. */
export const readyCrew = () => own().ready()
