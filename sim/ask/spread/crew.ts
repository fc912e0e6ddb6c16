/** Shares the items of a task out among hands: workers that each do one item at a time, whatever they are made of. */
import type { Core } from '../../run/core.ts'
import { Refusal } from '../../scenario/index.ts'
import type { Runner } from '../runner.ts'
import { type Crew, prepared, type TaskName, type Tasks } from './tasks.ts'

interface Order {
  task: TaskName
  shared: unknown
}

/** What a worker is told, plain data; the order stands only where it is another one than before. */
export interface Telling {
  order: Order | null
  item: unknown
}

export type Answer = { kind: 'result'; result: unknown } | { kind: 'refused'; fault: Refusal['fault'] }

/** The worker's side: answers one telling after the other. Throws what is no Refusal. */
export function answering(run: Runner, core: Core): (telling: Telling) => Answer {
  let next: (item: never) => unknown = () => null
  return ({ order, item }) => {
    try {
      if (order) next = prepared(order.task, order.shared as Tasks[TaskName]['shared'], run, core)
      return { kind: 'result', result: next(item as never) }
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      return { kind: 'refused', fault: error.fault }
    }
  }
}

/** A worker as the one sees it who gives it work. */
export interface Hand {
  /** One telling after the other, also where several wait. Rejects where the worker is lost; the hand is of no use then. */
  tell(telling: Telling): Promise<Answer>
  /** Nothing to do for now; work comes. */
  rest(): void
  rouse(): void
}

/** The answers that a worker owes, in the order in which it was told. */
export class Owed {
  private readonly waits: { take(answer: Answer): void; fail(error: unknown): void }[] = []

  next(): Promise<Answer> {
    return new Promise((take, fail) => {
      this.waits.push({ take, fail })
    })
  }

  take(answer: Answer): void {
    this.waits.shift()?.take(answer)
  }

  /** The worker is lost. */
  fail(error: unknown): void {
    for (const { fail } of this.waits.splice(0)) fail(error)
  }
}

/** A worker that dies costs the item that it was at, which is then tried once more by another. */
const TRIES = 2
/** Items that a hand has at once: the one that it is at and, while there are many left, the next, so that it never waits to be told. */
const AHEAD = 2

/** `size` hands work on each task at once; who has nothing to do is kept for the next. `ready` hires them before there is work. */
export function crewOf(size: number, hire: () => Hand): Crew & { ready(): void } {
  const idle: Hired[] = []
  const hired = (): Hired => ({ hand: hire(), order: null, has: 0, lost: false })
  const rest = (one: Hired) => {
    one.hand.rest()
    idle.push(one)
  }
  return {
    size,
    ready() {
      while (idle.length < size) rest(hired())
    },
    work: (task, shared, items, told) => {
      const office: Office = { size, take: () => idle.pop() ?? hired(), rest }
      return new Shift({ task, shared }, items, told as Told, office).done
    },
  }
}

/** A hand, the last order that it was given, and how many items it has. */
interface Hired {
  hand: Hand
  order: Order | null
  has: number
  lost: boolean
}

/** Where hands come from and go to. */
interface Office {
  size: number
  take(): Hired
  rest(one: Hired): void
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
  private readonly office: Office
  /** The next item that nobody has had, and those that are to be tried once more. */
  private place = 0
  private readonly again: number[] = []
  private readonly tries: number[]
  private left: number
  private settle: Settle | null = null

  constructor(order: Order, items: unknown[], told: Told, office: Office) {
    this.order = order
    this.items = items
    this.told = told
    this.office = office
    this.tries = items.map(() => 0)
    this.left = items.length
    this.done = new Promise((resolve, reject) => {
      this.settle = { end: resolve, fail: reject }
    })
    if (this.left === 0) this.close(({ end }) => end())
    for (let n = 0; n < Math.min(office.size, items.length); n++) this.hire()
  }

  private hire(): void {
    const one = this.office.take()
    one.hand.rouse()
    this.next(one)
  }

  /** The hand goes on with the next item, or rests. */
  private next(one: Hired): void {
    while (one.has < (this.isLong() ? AHEAD : 1)) {
      const at = this.again.pop() ?? (this.place < this.items.length ? this.place++ : undefined)
      if (at === undefined) break
      this.give(one, at)
    }
    if (one.has === 0) this.office.rest(one)
  }

  /** So many items are left that none is taken from a hand that would have nothing to do. */
  private isLong(): boolean {
    return this.items.length - this.place >= AHEAD * this.office.size
  }

  private give(one: Hired, at: number): void {
    const { task, shared } = one.order ?? {}
    const order = shared === this.order.shared && task === this.order.task ? null : this.order
    one.order = this.order
    one.has++
    one.hand.tell({ order, item: this.items[at] }).then(
      (answer) => this.take(one, at, answer),
      (error) => this.lose(one, at, error),
    )
  }

  private take(one: Hired, at: number, answer: Answer): void {
    one.has--
    try {
      if (this.settle && answer.kind === 'refused') this.close(({ fail }) => fail(new Refusal(answer.fault)))
      else if (this.settle && answer.kind === 'result') {
        this.left--
        if (!this.told(answer.result, at) || this.left === 0) this.close(({ end }) => end())
      }
    } catch (error) {
      this.close(({ fail }) => fail(error))
    }
    if (!one.lost) this.next(one)
  }

  /** Of what a lost hand had, the first item may have been the cause; the others only waited behind it. */
  private lose(one: Hired, at: number, error: unknown): void {
    const waited = one.lost
    one.lost = true
    if (!waited && ++this.tries[at]! >= TRIES) this.close(({ fail }) => fail(error))
    if (!this.settle) return
    this.again.push(at)
    if (!waited) this.hire()
  }

  /** Hands that are at an item end it, and rest then. */
  private close(tell: (settle: Settle) => void): void {
    const settle = this.settle
    this.settle = null
    this.again.length = 0
    this.place = this.items.length
    if (settle) tell(settle)
  }
}
