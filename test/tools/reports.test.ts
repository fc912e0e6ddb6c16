import { expect, it } from 'vitest'
import { closingLine, countPlaywright, countVitest } from '../../.tools/counts.mjs'
import { inTurn } from '../../.tools/in-turn.mjs'

it('counts what was not run, and a file that fails to load', () => {
  const file = (status: string, ...tests: string[]) => ({
    status,
    assertionResults: tests.map((each) => ({ status: each })),
  })
  const report = { numPassedTests: 3, numFailedTests: 1, numPendingTests: 2, numTodoTests: 1 }
  const testResults = [file('passed', 'passed'), file('failed', 'failed', 'passed'), file('failed', 'passed')]
  expect(countVitest({ ...report, testResults })).toEqual({ passed: 3, failed: 2, skipped: 3 })
  const stats = { expected: 5, unexpected: 1, flaky: 1, skipped: 2 }
  expect(countPlaywright({ stats, errors: [{}] })).toEqual({ passed: 5, failed: 3, skipped: 2 })
})

it('closes with one line', () => {
  expect(closingLine({ passed: 7, failed: 0, skipped: 0 })).toBe('7 passed, 0 failed')
  expect(closingLine({ passed: 7, failed: 1, skipped: 2 })).toBe('7 passed, 1 failed, 2 skipped')
})

it('lets speakers speak one after another, the first at once', () => {
  let heard = ''
  const next = inTurn((text) => {
    heard += text
  })
  const [one, two, three] = [next(), next(), next()]
  two.write('c')
  one.write('a')
  expect(heard).toBe('a')
  three.write('e')
  three.end()
  one.write('b')
  one.end()
  expect(heard).toBe('abc')
  two.write('d')
  expect(heard).toBe('abcd')
  two.end()
  expect(heard).toBe('abcde')
  next().write('f')
  expect(heard).toBe('abcdef')
})
