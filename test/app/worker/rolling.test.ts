import { describe, expect, it } from 'vitest'
import { Gathered, RollingTraces } from '../../../app/worker/rolling.ts'
import { CHANNELS } from '../../../sim/index.ts'

const STEP = 0.001
const FORCE = CHANNELS.findIndex(({ id }) => id === 'force')

/** Rows of rising time; the force is a sawtooth with a single peak now and then. */
const row = (k: number) => CHANNELS.map((_, c) => (c === 0 ? k * STEP : c === FORCE ? (k % 97 === 0 ? 50 : k % 7) : c))
const rows = (from: number, to: number) =>
  CHANNELS.map((_, c) => Float64Array.from({ length: to - from }, (_, n) => row(from + n)[c]!))
const newest = (k: number) => Float64Array.from(row(k))

describe('Rolling traces', () => {
  it('shows the rows of the span, one before it, and the newest sample', () => {
    const traces = new RollingTraces(100)
    traces.append(rows(0, 30))
    const { time, force } = traces.view(['time', 'force'], 0.02, 1000, newest(30))
    expect([...time]).toEqual(Array.from({ length: 12 }, (_, n) => (19 + n) * STEP))
    expect([...force]).toEqual(Array.from({ length: 12 }, (_, n) => row(19 + n)[FORCE]))
  })

  it('forgets old rows and goes on, in pieces of any size, without touching views handed out before', () => {
    const traces = new RollingTraces(100)
    let before: { view: Float64Array; copy: number[] } | null = null
    let k = 0
    for (const size of [10, 90, 64, 3, 0, 100, 99, 250, 7, 1, 180]) {
      traces.append(rows(k, k + size))
      k += size
      const { time } = traces.view(['time'], (k - 50) * STEP, 1000, newest(k))
      expect(time.at(-1)).toBe(k * STEP)
      const expected = Math.min(k, 52) + (k < 52 ? 1 : 0)
      expect(time.length).toBeLessThanOrEqual(expected + 1)
      for (let n = 2; n < time.length; n++) expect(time[n]! - time[n - 1]!).toBeCloseTo(STEP, 12)
      if (before) expect([...before.view.slice(0, -1)]).toEqual(before.copy.slice(0, -1))
      before = { view: time, copy: [...time] }
    }
  })

  it('shows no more than a span that lies back, and a row after it', () => {
    const traces = new RollingTraces(1000, ['time', 'force'])
    traces.append(rows(0, 800))
    const { time } = traces.view(['time', 'force'], 0.1, 1000, newest(800), 0.2)
    expect(time[0]).toBeCloseTo(0.099, 12)
    expect(time.at(-1)!).toBeGreaterThan(0.2)
    expect(time.at(-1)!).toBeLessThanOrEqual(0.2 + 2 * STEP)
    expect(traces.oldest).toBe(0)
  })

  it('thins what is more than can be shown, and loses no peak', () => {
    const traces = new RollingTraces(10_000)
    traces.append(rows(0, 5000))
    const { time, force } = traces.view(['time', 'force'], 0, 500, newest(5000))
    expect(time.length).toBe(force.length)
    expect(time.length).toBeLessThanOrEqual(504)
    expect(time.every((value, n) => n === 0 || value >= time[n - 1]!)).toBe(true)
    expect(force.filter((value) => value === 50).length).toBe(Math.ceil(5001 / 97))
  })

  it('thins the same rows alike in every view, so that a line rolls without a flicker', () => {
    const traces = new RollingTraces(4000)
    const seen = new Map<number, number>()
    for (let k = 0; k < 20_000; k += 33) {
      traces.append(rows(k, k + 33))
      if (k < 4000) continue
      const { time, force } = traces.view(['time', 'force'], (k + 33) * STEP - 3.99, 400, newest(k + 33))
      for (let n = 2; n < time.length - 2; n += 2) {
        const known = seen.get(time[n]!)
        if (known !== undefined) expect(force[n]).toBe(known)
        seen.set(time[n]!, force[n]!)
      }
    }
    expect(seen.size).toBeLessThan(20_000 / 10)
  })

  it('is empty once cleared', () => {
    const traces = new RollingTraces(10)
    traces.append(rows(0, 5))
    traces.clear()
    expect(traces.view(['time'], 0, 100, newest(0)).time.length).toBe(1)
  })
})

describe('What is long ago', () => {
  it('keeps of every group its first and last time and its least and most, however it comes in pieces', () => {
    const gathered = new Gathered(10)
    const times: number[] = []
    const forces: number[] = []
    let k = 0
    for (const size of [3, 0, 7, 25, 4, 1, 60]) {
      const out = gathered.take(rows(k, k + size))
      k += size
      times.push(...out[0]!)
      forces.push(...out[FORCE]!)
    }
    expect(times).toEqual(Array.from({ length: 20 }, (_, n) => (10 * (n >> 1) + (n % 2) * 9) * STEP))
    for (let group = 0; group < 10; group++) {
      const all = Array.from({ length: 10 }, (_, n) => row(10 * group + n)[FORCE]!)
      const kept = forces.slice(2 * group, 2 * group + 2)
      expect(Math.min(...kept)).toBe(Math.min(...all))
      expect(Math.max(...kept)).toBe(Math.max(...all))
    }
  })
})
