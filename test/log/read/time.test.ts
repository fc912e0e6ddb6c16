/** Time in every shape that logs have, and what is refused rather than guessed. */
import { describe, expect, it } from 'vitest'
import { channelOf } from '../../../sim/log/read/log.ts'
import { brief, columnOf, only, read, valuesOf } from './support.ts'

const lines = (rows: readonly (readonly unknown[])[]) => `${rows.map((row) => row.join(';')).join('\n')}\n`
const count = <T>(rows: number, row: (n: number) => T) => Array.from({ length: rows }, (_, n) => row(n))
const ramp = (head: string, stamp: (n: number) => unknown, rows = 6) =>
  `${head};x [mm]\n${lines(count(rows, (n) => [stamp(n), n]))}`

describe('units of time', () => {
  it.each([
    ['t [s]', (n: number) => n, 1],
    ['t [ms]', (n: number) => n, 1e-3],
    ['TIME_MS', (n: number) => n, 1e-3],
    ['millis', (n: number) => n, 1e-3],
    ['Elapsed_s', (n: number) => n / 8, 0.125],
    ['t (µs)', (n: number) => n, 1e-6],
    ['t (us)', (n: number) => n, 1e-6],
    ['t (min)', (n: number) => n, 60],
    ['Run time [s]', (n: number) => n, 1],
    ['Versuchszeit [s]', (n: number) => n, 1],
  ])('%s', (head, stamp, step) => {
    const log = read(ramp(head, stamp))
    expect(log.clock).toMatchObject({ kind: 'column', by: 'header' })
    expect(only(log).step).toBeCloseTo(step, 12)
  })

  it.each([
    ['seconds', 1_709_633_000, 1, 1],
    ['milliseconds', 1_709_633_000_000, 1000, 1],
    ['microseconds', 1_709_633_000_000_000, 1e6, 1],
  ])('since 1970 in %s', (_, start, each, step) => {
    const log = read(ramp('timestamp', (n) => start + each * n))
    expect(log.clock).toMatchObject({ kind: 'column', by: 'epoch' })
    expect(only(log).step).toBeCloseTo(step, 6)
  })

  it('since 1970 beside a relative time, before it or after', () => {
    const rows = count(6, (n) => [1_709_633_000.5 + n / 10, n / 10, n])
    for (const text of [
      `epoch;t [s];x [mm]\n${lines(rows)}`,
      `x [mm];t [s];epoch\n${lines(rows.map((row) => [...row].reverse()))}`,
    ]) {
      const log = read(text)
      expect(only(log).from).toBe(0)
      expect(only(log).columns.map(({ channel }) => channel)).toContain('travel')
      expect(log.columns.find(({ header }) => header === 'epoch')!.reason).toEqual({
        kind: 'second-clock',
        column: 't',
      })
    }
  })

  it('times of the day, with and without a date', () => {
    const day = read(ramp('Uhrzeit', (n) => `10:11:0${n}.500`))
    expect([only(day).from, only(day).step]).toEqual([36660 + 0.5, 1])
    const date = only(read(ramp('date', (n) => `2024-03-05 10:11:0${n},25`)))
    expect(date.from).toBe(Date.UTC(2024, 2, 5, 10, 11, 0, 250) / 1000)
  })

  it('ticks of a clock that the lines above name', () => {
    const log = read(`Timer clock: 2 MHz\n${ramp('ticks', (n) => 2000 * n)}`)
    expect(log.clock).toMatchObject({ unit: 'ticks', scale: 5e-7, by: 'clock' })
    expect(only(log).step).toBeCloseTo(1e-3, 12)
  })

  it('a unit that a person scales: every row counts for 5 ms', () => {
    const log = read(
      ramp('t [ms]', (n) => n),
      { column: ['time=t:ms*5'] },
    )
    expect(log.clock).toMatchObject({ unit: 'ms', by: 'person' })
    expect(only(log).step).toBeCloseTo(5e-3, 12)
  })

  it('a command in microseconds is no clock', () => {
    const text = `t [ms];Pulse [us];x [mm]\n${lines(count(5, (n) => [n, 1500 + n, n]))}`
    const recording = only(read(text))
    expect(recording.step).toBeCloseTo(1e-3, 12)
    expect(brief(recording)).toEqual(['- Pulse|us|null', 'travel x|mm|0.001'])
  })

  it('no unit: steps with decimals are seconds, aloud; whole ones are asked for', () => {
    const log = read(ramp('t', (n) => n / 1000))
    expect(only(log).step).toBeCloseTo(1e-3, 12)
    expect(log.clock).toMatchObject({ by: 'step' })
    expect(log.remarks).toContainEqual({ kind: 'time-assumed', column: 't', step: 0.001 })
    const whole = ramp('t', (n) => 10 * n)
    expect(read(whole).faults).toEqual([{ kind: 'time-unit', column: 't', step: 10 }])
    expect(only(read(whole, { column: ['time=t:ms'] })).step).toBeCloseTo(0.01, 12)
    expect(only(read(whole, { column: ['time=t*0.0005'] })).step).toBeCloseTo(0.005, 12)
  })

  it('no unit, but a period above that goes with the stamps', () => {
    const log = read(`Sampling period: 2 ms\n${ramp('t', (n) => 2 * n)}`)
    expect(log.clock).toMatchObject({ unit: 'ms', by: 'preamble' })
  })

  it('no unit, but a position that moves as the speed says', () => {
    const text = `t;x [mm];v [mm/s]\n${lines(count(200, (n) => [n, 100 * Math.sin(n / 20), 5000 * Math.cos(n / 20)]))}`
    expect(read(text).clock).toMatchObject({ unit: 'ms', by: 'slope' })
  })
})

