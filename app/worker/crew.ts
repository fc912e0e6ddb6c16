/** The page's crew for studies of many grips: a worker for each processor core, kept from one study to the next. */
import { type Answer, type Crew, crewOf, type Hand, Owed, type Telling } from '../../sim/index.ts'

/** Beyond this the page itself, and the memory, would feel it. */
const MOST = 8

const LOST = 'a worker ended before its work was done'

class PageHand implements Hand {
  private readonly worker = new Worker(new URL('./crew.worker.ts', import.meta.url), { type: 'module' })
  private readonly owed = new Owed()
  private lost = false

  constructor() {
    this.worker.onmessage = ({ data }: MessageEvent<Answer>) => this.owed.take(data)
    this.worker.onerror = () => {
      this.lost = true
      this.worker.terminate()
      this.owed.fail(new Error(LOST))
    }
  }

  async tell(telling: Telling): Promise<Answer> {
    if (this.lost) throw new Error(LOST)
    this.worker.postMessage(telling)
    return this.owed.next()
  }

  rest(): void {}

  rouse(): void {}
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
