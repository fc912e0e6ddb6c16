import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { StudyAnswer, StudyRequest } from '../../../app/worker/studies.ts'
import { keepStudy } from '../../../app/worker/study.ts'
import type { Scenario } from '../../../sim/index.ts'

/** A worker whose answers the test gives by hand. */
class HandWorker {
  static all: HandWorker[] = []
  onmessage: (event: { data: StudyAnswer }) => void = () => {}
  onerror: () => void = () => {}
  requests: StudyRequest<'axes'>[] = []
  ended = false

  constructor() {
    HandWorker.all.push(this)
  }
  postMessage(request: StudyRequest<'axes'>) {
    this.requests.push(request)
  }
  terminate() {
    this.ended = true
  }
}

const named = (name: string) => ({ name }) as Scenario
const asked = () => HandWorker.all.flatMap(({ requests }) => requests.map(({ input }) => input.name))
const answer = (data: StudyAnswer) => HandWorker.all.at(-1)!.onmessage({ data })
const events = () => ({ item: vi.fn(), done: vi.fn(), failed: vi.fn() })

beforeEach(() => {
  HandWorker.all = []
  vi.stubGlobal('Worker', HandWorker)
})
afterEach(() => vi.unstubAllGlobals())

it('keeps one worker, runs one input at a time, and of those that wait the latest', () => {
  const heard = events()
  const kept = keepStudy('axes', heard)
  for (const name of ['a', 'b', 'c']) kept.ask(named(name))
  expect(asked()).toEqual(['a'])
  answer({ kind: 'item', item: 'of a' })
  answer({ kind: 'done' })
  expect(asked()).toEqual(['a', 'c'])
  expect(heard.item).toHaveBeenCalledWith('of a')
  expect(heard.done).not.toHaveBeenCalled()
  answer({ kind: 'done' })
  expect(heard.done).toHaveBeenCalledOnce()
  kept.ask(named('d'))
  expect(asked()).toEqual(['a', 'c', 'd'])
  expect(HandWorker.all).toHaveLength(1)
  kept.end()
  expect(HandWorker.all[0]!.ended).toBe(true)
})

it('tells of the failure of the last input only, and goes on with a new worker after one broke', () => {
  const heard = events()
  const kept = keepStudy('axes', heard)
  kept.ask(named('a'))
  kept.ask(named('b'))
  answer({ kind: 'failed', message: 'old' })
  expect(heard.failed).not.toHaveBeenCalled()
  HandWorker.all[0]!.onerror()
  expect(HandWorker.all[0]!.ended).toBe(true)
  expect(heard.failed).toHaveBeenCalledOnce()
  kept.ask(named('c'))
  expect(HandWorker.all).toHaveLength(2)
  expect(asked()).toEqual(['a', 'b', 'c'])
})
