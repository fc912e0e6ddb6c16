/** All processor cores of the machine, each with a core of the simulator of its own; without the program, the process that asks. */
import { availableParallelism } from 'node:os'
import { isMainThread, parentPort, Worker } from 'node:worker_threads'
import { type Answer, answering, crewOf, type Hand, Owed, type Telling } from '../ask/spread/crew.ts'
import { core, run } from './core.ts'

const LOST = 'a worker ended before its work was done'

/** The program's own file, which a worker runs as well; null where there is none, as in tests. */
let program: URL | null = null

/** True in a worker, which then does what it is told for as long as the process lives. */
export function serves(file: string): boolean {
  program = new URL(file)
  if (isMainThread || !parentPort) return false
  const port = parentPort
  const answer = answering(run, core)
  port.on('message', (telling: Telling) => port.postMessage(answer(telling)))
  return true
}

class Thread implements Hand {
  private readonly worker: Worker
  private readonly owed = new Owed()
  private lost = false

  constructor(file: URL) {
    this.worker = new Worker(file)
    this.worker.on('message', (answer: Answer) => this.owed.take(answer))
    this.worker.on('error', (error) => this.owed.fail(error))
    this.worker.on('exit', () => {
      this.lost = true
      this.owed.fail(new Error(LOST))
    })
  }

  async tell(telling: Telling): Promise<Answer> {
    if (this.lost) throw new Error(LOST)
    this.worker.postMessage(telling)
    return this.owed.next()
  }

  /** One that has nothing to do does not keep the process alive. */
  rest(): void {
    this.worker.unref()
  }

  rouse(): void {
    this.worker.ref()
  }
}

class Own implements Hand {
  private readonly answer = answering(run, core)

  async tell(telling: Telling): Promise<Answer> {
    return this.answer(telling)
  }

  rest(): void {}
  rouse(): void {}
}

export const crew = crewOf(availableParallelism(), () => (program ? new Thread(program) : new Own()))
