/** One small invented file for every trait that real drive logs show. */
import { describe, expect, it } from 'vitest'
import { brief, columnOf, MOVE, moved, only, read, valuesOf } from './support.ts'

const close = (values: number[], wanted: number[]) => {
  expect(values.length).toBe(wanted.length)
  values.forEach((value, place) => {
    expect(Math.abs(value - wanted[place]!)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(wanted[place]!)))
  })
}

const POSITIONS = MOVE.map(([, x]) => x / 1000)
const CURRENTS = MOVE.map(([, , i]) => i / 1000)
const TIMES = MOVE.map(([t]) => t / 1000)

/** That all of the move is there, whatever it is written in. */
function isMove(text: string | Uint8Array, asked = {}) {
  const log = read(text, asked)
  const recording = only(log)
  close([...recording.time], TIMES)
  close(valuesOf(recording, 'travel'), POSITIONS)
  close(valuesOf(recording, 'current'), CURRENTS)
  return { log, recording }
}

const HEAD = 'time [ms],position [mm],current [mA]\n'
const commas = (n: number) => String(n).replace('.', ',')

describe('separators, decimals, line ends', () => {
  it.each([
    ['comma', HEAD + moved((row) => row.join(',')), ','],
    ['comma and a blank', HEAD + moved((row) => row.join(', ')), ','],
    ['semicolon', HEAD.replaceAll(',', ';') + moved((row) => row.join(';')), ';'],
    ['semicolon and a blank', HEAD.replaceAll(',', '; ') + moved((row) => row.join('; ')), ';'],
    ['tab', HEAD.replaceAll(',', '\t') + moved((row) => row.join('\t')), '\t'],
    ['bar', HEAD.replaceAll(',', '|') + moved((row) => row.join('|')), '|'],
    [
      'fixed width',
      `${'time_ms'.padStart(10)}${'position_mm'.padStart(14)}${'current_mA'.padStart(14)}\n${moved(([t, x, i]) => String(t).padStart(10) + String(x).padStart(14) + String(i).padStart(14))}`,
      'blanks',
    ],
    ['padded fields', HEAD + moved((row) => row.map((n) => `  ${n}   `).join(',')), ','],
    ['a semicolon behind comma rows', HEAD + moved((row) => `${row.join(',')};`), ','],
    ['a semicolon behind semicolon rows', HEAD.replaceAll(',', ';') + moved((row) => `${row.join(';')};`), ';'],
    [
      'commas of a spreadsheet behind semicolon rows',
      HEAD.replaceAll(',', ';') + moved((row) => `${row.join(';')},,`),
      ';',
    ],
    ['CRLF', (HEAD + moved((row) => row.join(','))).replaceAll('\n', '\r\n'), ','],
    ['CR alone', (HEAD + moved((row) => row.join(','))).replaceAll('\n', '\r'), ','],
    ['no newline at the end', (HEAD + moved((row) => row.join(','))).trimEnd(), ','],
    ['a byte-order mark', `\uFEFF${HEAD}${moved((row) => row.join(','))}`, ','],
    ['rows in quotes', HEAD + moved((row) => `"${row.join(', ')}"`), ','],
    ['figures in quotes', HEAD + moved((row) => row.map((n) => `"${n}"`).join(',')), ','],
    ['quotes behind a blank', HEAD + moved((row) => row.map((n) => `"${n}"`).join(', ')), ','],
    ['exponents', HEAD + moved((row) => row.map((n) => n.toExponential().replace('e', 'E')).join(',')), ','],
    [
      'plus signs and exponents of three digits',
      HEAD + moved((row) => row.map((n) => (n < 0 ? `${n}e+000` : `+${n}e+000`)).join(',')),
      ',',
    ],
    ['exponents with D', HEAD + moved((row) => row.map((n) => `${n}D+00`).join(',')), ','],
    ['a real minus', HEAD + moved((row) => row.map((n) => String(n).replace('-', '\u2212')).join(',')), ','],
  ])('%s', (_, text, separator) => {
    const { log } = isMove(text)
    expect(log.layout).toMatchObject({ separator, decimal: '.' })
    expect(log.skipped).toEqual([])
  })

  it('names and values in one line', () => {
    const { log, recording } = isMove(moved(([t, x, i]) => `Time_ms: ${t} Position_mm: ${x} Current_mA: ${i}`))
    expect(log.layout!.separator).toBe('pairs')
    expect(brief(recording)).toEqual(['travel Position|mm|0.001', 'current Current|mA|0.001'])
  })

  it.each([';', '\t'])('a decimal comma with %j', (separator) => {
    const text = HEAD.replaceAll(',', separator) + moved((row) => row.map(commas).join(separator))
    expect(isMove(text).log.layout!.decimal).toBe(',')
  })

  it('a decimal comma in the time column alone, padded, with an empty column in the middle', () => {
    const head = 't [ms]; x [mm];; i [mA];\n'
    const text = head + moved(([t, x, i]) => `  ${commas(t + 0.5)};  ${x};;   ${i};`)
    const recording = only(read(text))
    close(
      [...recording.time],
      MOVE.map(([t]) => (t + 0.5) / 1000),
    )
    close(valuesOf(recording, 'travel'), POSITIONS)
    close(valuesOf(recording, 'current'), CURRENTS)
    expect(brief(recording)).toEqual(['travel x|mm|0.001', 'current i|mA|0.001'])
  })

  it('thousands by commas in quotes, and by points', () => {
    const text = `t [ms],x [mm]\n${[1000, 1500.5, 2000, 2500].map((n, row) => `${row},"${n.toLocaleString('en-US')}"`).join('\n')}\n`
    close(valuesOf(only(read(text)), 'travel'), [1, 1.5005, 2, 2.5])
    const german = `t [ms];x [mm]\n${['1.000', '1.500,5', '2.000', '2.500'].map((n, row) => `${row};${n}`).join('\n')}\n`
    close(valuesOf(only(read(german)), 'travel'), [1, 1.5005, 2, 2.5])
  })

  it('a line that breaks off in mid-row is left out and said', () => {
    const { log } = isMove(`${HEAD}${moved((row) => row.join(','))}60,4.`)
    expect(log.skipped).toEqual([{ row: 8, lastRow: 8, why: { kind: 'cut' } }])
  })

  it('a last figure that breaks off is left out where all others have more digits', () => {
    const text = `t [s],x [m]\n0.0,1.250\n0.1,1.375\n0.2,1.500\n0.3,1.6`
    const log = read(text)
    expect(valuesOf(only(log), 'travel')).toEqual([1.25, 1.375, 1.5])
    expect(log.skipped).toEqual([{ row: 5, lastRow: 5, why: { kind: 'cut' } }])
  })

  it('UTF-8 with a micro sign and an umlaut', () => {
    const recording = only(read('Zeit [µs];Prüfkraft [N]\n0;1\n100;2\n200;3\n'))
    close([...recording.time], [0, 1e-4, 2e-4])
    expect(columnOf(recording, 'gauge').header).toBe('Prüfkraft')
  })

  it('8-bit Latin, in the names or far below', () => {
    const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0))
    const log = read(latin('Temps (s);Accélération (m/s²);Angle (°);Effort (N)\n0;1;2;3\n1;2;3;4\n2;3;5;5\n'))
    expect(log.layout!.encoding).toBe('windows-1252')
    expect(brief(only(log))).toEqual(['- Accélération|m/s²|null', 'travel Angle|°|null', 'gauge Effort|N|1'])
    const far = latin(
      `t [s],x [m]\n${Array.from({ length: 2000 }, (_, n) => `${n},${n / 8}`).join('\n')}\n# fin de l'été\n`,
    )
    expect(only(read(far, { piece: 5000 })).rows).toBe(2000)
  })

  it.each(['utf-16le', 'utf-16be'])('%s, with and without a mark', (encoding) => {
    const text = HEAD + moved((row) => row.join(','))
    const wide = (all: string) => {
      const bytes = Buffer.from(all, 'utf16le')
      return Uint8Array.from(encoding === 'utf-16le' ? bytes : bytes.swap16())
    }
    expect(isMove(wide(`\uFEFF${text}`)).log.layout!.encoding).toBe(encoding.toUpperCase())
    isMove(wide(text))
  })
})

