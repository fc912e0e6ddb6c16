/** What figures mean, what is noted of them, and what is refused. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { PRESETS, simulateGrip, tracesCsv } from '../../../sim/index.ts'
import { brief, columnOf, only, read, valuesOf } from './support.ts'

const table = (head: string, ...columns: (number | string)[][]) =>
  `t [s];${head}\n${columns[0]!.map((_, row) => [row, ...columns.map((column) => column[row])].join(';')).join('\n')}\n`

describe('what a field holds', () => {
  it.each(['', 'NaN', 'nan', 'n/a', '#N/A', '---', 'null', '-1.#IND'])('%j is no figure, and its row stays', (word) => {
    const recording = only(read(table('x [mm];i [A]', [1, 2, word, 4], [5, 6, 7, 8])))
    expect(valuesOf(recording, 'travel')).toEqual([0.001, 0.002, Number.NaN, 0.004])
    expect(columnOf(recording, 'travel').missing).toBe(1)
    expect(valuesOf(recording, 'current')).toEqual([5, 6, 7, 8])
  })

  it.each(['inf', '-inf', 'Infinity', '1e999'])('%s is no figure', (word) => {
    expect(columnOf(only(read(table('x [mm]', [1, word, 3, 4]))), 'travel').missing).toBe(1)
  })

  it('whole rows of NaN have no time', () => {
    expect(read(`t [s];x [mm]\n0;1\nNaN;NaN\n2;3\n3;4\n`).skipped).toEqual([
      { row: 3, lastRow: 3, why: { kind: 'no-time' } },
    ])
  })

  it('columns of words', () => {
    const recording = only(
      read(
        table('moving;door;x [mm]', ['True', 'False', 'True', 'True'], ['open', 'open', 'shut', 'open'], [1, 2, 3, 4]),
      ),
    )
    expect(columnOf(recording, 'flag')).toMatchObject({ header: 'moving', words: ['True', 'False'] })
    expect(valuesOf(recording, 'flag')).toEqual([0, 1, 0, 0])
    expect(recording.columns[1]).toMatchObject({ channel: null, reason: { kind: 'text' }, words: ['open', 'shut'] })
  })

  it('columns without a figure, and ones that are zero all along', () => {
    const log = read(table('x [mm];i [A];F [N]', [1, 2, 3], ['', '', ''], [0, 0, 0]))
    expect(only(log).columns[1]).toMatchObject({ header: 'i', channel: null, reason: { kind: 'empty' } })
    expect(log.remarks).toContainEqual({ kind: 'constant', column: 'F', channel: 'gauge' })
  })

  it('figures that sit on a limit of 16 bits', () => {
    const log = read(table('x [counts]', [10, -32768, -32768, 20]))
    expect(log.remarks).toContainEqual({ kind: 'limit-of-bits', column: 'x', value: -32768, rows: 2 })
    const passing = read(table('x [counts]', [32766, 32767, 32768]))
    expect(passing.remarks.map(({ kind }) => kind)).not.toContain('limit-of-bits')
  })

  it('coarse figures', () => {
    const log = read(table('x [mm]', [1, 2, 3, 4, 5]))
    expect(log.remarks).toContainEqual({ kind: 'coarse', column: 'x', steps: 4 })
  })

  it('newtons that are the counts of their neighbour', () => {
    const log = read(table('load raw;force newton;x [mm]', [812, 815, 830], [812, 815, 830], [1, 2, 3]))
    expect(columnOf(only(log), 'gauge')).toMatchObject({ scale: null })
    const named = read(table('load raw;Force [N];x [mm]', [812, 815, 830], [812, 815, 830], [1, 2, 3]))
    const column = named.columns.find(({ header }) => header === 'Force')!
    expect(column).toMatchObject({ scale: null, reason: { kind: 'counts', column: 'load' } })
    expect(named.remarks).toContainEqual({ kind: 'same', column: 'Force', other: 'load' })
  })
})

describe('units', () => {
  it.each([
    ['i [mA]', 'current', 1e-3],
    ['x [in]', 'travel', 0.0254],
    ['F [lbf]', 'gauge', 4.4482216152605],
    ['F [kg]', 'gauge', 9.80665],
    ['v [mm/min]', 'speed', 1e-3 / 60],
    ['u [mV]', 'voltage', 1e-3],
    ['torque [ozf-in]', 'torque', (0.45359237 / 16) * 9.80665 * 0.0254],
    ['torque [mNm]', 'torque', 1e-3],
  ] as const)('%s', (head, channel, scale) => {
    expect(columnOf(only(read(table(head, [1, 2, 3]))), channel).scale).toBeCloseTo(scale, 12)
  })

  it.each(['x [counts]', 'pos [inc]', 'x [rev]', 'angle [deg]', 'Position (pt)'])(
    '%s has no scale until it is given',
    (head) => {
      const log = read(table(head, [1, 2, 3]))
      expect(columnOf(only(log), 'travel')).toMatchObject({ scale: null, si: '', least: 1 })
      expect(log.remarks).toContainEqual(expect.objectContaining({ kind: 'unknown-scale', channel: 'travel' }))
    },
  )

  it.each([
    ['x [counts]', 'position=x:counts*0.005/4096', 'travel', 0.005 / 4096],
    ['x [rev]', 'position=x:rev*0.005', 'travel', 0.005],
    ['x [rev]', 'position=x*-0.005', 'travel', -0.005],
    ['n [rpm]', 'speed=n*0.005', 'speed', 0.005 / 60],
    ['w [rad/s]', 'speed=w:rad/s*0.01', 'speed', 0.01 / (2 * Math.PI)],
    ['torque [%]', 'current=torque:%*0.032', 'current', 0.032],
    ['F [mV]', 'force=F*25', 'gauge', 25],
    ['I*10', 'current=I*10:mA*-1', 'current', -1e-3],
    ['a:b', 'current=a:b', 'current', null],
    ['i', 'current=i:A', 'current', 1],
  ] as const)('%s with %s', (head, column, channel, scale) => {
    const found = columnOf(only(read(table(head, [1, 2, 4]), { column: [column] })), channel)
    if (scale === null) expect(found.scale).toBeNull()
    else expect(found.scale).toBeCloseTo(scale, 15)
  })

  it('the longest header is meant, and a sign turns the ends of a column', () => {
    const log = read(table('a;a:b', [1, 2, 4], [5, 6, 8]), { column: ['current=a:b*-1'] })
    expect(brief(only(log))).toEqual(['- a||null', 'current a:b||-1'])
    expect(log.columns[2]).toMatchObject({ least: -8, most: -5, resolution: 1 })
  })

  it('an offset is in SI, behind unit and sign', () => {
    const recording = only(read(table('Iq', [1, 2, 4]), { column: ['current=Iq:mA*-1+0.02'] }))
    expect(valuesOf(recording, 'current')).toEqual([0.02 - 0.001, 0.02 - 0.002, 0.02 - 0.004])
    expect(columnOf(recording, 'current')).toMatchObject({
      scale: -0.001,
      offset: 0.02,
      least: 0.016,
      most: 0.019,
      reason: { kind: 'person' },
    })
  })

  it('millivolts that stand for a force have no scale', () => {
    expect(brief(only(read(table('Force [mV]', [1, 2, 3]))))).toEqual(['gauge Force|mV|null'])
  })

  it('degrees Fahrenheit', () => {
    expect(valuesOf(only(read(table('Temp [°F]', [32, 212, 50]))), 'temperature')[1]).toBeCloseTo(100, 10)
  })

  it('what a drive is told may be in any unit, or none', () => {
    for (const [head, si] of [
      ['command [V]', 'V'],
      ['Current command [mA]', 'A'],
      ['cmd', ''],
    ] as const)
      expect(columnOf(only(read(table(head, [1, 2, 3]))), 'command').si).toBe(si)
  })
})

describe('which column it is', () => {
  it('the better name wins, and the other says so', () => {
    const { columns } = only(read(table('pos;actual position [mm]', [1, 2, 3], [4, 5, 6])))
    expect(columns.map(({ channel, reason }) => [channel, reason.kind])).toEqual([
      [null, 'other'],
      ['travel', 'name'],
    ])
  })

  it('one that never changes loses', () => {
    expect(columnOf(only(read(table('current 1 [A];current 2 [A]', [0, 0, 0], [1, 2, 3]))), 'current').header).toBe(
      'current 2',
    )
  })

  it('a second position at the motor', () => {
    const recording = only(read(table('motor position [mm];load position [mm]', [1, 2, 3], [4, 5, 6])))
    expect(brief(recording)).toEqual(['motorTravel motor position|mm|0.001', 'travel load position|mm|0.001'])
    expect(columnOf(only(read(table('motor position [mm]', [1, 2, 3]))), 'travel').header).toBe('motor position')
  })

  it('a set-point without a quantity lies where the position lies', () => {
    const { columns } = only(read(table('setpoint;x [mm]', [0, 10, 20, 30], [0, 9, 19, 29])))
    expect(columns[0]).toMatchObject({ channel: 'target', unit: 'mm', reason: { kind: 'follows', column: 'x' } })
    expect(only(read(table('setpoint;x [mm]', [0, 1, 2, 3], [0, 9, 19, 29]))).columns[0]!.channel).toBeNull()
  })

  it('a person decides, and may say that a column is nothing', () => {
    const text = table('a;b;current [A]', [1, 2, 3], [4, 5, 6], [7, 8, 9])
    expect(brief(only(read(text, { column: ['current=b:A', 'position=#2:mm'] })))).toEqual([
      'travel a|mm|0.001',
      'current b|A|1',
      '- current|A|null',
    ])
    expect(only(read(text, { column: ['none=current'] })).columns[2]!.channel).toBeNull()
  })

  it('a trace of the simulator reads with all its columns', () => {
    const { traces } = simulateGrip(PRESETS[0]!.scenario, 'current-clamp')
    const log = read(tracesCsv(traces))
    const recording = only(log)
    expect([...recording.time]).toEqual([...traces.time])
    for (const [id, values] of Object.entries(traces))
      if (id !== 'time') expect(valuesOf(recording, id as 'travel')).toEqual([...values])
    expect(recording.columns.every(({ reason }) => reason.kind === 'trace')).toBe(true)
  })

  it('an excerpt of a real axis', () => {
    const log = read(readFileSync(new URL('ball-screw-axis.csv', import.meta.url)))
    expect(brief(only(log))).toEqual(['target reference|m|1', 'travel position|m|1', 'command command|V|1'])
    expect(only(log)).toMatchObject({ rows: 50, from: 0, to: 0.049 })
    expect(only(log).step).toBeCloseTo(0.001, 12)
    expect(valuesOf(only(log), 'travel')[1]).toBe(1.43e-5)
    expect([log.skipped, log.faults]).toEqual([[], []])
  })
})

describe('refused', () => {
  const text = table('x [mm];i [A];z;door', [1, 2, 3], ['NaN', 'NaN', 'NaN'], [5, 5, 5], ['open', 'shut', 'open'])

  it.each([
    ['current=i', { kind: 'valueless', channel: 'current', header: 'i' }],
    ['current=z', { kind: 'constant', channel: 'current', header: 'z', value: 5 }],
    ['current=door', { kind: 'wordy', channel: 'current', header: 'door' }],
    ['current=w', { kind: 'no-column', header: 'w', columns: ['t', 'x', 'i', 'z', 'door'] }],
    ['current=#9', { kind: 'no-column', header: '#9', columns: ['t', 'x', 'i', 'z', 'door'] }],
    ['current=x:furlong', { kind: 'unit', unit: 'furlong', header: 'x' }],
  ])('%s', (column, fault) => {
    expect(read(text, { column: [column] }).faults).toContainEqual(fault)
  })

  it('two columns for one channel, one column for two, a name of two columns', () => {
    expect(read(text, { column: ['position=x', 'travel=z'] }).faults).toEqual([
      { kind: 'two-for-one', channel: 'travel', headers: ['x', 'z'] },
    ])
    expect(read(text, { column: ['position=x', 'current=x'] }).faults).toEqual([{ kind: 'asked-twice', header: 'x' }])
    expect(read('t [s];x;x\n0;1;2\n1;2;3\n2;3;4\n', { column: ['position=x'] }).faults).toEqual([
      { kind: 'two-columns', header: 'x', places: [2, 3] },
    ])
  })

  it.each([
    [
      'a picture',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]),
      { kind: 'not-text', is: 'a picture' },
    ],
    [
      'a spreadsheet',
      Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0]),
      { kind: 'not-text', is: 'a spreadsheet or another archive' },
    ],
    [
      'noise',
      Uint8Array.from({ length: 5000 }, (_, n) => (n * 197 + (n >> 3)) % 256),
      { kind: 'not-text', is: 'binary data' },
    ],
    ['nothing', '', { kind: 'empty' }],
    ['blank lines', '\n\n\n', { kind: 'no-numbers' }],
    ['words', 'a,b\nfoo,bar\nbaz,qux\n', { kind: 'no-numbers' }],
    ['a header alone', 'time,position\n', { kind: 'no-numbers' }],
    ['two rows', 't [s],x\n0,1\n1,2\n', { kind: 'no-rows' }],
    ['a line without an end', '1,'.repeat(600_000), { kind: 'long-line' }],
  ])('%s', (_, bytes, fault) => {
    expect(read(bytes, { piece: 100_000 }).faults).toEqual([fault])
  })

  it('a log in which nothing moves is read and said', () => {
    expect(read(table('x [mm];i [A]', [5, 5, 5, 5], [1, 2, 3, 4])).remarks).toContainEqual({ kind: 'still' })
    expect(read(table('x [mm];i [A]', [5, 5.001, 5, 5], [1, 2, 3, 4])).remarks).toContainEqual({ kind: 'still' })
    expect(read(table('x [mm];i [A]', [5, 6, 7, 9], [1, 2, 3, 4])).remarks).not.toContainEqual({ kind: 'still' })
    expect(read(table('i [A]', [1, 2, 3, 4])).remarks).not.toContainEqual({ kind: 'still' })
  })
})

describe('whether columns go together', () => {
  const rows = Array.from({ length: 400 }, (_, n) => n)
  const text = (x: (t: number) => number, v: (t: number) => number) =>
    `t [s];x [m];v [m/s]\n${rows.map((n) => [n / 100, x(n / 100), v(n / 100)].join(';')).join('\n')}\n`
  const [sine, slope] = [(t: number) => 0.1 * Math.sin(3 * t), (t: number) => 0.3 * Math.cos(3 * t)]

  it('says nothing where the speed is the derivative of the position', () => {
    expect(read(text(sine, slope)).remarks).toEqual([])
  })

  it('a speed that is filtered comes late', () => {
    // Closed form: the speed is the derivative 80 ms before.
    const { remarks } = read(text(sine, (t) => slope(t - 0.08)))
    expect(remarks).toEqual([{ kind: 'lags', speed: 'v', position: 'x', lag: expect.closeTo(0.08, 9) }])
  })

  it.each([-1, 0.5, 3])('a speed of which the position makes %d times the way', (ratio) => {
    const { remarks } = read(text(sine, (t) => slope(t) / ratio))
    expect(remarks).toEqual([{ kind: 'unlike', speed: 'v', position: 'x', ratio: expect.closeTo(ratio, 1) }])
  })

  it('a voltage that sits at its limit', () => {
    const u = rows.map((n) => Math.min(10, Math.max(-20, 12 * Math.sin(n / 30))))
    const { remarks } = read(`t [s];u [V]\n${u.map((value, n) => `${n};${value}`).join('\n')}\n`)
    const share = u.filter((value) => value === 10).length / u.length
    expect(remarks).toEqual([{ kind: 'at-limit', column: 'u', channel: 'voltage', value: 10, share }])
  })
})
