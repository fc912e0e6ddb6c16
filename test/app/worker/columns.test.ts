import { describe, expect, it } from 'vitest'
import { GrowingTraces } from '../../../app/worker/columns.ts'
import { CHANNELS } from '../../../sim/index.ts'

const piece = (...values: number[]) => CHANNELS.map((_, channel) => Float64Array.from(values, (v) => v + channel))

describe('traces that grow', () => {
  it('take the first piece as it is and copy later ones behind it', () => {
    const traces = new GrowingTraces()
    expect(traces.view().time.length).toBe(0)
    const first = piece(0, 1)
    traces.append(first)
    expect(traces.view().time.buffer).toBe(first[0]!.buffer)
    const early = traces.view()
    traces.append([])
    for (let at = 2; at < 100; at++) traces.append(piece(at))
    expect([...traces.view().time]).toEqual(Array.from({ length: 100 }, (_, row) => row))
    expect(traces.view().force[99]).toBe(100)
    expect([...early.force]).toEqual([1, 2])
  })
})
