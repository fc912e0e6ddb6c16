import { LogDesk } from '../../../app/worker/log-desk.ts'
import type { LogAnswer, LogRequest } from '../../../app/worker/log-messages.ts'
import { crewHere } from '../../../sim/ask/spread/tasks.ts'
import { core, run } from '../../../sim/cli/core.ts'

/** The log worker in this thread; the store keeps its own from file to file. */
export class DeskWorker {
  onmessage: (event: { data: LogAnswer }) => void = () => {}
  onerror: () => void = () => {}
  readonly desk = new LogDesk(crewHere(run, core), (data) => this.onmessage({ data }))
  static last: DeskWorker | null = null
  constructor() {
    DeskWorker.last = this
  }
  postMessage(request: LogRequest) {
    this.desk.take(request)
  }
  terminate() {}
}
