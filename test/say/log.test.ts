import { describe, expect, it } from 'vitest'
import {
  clockText,
  columnReason,
  inPlainSpaces,
  type LogFault,
  type LogRemark,
  layoutText,
  logFaultText,
  logRemarkText,
  type SkipReason,
  skipText,
  wordingOf,
} from '../../sim/index.ts'

const WORDS = wordingOf('si')

const FAULTS: [LogFault, string][] = [
  [{ kind: 'empty' }, 'empty'],
  [{ kind: 'not-text', is: 'a picture' }, 'no text but a picture'],
  [{ kind: 'long-line' }, 'without a line end'],
  [{ kind: 'no-numbers' }, 'no rows of numbers'],
  [{ kind: 'no-rows' }, 'three rows or more'],
  [{ kind: 'no-time', columns: ['x', 'i'], period: '' }, 'No column is a time. Give --rate HZ'],
  [{ kind: 'no-time', columns: ['x'], period: 'Period: 4' }, '“Period: 4” gives none with a unit'],
  [{ kind: 'time-unit', column: 't', step: 10 }, '--column "time=t:ms"'],
  [{ kind: 'backwards', line: 7, from: 2, to: 1.5 }, 'in line 7: 1.5 after 2'],
  [{ kind: 'no-column', header: 'w', columns: ['t', 'x'] }, 'no column “w”. There are “t”, “x”, or #1 to #2'],
  [{ kind: 'two-columns', header: 't', places: [1, 3] }, '#1 or #3'],
  [{ kind: 'two-for-one', channel: 'travel', headers: ['a', 'b'] }, '“a”, “b” cannot all be position'],
  [{ kind: 'asked-twice', header: 'a' }, 'named twice'],
  [{ kind: 'constant', channel: 'current', header: 'i', value: 5 }, '“i” never changes from 5'],
  [{ kind: 'valueless', channel: 'current', header: 'i' }, '“i” holds no figure'],
  [{ kind: 'wordy', channel: 'current', header: 'door' }, '“door” holds words'],
  [{ kind: 'unit', unit: 'furlong', header: 'x' }, '“furlong” of column “x” is not known'],
]

const REMARKS: [LogRemark, string][] = [
  [{ kind: 'time-assumed', column: 't', step: 0.001 }, 'seconds were taken'],
  [{ kind: 'time-contradicted', said: '8Hz', factor: 0.001, taken: true }, 'the time was multiplied by 0.001'],
  [{ kind: 'time-contradicted', said: 's', factor: 0.001, taken: false }, 'Nothing was changed'],
  [{ kind: 'misnamed', names: 2, columns: 3 }, '2 names stand above 3 columns'],
  [{ kind: 'thinned', every: 8 }, 'every 8th row'],
  [{ kind: 'repeated', rows: 8, of: 12 }, '8 rows of 12'],
  [{ kind: 'limit-of-bits', column: 'x', value: -32768, rows: 2 }, 'sits at -32768, a limit of 16 bits, in 2 rows'],
  [{ kind: 'at-limit', column: 'u', channel: 'voltage', value: 10, share: 0.25 }, 'sits at 10 in 25 % of the rows'],
  [{ kind: 'unlike', speed: 'v', position: 'x', ratio: -2 }, 'against the sign of “v”, 2 times its way'],
  [{ kind: 'unlike', speed: 'v', position: 'x', ratio: 0.5 }, '0.5 times the way that “v” makes'],
  [{ kind: 'lags', speed: 'v', position: 'x', lag: 0.032 }, '“v” comes 32 ms after'],
  [{ kind: 'coarse', column: 'x', steps: 4 }, '4 steps of its resolution'],
  [{ kind: 'same', column: 'F', other: 'raw' }, 'figure by figure “raw”'],
  [{ kind: 'unknown-scale', column: 'x', unit: 'inc', channel: 'travel' }, '--column "position=x*SCALE"'],
  [{ kind: 'unknown-scale', column: 'F', unit: '', channel: 'gauge' }, '--column "force=F:UNIT"'],
  [{ kind: 'still' }, 'record moves'],
  [{ kind: 'interpolated', columns: ['i', 'u'], clock: 't2' }, '“i”, “u” have a clock of their own, “t2”'],
  [{ kind: 'constant', column: 'z', channel: 'current' }, '“z” never changes'],
]