describe('no time column', () => {
  const rows = lines(count(9, (n) => [n, 2 * n]))
  const head = 'x [mm];i [A]\n'

  it.each([
    ['Sampling period:;4.000 ms', 0.004],
    ['Sampling period [ms]:;4.000', 0.004],
    ['Sample rate: 1000 Hz', 0.001],
    ['fs = 8kHz', 1 / 8000],
    ['Abtastzeit;250;µs', 0.00025],
    ["Période d'échantillonnage : 0,5 ms", 0.0005],
    ['dt: 0.002 s', 0.002],
    ['Frecuencia de muestreo: 500 Hz', 0.002],
  ])('%s', (line, step) => {
    const log = read(`${line}\n${head}${rows}`)
    expect(log.clock).toMatchObject({ kind: 'rate', by: 'preamble', text: line })
    expect(only(log).step).toBeCloseTo(step, 12)
    expect(only(log).from).toBe(0)
  })

  it('a period without a unit is refused, as none at all; a rate that is given is taken', () => {
    expect(read(`Sampling period:;4.000\n${head}${rows}`).faults).toEqual([
      { kind: 'no-time', columns: ['x', 'i'], period: 'Sampling period:;4.000' },
    ])
    expect(read(head + rows).faults).toEqual([{ kind: 'no-time', columns: ['x', 'i'], period: '' }])
    const log = read(head + rows, { rate: 250 })
    expect(log.clock).toEqual({ kind: 'rate', rate: 250, by: 'person', text: '' })
    expect([only(log).step, only(log).to]).toEqual([0.004, 0.032])
  })

  it('a rate that is given stands above a time column', () => {
    const log = read(
      ramp('t', () => 5),
      { rate: 100 },
    )
    expect(only(log).step).toBeCloseTo(0.01, 12)
  })

  it('a rate that the slope of the position contradicts', () => {
    const move = lines(count(400, (n) => [10 * Math.sin(n / 40), 2000 * Math.cos(n / 40)]))
    expect(read(`Axis 3, 8 kHz\nx [mm];v [mm/s]\n${move}`).clock).toMatchObject({ rate: 8000, by: 'preamble' })
    expect(read(`Axis 3, 9 kHz\nx [mm];v [mm/s]\n${move.replaceAll('.', '')}`).faults).toMatchObject([
      { kind: 'no-time' },
    ])
    const log = read(`Logged at 8Hz\nx [mm];v [mm/s]\n${move}`)
    expect(log.clock).toMatchObject({ kind: 'rate', by: 'slope' })
    expect(only(log).step).toBeCloseTo(1 / 8000, 9)
    expect(log.remarks).toContainEqual(expect.objectContaining({ kind: 'time-contradicted', taken: true }))
  })

  it('a unit in the header that the slope contradicts is said, not changed', () => {
    const move = lines(count(400, (n) => [n, 10 * Math.sin(n / 40), 250 * Math.cos(n / 40)]))
    const log = read(`t [s];x [mm];v [mm/s]\n${move}`)
    expect(only(log).step).toBe(1)
    expect(log.remarks).toContainEqual({ kind: 'time-contradicted', said: 's', factor: 0.001, taken: false })
  })

  it('blank lines part recordings', () => {
    const log = read(`${head}${rows}\n${rows}`, { rate: 100 })
    expect(log.recordings.map((each) => [each.rows, each.from])).toEqual([
      [9, 0],
      [9, 0],
    ])
  })
})

