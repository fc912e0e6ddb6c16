/**
 * Several simulator workers behind one counter. Work comes in lanes: in a lane the latest job wins and older ones are
 * dropped, so that nothing ever queues behind an answer that nobody wants any more.
 */
import { channelsOf, type GripResult, jobOf, type Traces } from '../../sim/index.ts'
import { type JobEvents, SimulatorClient } from './client.ts'
import { GrowingTraces } from './columns.ts'
import type { GripJob } from './messages.ts'

export interface Listener {
  /** The traces so far, and the share of the run that is done; called for each sign of life. */
  progress?(traces: GrowingTraces, done: number): void
  done(result: GripResult, traces: Traces): void
  failed(message: string): void
}

interface Task {
  lane: string
  job: GripJob
  listener: Listener
  started: number
  dropped: boolean
  restarts: number
}

interface Seat {
  client: SimulatorClient
  task: Task | null
}

/**
 * A run that is expected to end within this time [ms] may do so although a newer one waits: at every step of a drag
 * that the machine can follow an answer is then seen.
 */
const GRACE = 300

/** Workers lost over the same job before it is given up. */
const MOST_RESTARTS = 2

export class SimulatorPool {
  private readonly seats: Seat[]
  private readonly waiting = new Map<string, Task>()
  /** How long the last run of each lane took, or had taken when it was dropped [ms]. */
  private readonly lengths = new Map<string, number>()
  private readonly restarted: () => void

  /** `restarted` is told whenever a worker was lost over a job that is still wanted, and a new one started. */
  constructor(size: number, restarted: () => void) {
    this.restarted = restarted
    this.seats = Array.from({ length: size }, () => this.seat())
  }

  run(lane: string, job: GripJob, listener: Listener) {
    // Looked up first: an idle worker may take the new job up as soon as the older one is dropped.
    const before = this.seats.find(({ task }) => task?.lane === lane && !task.dropped)?.task
    this.waiting.set(lane, { lane, job, listener, started: 0, dropped: false, restarts: 0 })
    if (before) {
      const left = before.started + GRACE - performance.now()
      if (left <= 0 || (this.lengths.get(lane) ?? 0) > GRACE) this.drop(before)
      else setTimeout(() => this.waiting.has(lane) && this.drop(before), left)
    }
    this.fill()
  }

  /** Whether something waits or runs in a lane that is still wanted. */
  holds(lane: string): boolean {
    return this.waiting.has(lane) || this.seats.some(({ task }) => task?.lane === lane && !task.dropped)
  }

  /** Forgets a lane: what waits in it, and what runs. */
  cancel(lane: string) {
    this.waiting.delete(lane)
    for (const { task } of this.seats) if (task?.lane === lane) this.drop(task)
  }

  private seat(): Seat {
    const seat: Seat = { task: null, client: new SimulatorClient(() => this.replace(seat)) }
    return seat
  }

  private drop(task: Task) {
    const seat = this.seats.find((each) => each.task === task)
    if (!seat || task.dropped) return
    task.dropped = true
    this.measure(task)
    seat.client.cancel()
    this.fill()
  }

  private measure(task: Task) {
    this.lengths.set(task.lane, performance.now() - task.started)
  }

  /** Gives waiting jobs to idle workers. */
  private fill() {
    for (const task of [...this.waiting.values()]) {
      const idle = this.seats.find((seat) => !seat.task)
      if (!idle) return
      if (this.seats.some((seat) => seat.task?.lane === task.lane && !seat.task.dropped)) continue
      this.waiting.delete(task.lane)
      this.start(idle, task)
    }
  }

  private start(seat: Seat, task: Task) {
    const traces = new GrowingTraces(channelsOf(jobOf(task.job.scenario)))
    let share = 0
    const end = (tell: () => void) => {
      seat.task = null
      if (!task.dropped) {
        this.measure(task)
        tell()
      }
      this.fill()
    }
    const events: JobEvents = {
      progress(done) {
        share = done
        if (!task.dropped) task.listener.progress?.(traces, share)
      },
      chunk(columns) {
        if (task.dropped) return
        traces.append(columns)
        task.listener.progress?.(traces, share)
      },
      done: (result) => end(() => task.listener.done(result, traces.view())),
      failed: (message) => end(() => task.listener.failed(message)),
      stopped: () => end(() => {}),
    }
    task.started = performance.now()
    seat.task = task
    seat.client.run(task.job, events)
  }

  /** A lost worker: a new one takes its seat, and its job is run again if it is still wanted. */
  private replace(seat: Seat) {
    const { task } = seat
    this.seats[this.seats.indexOf(seat)] = this.seat()
    if (task && !task.dropped) this.restarted()
    if (task && !task.dropped && !this.waiting.has(task.lane)) {
      task.restarts += 1
      if (task.restarts > MOST_RESTARTS) task.listener.failed('The simulator stopped each time it ran this scenario.')
      else this.waiting.set(task.lane, task)
    }
    this.fill()
  }
}
