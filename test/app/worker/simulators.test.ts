import { afterEach, expect, it, vi } from 'vitest'
import { startEarly, takeSimulator } from '../../../app/worker/simulators.ts'

afterEach(() => vi.unstubAllGlobals())

it('hands out the workers that were started early, each once, before it starts new ones', () => {
  const started: unknown[] = []
  vi.stubGlobal(
    'Worker',
    class {
      constructor() {
        started.push(this)
      }
    },
  )
  startEarly(2)
  expect(started.length).toBe(2)
  const early = [takeSimulator(), takeSimulator()]
  expect(started.length).toBe(2)
  expect(new Set(early)).toEqual(new Set(started))
  const third = takeSimulator()
  expect(started.at(-1)).toBe(third)
  expect(early).not.toContain(third)
})