describe('steps', () => {
  const times = (stamps: readonly number[]) => only(read(`t [s];x [mm]\n${lines(stamps.map((t, n) => [t, n]))}`))

  it('even, from the rows rather than the rounded period above', () => {
    const text = `Sampling period: 0.667 ms\n${ramp('t [ms]', (n) => (n / 1.5).toFixed(6), 301)}`
    expect(only(read(text)).step).toBeCloseTo(1 / 1500, 9)
    const rounded = only(read(ramp('t [ms]', (n) => (n / 1.5).toFixed(3), 301)))
    expect(Math.abs(rounded.step * 1500 - 1)).toBeLessThan(1e-5)
  })

  it('jitter is the root mean square about the mean step', () => {
    const recording = times([0, 1, 3, 4, 6, 7, 9])
    expect(recording).toMatchObject({ step: 1.5, jitter: 0.5, gaps: 0, longest: 2 })
  })

  it('gaps count neither to step nor jitter', () => {
    expect(times([0, 1, 2, 3, 7, 8, 11, 12])).toMatchObject({ step: 8 / 6, gaps: 1, longest: 4 })
    expect(times([0, 1, 2, 3, 10, 11, 12, 20, 21])).toMatchObject({ step: 1, jitter: 0, gaps: 2, longest: 8, rows: 9 })
  })

  it('repeated stamps are left out and said', () => {
    const log = read(
      `t [s];x [mm]\n${lines([
        [0, 1],
        [1, 2],
        [1, 3],
        [2, 4],
        [3, 5],
        [4, 6],
        [5, 7],
      ])}`,
    )
    expect(only(log)).toMatchObject({ rows: 6, repeated: 1, step: 1 })
    expect(log.skipped).toEqual([{ row: 4, lastRow: 4, why: { kind: 'repeated' } }])
    expect(log.remarks.map(({ kind }) => kind)).not.toContain('repeated')
  })

  it('stamps coarser than the rows are remarked on', () => {
    const log = read(ramp('t [s]', (n) => Math.floor(n / 3), 12))
    expect(log.remarks).toContainEqual({ kind: 'repeated', rows: 8, of: 12 })
  })

  it('a start that is not zero, or negative', () => {
    expect(times([-2, -1, 0, 1]).from).toBe(-2)
    expect(times([7.5, 8, 8.5]).from).toBe(7.5)
  })

  it('rows without a time are left out', () => {
    const log = read('t [s];x [mm]\n0;1\n;2\nNaN;3\n1;4\n2;5\n')
    expect(only(log).rows).toBe(3)
    expect(log.skipped).toEqual([{ row: 3, lastRow: 4, why: { kind: 'no-time' } }])
  })

  it.each([
    ['one stamp out of order', [0, 1, 2, 1.5, 3, 4], 5],
    ['a stamp that stands out', [0, 1, 2, 300, 4, 5, 6], 6],
    ['all of it', [9, 8, 7, 6, 5], 3],
  ])('time that runs backwards is refused: %s', (_, stamps, line) => {
    const log = read(`t [s];x [mm]\n${lines(stamps.map((t, n) => [t, n]))}`)
    expect(log.faults).toMatchObject([{ kind: 'backwards', line }])
    expect(log.recordings).toEqual([])
  })

  it('a time that is noise, or stands still, is none', () => {
    const noisy = read(`t [s];cycle time [ms];x [mm]\n${lines(count(20, (n) => [n, 1 + ((n * 7) % 5) / 10, n]))}`)
    expect(only(noisy).columns[0]).toMatchObject({ header: 'cycle time', channel: null, reason: { kind: 'no-clock' } })
    expect(read(ramp('t [s]', () => 5)).faults).toMatchObject([{ kind: 'no-time' }])
  })
})

describe('a part of an enormous log', () => {
  const text = ramp('t [ms]', (n) => n, 5000)

  it('keeps every second, fourth … row once there is no more room, and says so', () => {
    const log = read(text, { mostFigures: 2000, piece: 333 })
    const recording = only(log)
    expect(log.layout!.thinned).toBe(8)
    expect(recording.rows).toBe(625)
    expect(valuesOf(recording, 'travel').map((x) => Math.round(1000 * x))).toEqual(count(625, (n) => 8 * n))
    expect(log.remarks).toContainEqual({ kind: 'thinned', every: 8 })
    expect(
      only(read('x [mm]\n'.concat(lines(count(100, (n) => [n]))), { rate: 10, mostFigures: 50 })).step,
    ).toBeCloseTo(0.2, 12)
  })

  it('recordings part where they did', () => {
    const part = lines(count(1000, (n) => [n]))
    const log = read(`x [mm]\n${part}BACK\n${part}OUT\n${part}`, { rate: 100, mostFigures: 500 })
    expect(log.layout!.thinned).toBe(8)
    expect(log.recordings.map((each) => each.rows)).toEqual([125, 125, 125])
  })

  it('reads some lines whole', () => {
    const recording = only(read(text, { lines: { from: 1001, to: 1010 } }))
    expect([recording.rows, recording.line, recording.lastLine]).toEqual([10, 1001, 1010])
    expect(recording.from).toBeCloseTo(0.999, 12)
  })

  it('comes out the same in whatever pieces it comes', () => {
    const [whole, byte] = [read(text.slice(0, 4000)), read(text.slice(0, 4000), { piece: 1 })]
    expect(byte).toEqual(whole)
  })
})

it('finds a channel of a recording, or none', () => {
  const recording = only(read(ramp('t [s]', (n) => n)))
  expect(channelOf(recording, 'current')).toBeNull()
  expect(columnOf(recording, 'travel').most).toBe(0.005)
})