describe('before the numbers', () => {
  const rows = moved((row) => row.join(';'))
  const head = HEAD.replaceAll(',', ';')

  it('lines of all kinds', () => {
    const before = [
      'Date:;2024-03-05',
      'Sampling period:;4.000',
      'Axis of the press, new belt',
      '',
      '"Trig:;0;""a b"""',
      '',
    ]
    const { log } = isMove(`${before.join('\n')}\n${head}${rows}`)
    expect(log.layout).toMatchObject({ namesLine: 7, unitsLine: 0, dataLine: 8 })
    expect(log.layout!.preamble.slice(0, 2)).toEqual(before.slice(0, 2))
    expect(log.skipped).toEqual([])
  })

  it.each(['# recorded at noon\n# ', '% ', '%', '#', '// '])('comment marks %j, even before the names', (mark) => {
    isMove(mark + head + rows)
  })

  it.each(['1709633000.25\n', '2024-03-05 10:11:12\n'])('a bare time stamp in line 1: %j', (stamp) => {
    isMove(stamp + head + rows)
  })

  it('a second name row whose first cell alone is a unit', () => {
    const log = read('Time,Ana 1,Ana 2\nms,Speed,Torque\n0,1,2\n10,2,3\n20,4,5\n')
    expect(brief(only(log))).toEqual(['speed Speed||null', 'torque Torque||null'])
    close([...only(log).time], [0, 0.01, 0.02])
    expect(log.layout).toMatchObject({ namesLine: 2, unitsLine: 2 })
  })

  it.each([
    ['an empty name above ms', ';n;M\nms;rpm;%\n', ['speed n|rpm|null', 'torque M|%|null']],
    ['brackets', 'Zeit;Position;Strom\n[ms];[pt];[mA]\n', ['travel Position|pt|null', 'current Strom|mA|0.001']],
    [
      'parentheses',
      'time;load;travel\n(ms);(lbf);(in)\n',
      ['gauge load|lbf|4.4482216152605', 'travel travel|in|0.0254'],
    ],
    ['units above the names', 'ms;mm/s;mA\nt;v;i\n', ['speed v|mm/s|0.001', 'current i|mA|0.001']],
    ['units alone', 'ms;mm/s;mA\n', ['speed |mm/s|0.001', 'current |mA|0.001']],
    ['fewer units than names', 't;x;i\nms;mm\n', ['travel x|mm|0.001', 'current i||null']],
  ])('a unit row: %s', (_, lines, wanted) => {
    const recording = only(read(`${lines}0;1;2\n10;2;3\n20;4;5\n`))
    expect(brief(recording)).toEqual(wanted)
    close([...recording.time], [0, 0.01, 0.02])
  })

  it.each([
    ['torque [Nm]', 'torque torque|Nm|1'],
    ['Speed (RPM)', 'speed Speed|RPM|null'],
    ['[vel [rad/s]', 'speed vel|rad/s|null'],
    ['vel [mm/s', 'speed vel|mm/s|0.001'],
    ['pos/mm', 'travel pos|mm|0.001'],
    ['Position, mm', 'travel Position|mm|0.001'],
    ['Strom in mA', 'current Strom|mA|0.001'],
    ['x_mm', 'travel x|mm|0.001'],
    ['I_a', 'current I|a|1'],
    ['load <kN>', 'gauge load|kN|1000'],
    ['Force {kgf}', 'gauge Force|kgf|9.80665'],
    ['v_in', '- v_in||null'],
    ['motor_speed', 'speed motor_speed||null'],
    ['Actual output current [A]', 'current Actual output current|A|1'],
    ['Output current [A]', 'command Output current|A|1'],
  ])('a unit in the name %s', (name, wanted) => {
    const recording = only(read(`Elapsed_s;${name}\n0;1\n1;2\n2;4\n`))
    expect(brief(recording)).toEqual([wanted])
    expect(recording.to).toBe(2)
  })

  it('names that hold a blank in a table of blanks', () => {
    const wide =
      '   t (s)   Motor speed   Force\n    0.0         1.0     2.0\n    0.1         2.0     3.0\n    0.2         3.0     5.0\n'
    expect(brief(only(read(wide)))).toEqual(['speed Motor speed||null', 'gauge Force||null'])
    const narrow =
      'time_s Motor speed Force\n   0.0         1.0   2.0\n   0.1         2.0   3.0\n   0.2         3.0   5.0\n'
    expect(brief(only(read(narrow)))).toEqual(['speed Motor speed||null', 'gauge Force||null'])
  })

  it.each([
    [
      'Temps (ms);Consigne (mm);Position mesurée (mm);Courant Moteur (mA);Entrée Ana. 1;Couple (Nm);Vitesse (mm/s);Tension (V)',
      'target travel current - torque speed voltage',
    ],
    [
      'Zeit [ms];Lagesollwert [mm];Lageistwert [mm];Motorstrom [A];Drehmoment [Nm];Drehzahl [1/min];Kraft [N];Spannung [V]',
      'target travel current torque speed gauge voltage',
    ],
    [
      'Tempo (ms);Riferimento (mm);Posizione (mm);Corrente (A);Coppia (Nm);Velocità (mm/s);Forza (N);Tensione (V)',
      'target travel current torque speed gauge voltage',
    ],
    [
      'Tiempo (ms);Consigna (mm);Posición (mm);Corriente (A);Par (Nm);Velocidad (mm/s);Fuerza (N);Voltaje (V)',
      'target travel current torque speed gauge voltage',
    ],
    [
      'Time (ms);Position setpoint (mm);Actual position (mm);Iq actual (A);Motor torque (Nm);Velocity (mm/s);Gauge (N);Voltage (V);Current command (A);Desired speed (mm/s);Following error (mm)',
      'target travel current torque speed gauge voltage command wantedSpeed -',
    ],
  ])('names in %s', (names, wanted) => {
    const count = names.split(';').length
    const lines = [0, 1, 2, 3].map((n) => Array.from({ length: count }, (_, c) => n * (c + 1)).join(';'))
    const recording = only(read(`${names}\n${lines.join('\n')}\n`))
    expect(recording.columns.map(({ channel }) => channel ?? '-').join(' ')).toBe(wanted)
  })

  it('no names at all: refused with what there is, read once it is said', () => {
    const text = '0,0.5,1\n10,0.75,2\n20,1.25,4\n'
    expect(read(text).faults).toEqual([{ kind: 'no-time', columns: ['#1', '#2', '#3'], period: '' }])
    const recording = only(read(text, { column: ['time=#1:ms', 'position=#2:mm', 'current=#3:mA*-1+0.5'] }))
    close([...recording.time], [0, 0.01, 0.02])
    close(valuesOf(recording, 'travel'), [0.0005, 0.00075, 0.00125])
    close(valuesOf(recording, 'current'), [0.499, 0.498, 0.496])
  })

  it('a line break inside a quoted field', () => {
    const text = `${HEAD.trimEnd()},note\n${moved((row) => `${row.join(',')},"slow\nmove"`)}`
    const { log, recording } = isMove(text)
    expect(recording.rows).toBe(6)
    expect(recording.lastLine).toBe(12)
    expect(log.skipped).toEqual([])
  })

  it('doubled quotes, separators and line breaks inside a quoted field', () => {
    const text = `${HEAD.trimEnd()},note\n${moved((row) => `${row.join(',')},"he said ""go"", and\n""now"""`)}`
    expect(isMove(text).log.skipped).toEqual([])
  })

  it('a quoted field with nothing in it', () => {
    const text = `note,${HEAD.trimEnd()},note\n${moved((row) => `"slow, then quick",${row.join(',')},""`)}`
    const { log, recording } = isMove(text)
    expect(recording).toMatchObject({ rows: 6, lastLine: 7 })
    expect(log.skipped).toEqual([])
  })

  it('a stray quote costs its own line only', () => {
    const text =
      HEAD +
      moved((row) => row.join(',')) +
      `60,"4.5,1\n${Array.from({ length: 99 }, (_, n) => `${70 + 10 * n},5,0`).join('\n')}\n`
    const recording = only(read(text))
    expect(recording.rows).toBe(6 + 1 + 99)
  })

  it('names that are fewer than the columns are not used', () => {
    const log = read('t,x\n0,1,5\n1,2,5\n', { column: ['time=#1:s'] })
    expect(log).toMatchObject({ faults: [{ kind: 'no-rows' }], remarks: [{ kind: 'misnamed', names: 2, columns: 3 }] })
    const longer = read('t,x\n0,1,5\n1,2,5\n2,3,6\n', { column: ['time=#1:s'] })
    expect(longer.remarks).toContainEqual({ kind: 'misnamed', names: 2, columns: 3 })
    expect(brief(only(longer))).toEqual(['- ||null', '- ||null'])
  })
})

