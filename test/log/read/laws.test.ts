/** Laws over random tables: whatever they are written in, the same figures come back. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { figureOf } from '../../../sim/log/read/figures.ts'
import { quickRow } from '../../../sim/log/read/quick.ts'
import { only, read } from './support.ts'

const RUNS = { numRuns: 300, seed: 5 }

/** Of any size, and short ones as recorders write them. */
const figure = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer({ min: -99999, max: 99999 }).map((n) => n / 1000),
  fc.integer({ min: -32767, max: 32766 }),
)

const STYLES = fc.record({
  separator: fc.constantFrom(',', ';', '\t', '|', ', ', '; ', ' ', '   '),
  comma: fc.boolean(),
  end: fc.constantFrom('\n', '\r\n', '\r'),
  last: fc.boolean(),
  encoding: fc.constantFrom('utf-8', 'utf-8 with a mark', 'latin', 'utf-16le', 'utf-16be'),
  names: fc.constantFrom('t (s)', 'Zeit [s]', 'Elapsed_s'),
  units: fc.constantFrom('[mm]', '[µm]', '(in)', '[counts]'),
  quoted: fc.boolean(),
  padded: fc.boolean(),
  tail: fc.constantFrom('', '', ';'),
  preamble: fc.constantFrom([], ['Recorder 7', ''], ['# made at noon'], ['Date:;2024-03-05', 'Test: 3']),
  empty: fc.boolean(),
  piece: fc.constantFrom(1, 7, 4096, 1 << 20),
})

type Style = typeof STYLES extends fc.Arbitrary<infer T> ? T : never

function bytesOf(text: string, encoding: string): Uint8Array {
  if (encoding === 'latin') return Uint8Array.from(text, (letter) => letter.charCodeAt(0))
  if (encoding === 'utf-8') return new TextEncoder().encode(text)
  if (encoding === 'utf-8 with a mark') return new TextEncoder().encode(`\uFEFF${text}`)
  const wide = Buffer.from(`\uFEFF${text}`, 'utf16le')
  return Uint8Array.from(encoding === 'utf-16le' ? wide : wide.swap16())
}

function written(rows: readonly (readonly number[])[], style: Style): Uint8Array {
  const { end, last, encoding, names, units, preamble } = style
  const blank = style.separator.trim() === '' && style.separator !== '\t'
  const mark = style.comma && style.separator[0] !== ',' ? ',' : '.'
  const field = (value: number) => {
    const plain = String(value).replace('.', mark)
    const text = style.quoted && !blank ? `"${plain}"` : plain
    return style.padded && !style.quoted ? ` ${text} ` : text
  }
  const tail = blank || style.separator[0] === ';' ? '' : style.tail
  const head = blank
    ? [names.replaceAll(' ', '_'), 'x', `Lage${units}`]
    : [names, ...(style.empty ? [''] : ['x']), `Position mesurée ${units}`]
  const lines = rows.map((row, n) => [n, ...row.slice(0, 2)].map(field).join(style.separator) + tail)
  return bytesOf([...preamble, head.join(style.separator), ...lines].join(end) + (last ? end : ''), encoding)
}

/** The last figure has fewer digits behind its mark than any before: as a file ends that broke off, if nothing ends its last line. */
function looksCut(rows: readonly (readonly number[])[]): boolean {
  const digits = rows.map((row) => /^-?\d+\.(\d+)$/.exec(String(row[1]))?.[1]?.length ?? 0)
  return digits.pop()! < Math.min(...digits)
}

describe('a table of figures', () => {
  it('reads back to the last bit, whatever separates, marks, ends, encodes and surrounds it', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(figure, figure), { minLength: 4, maxLength: 30 }), STYLES, (rows, style) => {
        fc.pre(style.last || !looksCut(rows))
        const log = read(written(rows, style), { piece: style.piece })
        const recording = only(log)
        expect([...recording.time]).toEqual(rows.map((_, n) => n))
        const scales = recording.columns.map(({ scale }) => scale ?? 1)
        expect(recording.columns).toHaveLength(2)
        for (const column of [0, 1])
          expect([...recording.values[column]!].map(positive)).toEqual(
            rows.map((row) => positive(row[column]! * scales[column]!)),
          )
        expect(log.skipped.filter(({ why }) => why.kind !== 'comment')).toEqual([])
      }),
      RUNS,
    )
  })

  it('never fails on any bytes at all', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), fc.constantFrom(1, 400), (bytes, piece) => {
        const log = read(bytes, { piece })
        expect(log.faults.length > 0).toBe(log.recordings.length === 0)
      }),
      RUNS,
    )
  })

  it('never fails on any text of the letters that tables are made of', () => {
    const text = fc.string({ unit: fc.constantFrom(...'01259.,;\t \n\r"-+eE:#tx[]ms'), maxLength: 300 })
    fc.assert(
      fc.property(text, (letters) => {
        const log = read(`t [s];x [mm]\n0;1\n1;2\n2;3\n${letters}`)
        for (const { time } of log.recordings)
          expect(time.every((stamp, row) => row === 0 || stamp > time[row - 1]!)).toBe(true)
      }),
      RUNS,
    )
  })
})

/** Zero has no sign in a log. */
const positive = (value: number) => (value === 0 ? 0 : value)

describe('a plain row', () => {
  it('gives what each field gives', () => {
    const field = fc.oneof(
      figure.map(String),
      figure.map((value) => value.toFixed(4)),
      figure.map((value) => value.toExponential(6)),
      fc.constantFrom('', ' ', '+7', '-.5', '5.', '007', '1e5', '1E-007', '-0', '0.1e-20', '1e400', '9007199254740993'),
    )
    fc.assert(
      fc.property(fc.array(field, { minLength: 1, maxLength: 8 }), (fields) => {
        const figures = new Float64Array(8).fill(Number.NaN)
        const text = `??${fields.join(';')}!!`
        const count = quickRow(text, 2, text.length - 2, { separator: 59, mark: 46 }, figures)
        if (count < 0) return
        expect(count).toBe(fields.length)
        expect([...figures.subarray(0, count)]).toEqual(fields.map((each) => figureOf(each, '.')))
      }),
      { ...RUNS, numRuns: 2000 },
    )
  })

  it('takes the usual ones', () => {
    const figures = new Float64Array(3)
    expect(quickRow('12,5;-0,25;1e3', 0, 14, { separator: 59, mark: 44 }, figures)).toBe(3)
    expect([...figures]).toEqual([12.5, -0.25, 1000])
  })

  it.each(['1;x', '1;"2"', '1;2;3;4', '1 2', '1..2', '--1', '1;-', 'e5', '1;nan', '1;0x10', '# 1'])(
    'leaves %j to the others',
    (text) => {
      expect(quickRow(text, 0, text.length, { separator: 59, mark: 46 }, new Float64Array(3))).toBe(-1)
    },
  )
})
