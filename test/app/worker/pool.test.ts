import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Answer, GripJob, Request } from '../../../app/worker/messages.ts'
import { SimulatorPool } from '../../../app/worker/pool.ts'
import { takeSimulator } from '../../../app/worker/simulators.ts'
import { CHANNELS, type GripResult } from '../../../sim/index.ts'

/** A worker whose answers the test gives by hand. */
class HandWorker {
  static all: HandWorker[] = []
  onmessage: (event: { data: Answer }) => void = () => {}
  onerror: (() => void) | null = null
  onmessageerror: (() => void) | null = null
  requests: Request[] = []
  ended = false

  constructor() {
    HandWorker.all.push(this)
  }
  postMessage(request: Request) {
    this.requests.push(request)
  }
  terminate() {
    this.ended = true
  }
  say(data: Answer) {
    if (!this.ended) this.onmessage({ data })
  }
  get job() {
    return this.requests.at(-1)!.job
  }
  finish(hash: string) {
    this.say({ kind: 'done', job: this.job, result: { hash } as GripResult })
  }
}

const job = (name: string) => ({ scenario: { name, job: 'grip' }, strategy: 'current-clamp', traces: true }) as GripJob
const listener = () => ({ progress: vi.fn(), done: vi.fn(), failed: vi.fn() })
const asked = (worker: HandWorker) => worker.requests.map((request) => request.input.scenario.name)

