import { describe, expect, it } from 'vitest'
import type { RunView } from '../../../../app/store/results.ts'
import { decidedAt, firstToTell, standingAt, stopBeside, stopsOf } from '../../../../app/views/present/standing.ts'
import { PRESETS, type StrategyId, simulateGrip } from '../../../../sim/index.ts'

const { scenario } = PRESETS.find(({ id }) => id === 'teapot')!

function runOf(strategy: StrategyId): RunView {
  const { result, traces } = simulateGrip(scenario, strategy)
  return { strategy, scenario, status: 'done', result, traces, rows: traces.time.length, revision: 1 }
}

const cracked = runOf('threshold-stop')
const held = runOf('current-clamp')

describe('how a grip stands', () => {
  it('is closing before contact, gripping after it, and crushed from the crack on', () => {
    const { contactTime } = cracked.result!.metrics
    const crack = cracked.result!.events.crack!
    expect(standingAt(cracked, 0)).toEqual({ word: 'Closing', decided: false })
    expect(standingAt(cracked, contactTime! + 1e-3).word).toBe('Gripping')
    expect(standingAt(cracked, crack - 1e-6).decided).toBe(false)
    expect(standingAt(cracked, crack)).toEqual({ word: 'Crushed', decided: true })
  })

  it('is held once the arm has moved for the last time', () => {
    const last = scenario.arm.moves.at(-1)!
    expect(decidedAt(held)).toBeCloseTo(last.start + last.duration, 9)
    expect(standingAt(held, last.start).word).toBe('Gripping')
    expect(standingAt(held, scenario.run.duration)).toEqual({ word: 'Held', decided: true })
  })

  it('slides before it drops', () => {
    const events = { ...held.result!.events, slip: 0.8, drop: 0.9 }
    const dropping = { ...held, result: { ...held.result!, verdict: 'dropped' as const, events } }
    expect(standingAt(dropping, 0.79).word).toBe('Gripping')
    expect(standingAt(dropping, 0.85).word).toBe('Sliding')
    expect(standingAt(dropping, 0.9)).toMatchObject({ word: 'Dropped', decided: true })
  })

  it('says so while nothing is known', () => {
    expect(standingAt({ ...held, status: 'running', result: null }, 1).word).toBe('Closing')
    expect(standingAt({ ...held, status: 'failed', result: null }, 1).word).toBe('No result')
  })
})

describe('stops', () => {
  const { duration } = scenario.run
  const stops = stopsOf([cracked, held], duration)

  it('hold start, crack, moves of the arm and end, each once and in order', () => {
    expect(stops[0]).toBe(0)
    expect(stops.at(-1)).toBe(duration)
    const near = (time: number) => stops.some((stop) => stop >= time - 1e-9 && stop - time < 0.004)
    for (const time of [cracked.result!.events.crack!, ...scenario.arm.moves.map((move) => move.start)])
      expect(near(time), `a stop at ${time}`).toBe(true)
    for (let i = 1; i < stops.length; i++) expect(stops[i]! - stops[i - 1]!).toBeGreaterThanOrEqual(0.003)
  })

  it('are walked both ways', () => {
    const forward = [0]
    for (let stop = stopBeside(stops, 0, 1); stop !== null; stop = stopBeside(stops, stop, 1)) forward.push(stop)
    expect(forward).toEqual(stops)
    const back = [duration]
    for (let stop = stopBeside(stops, duration, -1); stop !== null; stop = stopBeside(stops, stop, -1)) back.push(stop)
    expect(back).toEqual([...stops].reverse())
  })
})

describe('the run to speak of first', () => {
  const dropped = { ...held, result: { ...held.result!, verdict: 'dropped' as const } }

  it('damaged the part, or lost it, or is the first', () => {
    expect(firstToTell([held, dropped, cracked])).toBe(cracked)
    expect(firstToTell([held, dropped])).toBe(dropped)
    expect(firstToTell([held])).toBe(held)
    expect(firstToTell([])).toBeUndefined()
  })
})
