import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Recorder } from '../../sim/cycle/recorder.ts'
import { CHANNELS, PRESETS, type Scenario, simulateGrip, type Traces } from '../../sim/index.ts'
import { tracesOf } from '../../sim/run/channels.ts'

const COUNT = CHANNELS.length

/** Records `samples` rows; channel c at sample k is value(c, k). */
function record(samples: number, value: (channel: number, sample: number) => number) {
  const recorder = new Recorder()
  recorder.prepare(COUNT, samples)
  for (let k = 0; k < samples; k++) {
    const place = recorder.bucket.place()
    for (let c = 0; c < COUNT; c++) recorder.bucket.kept[place + c] = value(c, k)
    recorder.sample(false)
  }
  recorder.finish()
  const { columns, stride, rows } = recorder
  return { traces: tracesOf(CHANNELS.map((_, c) => columns.slice(c * stride, c * stride + rows))) }
}

const column = (traces: Traces, channel: number) => traces[CHANNELS[channel]!.id]
/** A signal without a pattern, another for each channel; time runs on. */
const signal = (c: number, k: number) =>
  c === 0 ? k * 1e-4 : Math.sin(k * k * 0.37 + c) * (1 + Math.cos(k * 0.001 * c))

/** The first preset for so long [s]; the arm does not move. */
function lasting(duration: number): Scenario {
  const { run, arm, ...rest } = PRESETS[0]!.scenario
  return { ...rest, run: { ...run, duration }, arm: { ...arm, lift: null, moves: [] } }
}

describe('Recorder', () => {
  it('keeps the lowest and the highest of every channel, in the bucket where they came', () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true })
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 90_000 }),
        fc.array(value, { minLength: 1, maxLength: 40 }),
        (samples, list) => {
          const at = (c: number, k: number) =>
            c === 0 ? k : list[(k * (c + 1) + c) % list.length]! * (k % 7 === c ? 2 : 1)
          const { traces } = record(samples, at)
          const perBucket = Math.max(2, Math.ceil(samples / 1000))
          for (let c = 0; c < COUNT; c++) {
            for (let bucket = 0; bucket * perBucket < samples; bucket++) {
              let [low, high] = [Infinity, -Infinity]
              for (let k = bucket * perBucket; k < Math.min(samples, (bucket + 1) * perBucket); k++) {
                low = Math.min(low, at(c, k))
                high = Math.max(high, at(c, k))
              }
              const pair = [column(traces, c)[2 * bucket]!, column(traces, c)[2 * bucket + 1]!]
              if (Math.min(...pair) !== low || Math.max(...pair) !== high)
                throw new Error(`channel ${c}, bucket ${bucket}: ${pair} instead of ${low}, ${high}`)
            }
          }
        },
      ),
      { numRuns: 20 },
    )
  })

  it('puts the two extremes of a bucket in the order in which they came', () => {
    const { traces } = record(4000, (c, k) => (c === 0 ? k : [0, 5, -5, 0][(k + (c % 2 ? 0 : 2)) % 4]!))
    // Odd channels: high before low; even channels: low before high.
    expect([...column(traces, 1).slice(0, 2)]).toEqual([5, -5])
    expect([...column(traces, 2).slice(0, 2)]).toEqual([-5, 5])
  })

  it('is finer for a while after first contact, and nowhere else', () => {
    const { scenario } = PRESETS[0]!
    const { traces, result } = simulateGrip(scenario, 'current-clamp')
    const contact = result.metrics.contactTime!
    const perBucket = (from: number, to: number) =>
      (to - from) / (traces.time.filter((time) => time >= from && time < to).length / 2)
    const coarse = perBucket(0, contact - 0.01)
    expect(perBucket(contact + 2 * coarse, contact + 60 * coarse)).toBeLessThan(0.35 * coarse)
    // Of some hundred buckets one more or less.
    expect(Math.abs(perBucket(contact + 150 * coarse, scenario.run.duration) / coarse - 1)).toBeLessThan(0.01)
    expect(Math.max(...traces.force)).toBe(result.metrics.peakForce)
  })

  it('gives columns of one length, in rising time', () => {
    for (const samples of [1, 2, 3, 999, 1999, 2000, 2001, 30_000, 123_457]) {
      const { traces } = record(samples, signal)
      const rows = traces.time.length
      for (let c = 0; c < COUNT; c++) expect(column(traces, c).length).toBe(rows)
      expect(rows).toBeLessThanOrEqual(2002)
      expect(rows).toBeGreaterThanOrEqual(Math.min(2, samples))
      for (let n = 1; n < rows; n++)
        if (traces.time[n]! < traces.time[n - 1]!) throw new Error(`time falls at row ${n}`)
      expect(traces.time[0]).toBe(0)
      expect(traces.time[rows - 1]).toBe((samples - 1) * 1e-4)
    }
  })

  it.each([0.01, 0.0731, 0.5, 1.2345])('hands out chunks that, put together, are the whole (%d s)', (duration) => {
    const scenario = lasting(duration)
    const chunks: Float64Array[][] = []
    const { traces } = simulateGrip(scenario, 'current-clamp', { onChunk: (columns) => chunks.push(columns) > 0 })
    if (duration >= 0.5) expect(chunks.length).toBeGreaterThan(8)
    for (let c = 0; c < COUNT; c++)
      expect(chunks.flatMap((columns) => [...columns[c]!])).toEqual([...column(traces, c)])
  })

  it('stops when whoever receives the chunks says so, and keeps what it has', () => {
    const scenario = lasting(0.1)
    let chunks = 0
    let rows = 0
    const { cancelled, traces, result } = simulateGrip(scenario, 'current-clamp', {
      onChunk(columns) {
        rows += columns[0]!.length
        return ++chunks < 3
      },
    })
    expect(chunks).toBe(3)
    expect(cancelled).toBe(true)
    expect(result.metrics.contactTime).toBeNull() // from a touch on the buckets are finer
    expect(rows).toBe(3 * 100 * 2)
    expect(traces.time.length).toBe(rows)
  })
})
