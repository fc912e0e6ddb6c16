import { expect, it } from 'vitest'
import { rowsKept } from '../../app/worker/thin.ts'
import { spectrumOf } from '../../sim/log/spectrum.ts'

const STEP = 1e-3
const ticks = (rows: number) => Float64Array.from({ length: rows }, (_, k) => 7 + k * STEP)

it('shows a sine at its frequency with its amplitude, whatever its phase and mean: closed form', () => {
  // A whole number of swings within a piece of 512 rows, so that none leaks into its neighbours beyond the window's own.
  for (const [swings, phase] of [
    [20, 0.3],
    [101, 2],
  ] as const) {
    const hertz = swings / (512 * STEP)
    const time = ticks(5000)
    const values = time.map((t) => 4 + 0.25 * Math.sin(2 * Math.PI * hertz * t + phase))
    const { frequency, amplitude } = spectrumOf(time, values)!
    const most = amplitude.indexOf(Math.max(...amplitude))
    expect(frequency[most]).toBeCloseTo(hertz, 9)
    expect(amplitude[most]).toBeCloseTo(0.25, 6)
    // Hann's window halves the lines beside it and leaves none further off.
    expect(amplitude[most + 1]).toBeCloseTo(0.125, 6)
    expect(amplitude[most + 3]).toBeLessThan(1e-9)
  }
})

it('ends at half the rate, fills gaps, and says where there is too little', () => {
  const time = ticks(600)
  const { frequency } = spectrumOf(time, time.map(Math.sin))!
  expect(frequency.at(-1)).toBeCloseTo(0.5 / STEP, 9)
  const gaps = time.map((t, k) => (k % 10 === 3 ? Number.NaN : Math.sin(50 * t)))
  expect(spectrumOf(time, gaps)!.amplitude.every(Number.isFinite)).toBe(true)
  expect(spectrumOf(ticks(63), ticks(63))).toBeNull()
  expect(
    spectrumOf(
      time,
      time.map(() => Number.NaN),
    ),
  ).toBeNull()
})

it('rows that are drawn keep every extreme', () => {
  const column = Float64Array.from({ length: 100_000 }, (_, k) => Math.sin(k / 37))
  column[54_321] = 9
  column[77_777] = -9
  column[3] = Number.NaN
  const rows = rowsKept([column], 1000)
  expect(rows.length).toBeLessThanOrEqual(1000)
  expect([...rows]).toEqual([...new Set(rows)].sort((a, b) => a - b))
  expect([...rows]).toEqual(expect.arrayContaining([54_321, 77_777]))
  expect(rowsKept([column.subarray(0, 10)], 10)).toHaveLength(10)
})