describe('after and between the numbers', () => {
  const rows = moved((row) => row.join(','))

  it('gains after a blank line, an end mark, blank lines, the header again', () => {
    const after = `\nKp,3.2\nKi: 40\nEOF\n${HEAD}\n\n`
    const { log } = isMove(HEAD + rows + after)
    expect(log.skipped).toEqual([
      { row: 9, lastRow: 9, why: { kind: 'note', column: 'time', text: 'Kp' } },
      { row: 10, lastRow: 10, why: { kind: 'text', text: 'Ki: 40' } },
      { row: 11, lastRow: 11, why: { kind: 'end', text: 'EOF' } },
      { row: 12, lastRow: 12, why: { kind: 'header' } },
    ])
  })

  it('padding rows at the end', () => {
    const { log } = isMove(`${HEAD}${rows}${'0,4.25,-60\n'.repeat(5)}`)
    expect(log.skipped).toEqual([{ row: 8, lastRow: 12, why: { kind: 'standing' } }])
  })

  it.each([
    ['time restarts', HEAD + rows + rows],
    ['the header stands between', HEAD + rows + HEAD + rows],
    [
      'text stands between',
      `${HEAD}MOVING OUT..\n${rows}MOVING BACK..\n${moved(([t, x, i]) => [t + 60, x, i].join(','))}`,
    ],
    [
      'time jumps back to where it never was',
      HEAD + moved(([t, x, i]) => [t + 1000, x, i].join(',')) + moved(([t, x, i]) => [t + 300, x, i].join(',')),
    ],
    ['a blank line and a gap', `${HEAD}${rows}\n${moved(([t, x, i]) => [t + 600, x, i].join(','))}`],
  ])('several recordings: %s', (_, text) => {
    const log = read(text)
    expect(log.faults).toEqual([])
    expect(log.recordings.map((each) => each.rows)).toEqual([6, 6])
    for (const recording of log.recordings) close(valuesOf(recording, 'travel'), POSITIONS)
  })

  it.each(['Trial', 'flag', 'Cycle', 'Versuch Nr.', 'run'])('several recordings: a column %s', (name) => {
    const text = `${HEAD.trimEnd()},${name}\n${moved((row) => [...row, 1].join(','))}${moved(([t, x, i]) => [t + 60, x, i, 2].join(','))}`
    const log = read(text)
    expect(log.recordings.map((each) => [each.rows, each.line, each.lastLine])).toEqual([
      [6, 2, 7],
      [6, 8, 13],
    ])
    expect(valuesOf(log.recordings[1]!, 'recording')).toEqual([2, 2, 2, 2, 2, 2])
  })

  it('a blank line between rows that go on, or between all rows, parts nothing', () => {
    isMove(`${HEAD}${rows.replace('20,', '\n20,')}`)
    isMove(`${HEAD}${rows.replaceAll('\n', '\n\n')}`)
    isMove(`${HEAD}${rows.replace('20,', '# contact\n20,')}`)
    expect(isMove(`${HEAD}${rows.replace('20,', ',,,\n20,')}`).log.skipped).toEqual([])
  })

  it('several clocks: time, force, time, current', () => {
    const text = `t,F [N],t,I [mA]\n${[0, 1, 2, 3].map((n) => [n / 10, n, n / 10 + 0.05, 10 * n].join(',')).join('\n')}\n`
    const log = read(text)
    const recording = only(log)
    expect([...recording.time]).toEqual([0, 0.1, 0.2, 0.3])
    expect(valuesOf(recording, 'gauge')).toEqual([0, 1, 2, 3])
    close(valuesOf(recording, 'current').slice(1), [0.005, 0.015, 0.025])
    expect(valuesOf(recording, 'current')[0]).toBeNaN()
    expect(columnOf(recording, 'current').clock).toBe('t')
    expect(log.remarks).toContainEqual({ kind: 'interpolated', columns: ['I'], clock: 't' })
  })

  it('one clock per channel with other steps and lengths', () => {
    const lines = Array.from({ length: 9 }, (_, n) => (n < 5 ? `${n},${n},${2 * n},${n}` : `${n},${n}`))
    const recording = only(read(`t1 [ms];x [mm];t2 [ms];i [A]\n${lines.join('\n').replaceAll(',', ';')}\n`))
    expect(recording.rows).toBe(9)
    expect(valuesOf(recording, 'current')).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4])
  })

  it('recordings side by side, each with its own clock', () => {
    const lines = Array.from({ length: 6 }, (_, n) =>
      n < 4 ? `${n};${n};${n};${10 * n};${5 * n};1${n}` : `${n};${n};${n};;;`,
    )
    const text = `t1 [ms];x1 [mm];i1 [A];t2 [ms];x2 [mm];i2 [A]\n${lines.join('\n')}\n`
    const log = read(text)
    expect(log.recordings.map(({ rows: n, to }) => [n, to])).toEqual([
      [6, 0.005],
      [4, 0.03],
    ])
    expect(brief(log.recordings[1]!)).toEqual(['travel x2|mm|0.001', 'current i2|A|1'])
    expect(valuesOf(log.recordings[1]!, 'current')).toEqual([10, 11, 12, 13])
    const said = read(text, { column: ['position=#5:m', 'current=#3:mA'] })
    expect(said.recordings.map(brief)).toEqual([
      ['travel x1|mm|0.001', 'current i1|mA|0.001'],
      ['travel x2|m|1', 'current i2|A|1'],
    ])
    expect(log.skipped).toEqual([])
  })

  it('a note typed into a cell beside an absurd value never reaches a fit', () => {
    const text = 'F [N];x [mm];t [s]\n1;0.5;0.0,,\n2;1;0.1,,\n0;-1500,,was -9;0.2\n3;2;0.3,,\n'.replace(
      '0.2\n',
      '0.2,,\n',
    )
    const log = read(text)
    expect(valuesOf(only(log), 'travel')).toEqual([0.0005, 0.001, 0.002])
    expect(log.skipped).toEqual([{ row: 4, lastRow: 4, why: { kind: 'note', column: 'x', text: '-1500,,was -9' } }])
    const last = read('t [s];F [N];x [mm]\n0.1;3;-7.4,,\n0.2;3;-8,,\n0.25;0;-1500,,was -9\n0.3;2;-9,,\n')
    close(valuesOf(only(last), 'travel'), [-0.0074, -0.008, -0.009])
  })
})
