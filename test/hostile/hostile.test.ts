/** The command as a person runs it; what it draws and how it judges. */
import { spawnSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { type GripResult, PRESETS, type Scenario, simulateGrip } from '../../sim/index.ts'
import { ERROR_LAW, LAWS } from './laws.ts'
import { trial } from './trial.ts'

const hostile = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['.tools/hostile.mjs', ...args], { encoding: 'utf8' })
  return { status, stdout, stderr }
}

it('refuses what is no number', () => {
  expect(hostile('--count', 'many')).toEqual({
    status: 2,
    stdout: '',
    stderr: '--count: given "many", allowed a whole number\n',
  })
})

it('draws the same block again, and other ones besides', () => {
  expect(trial(7, 3, 20)).toEqual(trial(7, 3, 20))
  const skipped = [3, 4, 5, 6].map((block) => trial(7, block, 60).tooLong)
  expect(new Set(skipped).size).toBeGreaterThan(1)
})

describe('the laws', () => {
  const scenario: Scenario = { ...PRESETS[0]!.scenario, run: { ...PRESETS[0]!.scenario.run } }
  const { result } = simulateGrip(scenario, 'current-clamp', { stepError: true })
  const brokenBy = (change: (result: GripResult) => void) => {
    const changed = structuredClone(result)
    change(changed)
    return [...LAWS, ERROR_LAW].filter(({ broken }) => broken(changed, scenario) !== null).map(({ name }) => name)
  }

  it('are kept by the opening preset', () => {
    expect(result.verdict).toBe('held')
    expect(brokenBy(() => {})).toEqual([])
  })

  it.each<[string, (result: GripResult) => void]>([
    ['every figure', ({ metrics }) => Object.assign(metrics, { forceRipple: Number.NaN })],
    ['no contact pulls', ({ metrics }) => Object.assign(metrics, { minForceInMove: -1e-9 })],
    ['the peak is at least', ({ metrics }) => Object.assign(metrics, { settledForce: 1.001 * metrics.peakForce! })],
    ['the rms current', ({ metrics }) => Object.assign(metrics, { rmsCurrent: 2 * metrics.peakCurrent! })],
    ['what happens happens within', ({ events }) => Object.assign(events, { slip: 0.7, drop: 0.6 })],
    ['the verdict agrees', (changed) => Object.assign(changed, { verdict: 'dropped' })],
    ['window and verdict agree', (changed) => Object.assign(changed, { verdict: 'marked' })],
    ['a damage margin', ({ metrics }) => Object.assign(metrics, { damageMargin: -0.1 })],
    ['held means touched', ({ metrics }) => Object.assign(metrics, { holdMargin: -0.01 })],
    ['held means that some force', ({ metrics }) => Object.assign(metrics, { requiredForce: 2 * metrics.peakForce! })],
    ['the error of the step', (changed) => Object.assign(changed, { stepError: null })],
  ])('%s …', (name, change) => {
    expect(brokenBy(change)).toEqual(expect.arrayContaining([expect.stringContaining(name)]))
  })
})
