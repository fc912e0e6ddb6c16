/** All processor cores of the machine, each with a core of the simulator of its own. */
import { availableParallelism } from 'node:os'
import { isMainThread, parentPort, Worker } from 'node:worker_threads'
import { type Crew, prepared, type TaskName, type Tasks } from '../ask/spread/tasks.ts'
import { Refusal } from '../scenario/index.ts'
import { run } from './core.ts'

interface Order {
  task: TaskName
  shared: unknown
}

/** What a worker is told; the order stands only where it is another one than before. */
interface Telling {
  order: Order | null
  item: unknown
}

type Answer = { kind: 'result'; result: unknown } | { kind: 'refused'; fault: Refusal['fault'] }

/** A worker that dies costs the item that it was at, which is then tried once more by another. */
const TRIES = 2

/** The program's own file, which a worker runs as well. */
let program: URL | null = null

/** True in a worker, which then does what it is told for as long as the process lives. */
export function serves(file: string): boolean {
  program = new URL(file)
  if (isMainThread || !parentPort) return false
  const port = parentPort
  let next: (item: never) => unknown = () => null
  port.on('message', ({ order, item }: Telling) => {
    try {
      if (order) next = prepared(order.task, order.shared as Tasks[TaskName]['shared'], run)
      port.postMessage({ kind: 'result', result: next(item as never) } satisfies Answer)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      port.postMessage({ kind: 'refused', fault: error.fault } satisfies Answer)
    }
  })
  return true
}

/** A worker, the last order that it was given, and who waits for its answer. */
class Hand {
  order: Order | null = null
  waits: { take(answer: Answer): void; fail(error: unknown): void } | null = null
  readonly worker = new Worker(program!)

  constructor() {
    this.worker.on('message', (answer: Answer) => this.finish()?.take(answer))
    this.worker.on('error', (error) => this.finish()?.fail(error))
    this.worker.on('exit', () => this.finish()?.fail(new Error('a worker ended before its work was done')))
  }

  private finish() {
    const { waits } = this
    this.waits = null
    return waits
  }
}

/** Hands that have nothing to do; they do not keep the process alive. */
const idle: Hand[] = []

export const crew: Crew = {
  size: availableParallelism(),
  work: (task, shared, items, told) => new Shift({ task, shared }, items, told as Told).done,
}

type Told = (result: unknown, at: number) => boolean

interface Settle {
  end(): void
  fail(error: unknown): void
}

/** One task on its way. */
class Shift {
  readonly done: Promise<void>
  private readonly order: Order
  private readonly items: unknown[]
  private readonly told: Told
  private readonly waiting: number[]
  private readonly tries: number[]
  private left: number
  private settle: Settle | null = null

  constructor(order: Order, items: unknown[], told: Told) {
    this.order = order
    this.items = items
    this.told = told
    this.waiting = items.map((_, at) => at)
    this.tries = items.map(() => 0)
    this.left = items.length
    this.done = new Promise((resolve, reject) => {
      this.settle = { end: resolve, fail: reject }
    })
    if (this.left === 0) this.close(({ end }) => end())
    for (let n = 0; n < Math.min(crew.size, items.length); n++) this.hire()
  }

  private hire(): void {
    const hand = idle.pop() ?? new Hand()
    hand.worker.ref()
    this.next(hand)
  }

  /** The hand does the next item, or rests. */
  private next(hand: Hand): void {
    const at = this.waiting.shift()
    if (at !== undefined) this.give(hand, at)
    else {
      hand.worker.unref()
      idle.push(hand)
    }
  }

  private give(hand: Hand, at: number): void {
    hand.waits = { take: (answer) => this.take(hand, at, answer), fail: (error) => this.retry(at, error) }
    const { task, shared } = hand.order ?? {}
    const order = shared === this.order.shared && task === this.order.task ? null : this.order
    hand.order = this.order
    this.tries[at]!++
    hand.worker.postMessage({ order, item: this.items[at] } satisfies Telling)
  }

  private take(hand: Hand, at: number, answer: Answer): void {
    if (this.settle && answer.kind === 'refused') this.close(({ fail }) => fail(new Refusal(answer.fault)))
    else if (this.settle && answer.kind === 'result') {
      this.left--
      if (!this.told(answer.result, at) || this.left === 0) this.close(({ end }) => end())
    }
    this.next(hand)
  }

  private retry(at: number, error: unknown): void {
    if (this.tries[at]! >= TRIES) this.close(({ fail }) => fail(error))
    if (!this.settle) return
    this.waiting.unshift(at)
    this.hire()
  }

  /** Hands that are at an item end it, and rest then. */
  private close(tell: (settle: Settle) => void): void {
    const settle = this.settle
    this.settle = null
    this.waiting.length = 0
    if (settle) tell(settle)
  }
}