const SKIPS: [SkipReason, string][] = [
  [{ kind: 'text', text: 'BACK' }, 'text: “BACK”'],
  [{ kind: 'comment', text: '# 1' }, 'comment: “# 1”'],
  [{ kind: 'end', text: 'EOF' }, 'a mark of the end: “EOF”'],
  [{ kind: 'header' }, 'the header again'],
  [{ kind: 'note', column: 'x', text: 'was -9' }, '“was -9” in column “x” is no figure'],
  [{ kind: 'fields', given: 4, wanted: 3 }, '4 fields where there are 3 columns'],
  [{ kind: 'cut' }, 'breaks off'],
  [{ kind: 'no-time' }, 'no time'],
  [{ kind: 'repeated' }, 'the time of the row before'],
  [{ kind: 'standing' }, 'stands still'],
  [{ kind: 'short', rows: 1 }, '1 row only'],
]

describe('what is said of a log', () => {
  it.each(FAULTS)('%j', (fault, part) => {
    expect(logFaultText(fault)).toContain(part)
  })
  it.each(REMARKS)('%j', (remark, part) => {
    expect(inPlainSpaces(logRemarkText(remark, WORDS))).toContain(part)
  })
  it.each(SKIPS)('%j', (why, part) => {
    expect(skipText(why)).toContain(part)
  })

  it('how time is told', () => {
    const said = (clock: Parameters<typeof clockText>[0]) => inPlainSpaces(clockText(clock, WORDS))
    expect(said({ kind: 'column', column: 't', place: 1, unit: 'ms', scale: 0.001, by: 'header' })).toBe(
      'column “t” in ms, as it says',
    )
    expect(said({ kind: 'column', column: 'n', place: 1, unit: 'ticks', scale: 5e-4, by: 'clock' })).toBe(
      'column “n” in ticks of 0.0005 s, by the clock that the lines above name',
    )
    expect(said({ kind: 'column', column: 'n', place: 1, unit: '', scale: 0.5, by: 'person' })).toBe(
      'column “n” in units of 0.5 s, as you say',
    )
    expect(said({ kind: 'rate', rate: 8000, by: 'preamble', text: 'fs = 8 kHz' })).toBe(
      'no column: rows at 8000 Hz, by “fs = 8 kHz”',
    )
  })

  it('how the text is laid out', () => {
    const layout = {
      encoding: 'UTF-8',
      separator: ';',
      decimal: ',',
      preamble: ['a'],
      namesLine: 2,
      unitsLine: 3,
      dataLine: 4,
      thinned: 1,
    } as const
    expect(layoutText({ ...layout, preamble: ['a'] })).toBe(
      'UTF-8, semicolon, decimal comma, names in line 2, units in line 3, numbers from line 4',
    )
    expect(layoutText({ ...layout, preamble: [], namesLine: 0, unitsLine: 0 })).toBe(
      'UTF-8, semicolon, decimal comma, no names',
    )
  })

  it('why a column is what it is', () => {
    const say = (reason: Parameters<typeof columnReason>[0]['reason'], unit = '') =>
      columnReason({ reason, unit, channel: null })
    expect(say({ kind: 'name', word: 'current', unfit: false }, 'A')).toBe('named current, unit A')
    expect(say({ kind: 'name', word: 'force', unfit: true }, 'mV')).toBe(
      'named force, though mV measures something else',
    )
    expect(say({ kind: 'other', channel: 'travel', column: 'x' })).toBe('“x” was taken for position')
    for (const kind of ['person', 'trace', 'stamps', 'unit', 'empty', 'text', 'no-clock', 'rate', 'unknown'] as const)
      expect(say({ kind })).not.toMatch(/undefined|^$/)
    for (const kind of ['follows', 'counts', 'second-clock'] as const)
      expect(say({ kind, column: 'x' })).toContain('“x”')
    expect(say({ kind: 'not', word: 'lag' })).toBe('named lag')
  })
})