let restarted: ReturnType<typeof vi.fn>
const poolOf = (size: number) => new SimulatorPool(size, restarted as () => void)

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] })
  vi.stubGlobal('Worker', HandWorker)
  vi.stubGlobal('crossOriginIsolated', true)
  HandWorker.all = []
  restarted = vi.fn()
})
afterEach(() => {
  // None that is left over goes to the next test.
  const made = HandWorker.all.length
  while (HandWorker.all.length === made) takeSimulator()
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('a pool of simulators', () => {
  it('runs two lanes at the same time and hands out their traces', () => {
    const pool = poolOf(2)
    const [a, b] = [listener(), listener()]
    pool.run('a', job('one'), a)
    pool.run('b', job('two'), b)
    const [first, second] = HandWorker.all as [HandWorker, HandWorker]
    expect([asked(first), asked(second)]).toEqual([['one'], ['two']])
    second.say({ kind: 'chunk', job: 1, columns: CHANNELS.map(() => Float64Array.of(1, 2)) })
    second.say({ kind: 'chunk', job: 1, columns: CHANNELS.map(() => Float64Array.of(3)) })
    second.finish('second')
    expect(b.progress).toHaveBeenCalledTimes(2)
    expect([...b.done.mock.calls[0]![1].force]).toEqual([1, 2, 3])
    expect(a.done).not.toHaveBeenCalled()
  })

  it('drops what ran in a lane, and not what an idle worker has taken up of it meanwhile', () => {
    const pool = poolOf(2)
    const [a, b] = [listener(), listener()]
    pool.run('a', job('long'), a)
    vi.advanceTimersByTime(1000) // longer than an older run is waited for
    pool.run('a', job('again'), b)
    const [first, second] = HandWorker.all as [HandWorker, HandWorker]
    expect([asked(first), asked(second)]).toEqual([['long'], ['again']])
    expect(Atomics.load(second.requests[0]!.newest!, 0)).toBe(second.job)
    first.say({ kind: 'stopped', job: first.job })
    second.finish('second')
    expect(a.done).not.toHaveBeenCalled()
    expect(b.done).toHaveBeenCalledOnce()
  })

  it('never queues: of many changes only the newest is run next', () => {
    const pool = poolOf(1)
    const ears = ['one', 'two', 'three', 'four'].map((name) => {
      const ear = listener()
      pool.run('a', job(name), ear)
      return ear
    })
    const [worker] = HandWorker.all as [HandWorker]
    worker.finish('first')
    worker.finish('last')
    expect(asked(worker)).toEqual(['one', 'four'])
    expect(ears.map((ear) => ear.done.mock.calls.length)).toEqual([1, 0, 0, 1])
  })

  it('says whether a lane is at work: while its job waits or runs and is wanted', () => {
    const pool = poolOf(1)
    const [worker] = HandWorker.all as [HandWorker]
    const held = () => ['a', 'b'].map((lane) => pool.holds(lane))
    expect(held()).toEqual([false, false])
    pool.run('a', job('runs'), listener())
    pool.run('b', job('waits'), listener())
    expect(held()).toEqual([true, true])
    pool.cancel('a')
    expect(held()).toEqual([false, true])
    worker.say({ kind: 'stopped', job: 1 })
    worker.finish('waited')
    expect(held()).toEqual([false, false])
  })

  it('stops a run that is older than a moment when a newer one comes', () => {
    const pool = poolOf(1)
    const old = listener()
    pool.run('a', job('old'), old)
    vi.advanceTimersByTime(500)
    pool.run('a', job('new'), listener())
    const [worker] = HandWorker.all as [HandWorker]
    worker.finish('too late')
    expect(old.done).not.toHaveBeenCalled()
    expect(asked(worker)).toEqual(['old', 'new'])
  })

  it('gives a run that is known to be long no time to end', () => {
    const pool = poolOf(1)
    const [worker] = HandWorker.all as [HandWorker]
    pool.run('a', job('slow'), listener())
    vi.advanceTimersByTime(1000)
    worker.finish('slow')
    const [old, late] = [listener(), listener()]
    pool.run('a', job('old'), old)
    vi.advanceTimersByTime(50)
    pool.run('a', job('new'), late)
    worker.finish('old, unwanted')
    worker.finish('new')
    expect(old.done).not.toHaveBeenCalled()
    expect(late.done).toHaveBeenCalledOnce()
  })

  it('replaces a worker that dies, says so, and runs the job again', () => {
    const pool = poolOf(1)
    const ear = listener()
    pool.run('a', job('one'), ear)
    HandWorker.all[0]!.onerror?.()
    expect(restarted).toHaveBeenCalledOnce()
    expect(HandWorker.all[0]!.ended).toBe(true)
    HandWorker.all[1]!.finish('again')
    expect(ear.done).toHaveBeenCalledOnce()
  })

  it('replaces a worker that is silent while another gets on, which takes its place', () => {
    const pool = poolOf(1)
    pool.run('a', job('one'), listener())
    vi.advanceTimersByTime(7_000)
    const [first, spare] = HandWorker.all as [HandWorker, HandWorker]
    spare.say({ kind: 'ready' })
    vi.advanceTimersByTime(4_900)
    expect(first.ended).toBe(false)
    vi.advanceTimersByTime(200)
    expect(first.ended).toBe(true)
    expect(restarted).toHaveBeenCalledOnce()
    expect(asked(spare)).toEqual(['one'])
    expect(HandWorker.all.length).toBe(2)
  })

  it('waits as long as the machine lets no other worker get on, and for ever while there are signs of life', () => {
    const pool = poolOf(1)
    const ear = listener()
    pool.run('a', job('one'), ear)
    const [worker] = HandWorker.all as [HandWorker]
    vi.advanceTimersByTime(3_600_000)
    expect(HandWorker.all.length).toBe(2)
    for (let n = 1; n <= 1000; n++) {
      worker.say({ kind: 'progress', job: 1, done: n / 1000 })
      vi.advanceTimersByTime(5_900)
    }
    expect(ear.progress.mock.calls.at(-1)![1]).toBe(1)
    worker.finish('in the end')
    vi.advanceTimersByTime(3_600_000)
    expect(ear.done).toHaveBeenCalledOnce()
    expect(restarted).not.toHaveBeenCalled()
    expect(HandWorker.all.length).toBe(2)
  })

  it('says nothing of a worker that does not stop when it is asked to', () => {
    const pool = poolOf(1)
    pool.run('a', job('one'), listener())
    pool.cancel('a')
    vi.advanceTimersByTime(6_000)
    const [first, spare] = HandWorker.all as [HandWorker, HandWorker]
    spare.say({ kind: 'ready' })
    vi.advanceTimersByTime(1)
    expect(first.ended).toBe(true)
    expect(restarted).not.toHaveBeenCalled()
    pool.run('a', job('two'), listener())
    expect(asked(spare)).toEqual(['two'])
  })

  it('ends a worker that cannot be asked to stop, where memory cannot be shared', () => {
    vi.stubGlobal('crossOriginIsolated', false)
    const pool = poolOf(1)
    pool.run('a', job('one'), listener())
    pool.cancel('a')
    pool.run('a', job('two'), listener())
    const [first, second] = HandWorker.all as [HandWorker, HandWorker]
    expect(first.ended).toBe(true)
    expect(asked(second)).toEqual(['two'])
    expect(restarted).not.toHaveBeenCalled()
  })

  it('gives a job up that takes worker after worker with it', () => {
    const pool = poolOf(1)
    const ear = listener()
    pool.run('a', job('deadly'), ear)
    for (let death = 0; death < 3; death++) HandWorker.all.at(-1)!.onerror?.()
    expect(ear.failed).toHaveBeenCalledOnce()
    pool.run('a', job('harmless'), ear)
    HandWorker.all.at(-1)!.finish('fine')
    expect(ear.done).toHaveBeenCalledOnce()
  })
})
