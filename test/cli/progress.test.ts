import { expect, it } from 'vitest'
import { progressOf, searchedBy } from '../../sim/cli/progress.ts'
import { progressText } from '../../sim/say/progress.ts'

/** What is written by a run of which a hundredth is done every `pace` seconds, by a clock that the test turns. */
function written(isTTY: boolean, pace: number) {
  let now = 100
  const said: string[] = []
  const progress = progressOf('grip', { isTTY, write: (text) => said.push(text) }, () => now)
  for (let n = 1; n <= 100; n++) {
    now += pace
    expect(progress.tell(n / 100)).toBe(true)
  }
  progress.end()
  return said
}

it('says nothing of a quick run', () => {
  expect(written(true, 0.005)).toEqual([])
  expect(written(false, 0.2)).toEqual([])
})

it('writes one line over and over on a terminal, and takes it away in the end', () => {
  const said = written(true, 1)
  expect(said[0]).toBe('\rgrip: 1 %\u001b[K')
  expect(said[9]).toBe('\rgrip: 10 %, about 90 s left\u001b[K')
  expect(said.length).toBe(101)
  expect(said[100]).toBe('\r\u001b[K')
})

it('writes a line now and then where no person looks on', () => {
  expect(written(false, 1)).toEqual([
    'grip: 30 %, about 70 s left\n',
    'grip: 60 %, about 40 s left\n',
    'grip: 90 %, about 10 s left\n',
  ])
})

it('names no time before one can be told, and none finer than it is known', () => {
  expect(progressText(0, 60)).toBe('0 %')
  expect(progressText(0.5, 1.9)).toBe('50 %')
  expect(progressText(0.999, 100)).toBe('99 %, about 1 s left')
  expect(progressText(0.5, 7.2)).toBe('50 %, about 7 s left')
  expect(progressText(0.5, 94)).toBe('50 %, about 90 s left')
  expect(progressText(0.1, 60)).toBe('10 %, about 9 min left')
  expect(progressText(0.01, 600)).toBe('1 %, about 17 h left')
})

it('tells of a search as it goes, and hands out all of its steps', () => {
  let now = 0
  const said: string[] = []
  function* steps() {
    for (let done = 1; done <= 4; done++) {
      now += 20
      yield { done, of: 5 }
    }
  }
  const progress = progressOf('search', { write: (text) => said.push(text) }, () => now)
  expect(searchedBy('search', steps(), progress).map(({ done }) => done)).toEqual([1, 2, 3, 4])
  expect(said).toEqual(['search: 40 %, about 60 s left\n', 'search: 80 %, about 20 s left\n'])
})
