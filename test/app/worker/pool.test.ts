import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Answer, GripJob, Request } from '../../../app/worker/messages.ts'
import { SimulatorPool } from '../../../app/worker/pool.ts'
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
    queueMicrotask(() => this.say({ kind: 'ready' }))
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

const job = (name: string) => ({ scenario: { name }, strategy: 'current-clamp', traces: true }) as GripJob
const listener = () => ({ progress: vi.fn(), done: vi.fn(), failed: vi.fn() })
const asked = (worker: HandWorker) => worker.requests.map((request) => request.input.scenario.name)

let restarted: ReturnType<typeof vi.fn>
const poolOf = (size: number) => new SimulatorPool(size, restarted as () => void)

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] })
  vi.stubGlobal('Worker', HandWorker)
  HandWorker.all = []
  restarted = vi.fn()
})
afterEach(() => {
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

  it('notices a worker that is silent: one that never starts, one that does not stop', async () => {
    const pool = poolOf(1)
    await Promise.resolve()
    pool.run('a', job('one'), listener())
    vi.advanceTimersByTime(6_100)
    expect(restarted).toHaveBeenCalledTimes(1)
    const second = HandWorker.all[1]!
    second.say({ kind: 'started', job: 1 })
    pool.run('a', job('two'), listener())
    vi.advanceTimersByTime(2_200)
    expect(restarted).toHaveBeenCalledTimes(2)
    expect(second.ended).toBe(true)
    expect(asked(HandWorker.all[2]!)).toEqual(['two'])
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
