import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { here } from './here.ts'

const folder = mkdtempSync(join(tmpdir(), 'jawbench-log-'))
const file = (name: string, content: string | Uint8Array) => {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}

const log = (args: string[]) => here('log', ...args)

/** The program in a process of its own, with a log on standard input. */
function logged(input: string | Uint8Array) {
  const ran = spawnSync(process.execPath, ['.tools/jawbench.mjs', 'log', '-'], { encoding: 'utf8', input })
  return { status: ran.status, stdout: ran.stdout, stderr: ran.stderr }
}

const TEXT =
  'Zeit [ms];Position [mm];Iq;Motorstrom [A]\n0;0,5;100;1\n10;1,5;200;2\n20;2,5;300;was 9\n30;4,5;400;4\nEOF\n'

describe('jawbench log', () => {
  it('prints what was read, how it was understood and what was left out', async () => {
    const { status, stdout } = await log([file('a.csv', TEXT), '--column', 'current=Iq:mA*-1', '--format', 'json'])
    expect(status).toBe(0)
    const answer = JSON.parse(stdout)
    expect(answer).toMatchObject({
      format: 'jawbench-log',
      version: 1,
      layout: { encoding: 'UTF-8', separator: ';', decimal: ',', namesLine: 1, dataLine: 2 },
      time: { kind: 'column', column: 'Zeit', unit: 'ms' },
      skipped: [
        { row: 4, lastRow: 4, why: '“was 9” in column “Motorstrom” is no figure' },
        { row: 6, lastRow: 6, why: 'a mark of the end: “EOF”' },
      ],
    })
    const [recording] = answer.recordings
    expect(recording).toMatchObject({ rows: 3, from: 0, to: 0.03, gaps: 0, repeated: 0, line: 2, lastLine: 5 })
    expect(recording.columns).toMatchObject([
      { header: 'Zeit', place: 1, channel: 'time', unit: 'ms', scale: 0.001, least: 0, most: 0.03 },
      { header: 'Position', channel: 'travel', unit: 'mm', scale: 0.001, reason: 'named position, unit mm' },
      { header: 'Iq', channel: 'current', unit: 'mA', scale: -0.001, least: -0.4, most: -0.1, reason: 'as you say' },
      { header: 'Motorstrom', channel: null, reason: '“Iq” was taken for current' },
    ])
    expect(recording.time ?? recording.values).toBeUndefined()
  })

  it('tells on the table what it took for granted', async () => {
    const { status, stdout } = await log([file('b.csv', 'Time,Position [mm]\n0,0\n0.01,1\n0.02,2\n')])
    expect(status).toBe(0)
    expect(stdout).toMatch(/\n\n“Time” names no unit: seconds were taken, .* Another one is said with --column\.\n/)
  })

  it('reads standard input, packed or not, and says the same', () => {
    const plain = logged(TEXT)
    expect(plain.status).toBe(0)
    expect(plain.stdout).toContain('recording 1: 3 rows, lines 2 to 5, 0 s to 0.03 s')
    expect(plain.stdout).toContain('line 4: “was 9” in column “Motorstrom” is no figure')
    expect(logged(gzipSync(TEXT)).stdout).toBe(plain.stdout)
  })

  it.each([
    [[file('picture.csv', Uint8Array.from([0x89, 0x50, 0x4e, 0x47]))], 'picture.csv: It is no text but a picture'],
    [[file('empty.csv', '')], 'It is empty.'],
    [[file('words.csv', 'a;b\nfoo;bar\n')], 'It holds no rows of numbers.'],
    [[file('b.csv', TEXT), '--column', 'time=Iq', '--column', 'position=nowhere'], 'There is no column “nowhere”'],
    [[file('c.csv', TEXT), '--column', 'hope=Iq'], '--column: given "hope=Iq", allowed NAME=HEADER'],
    [[file('d.csv', TEXT), '--rate', '0'], '--rate: given 0'],
    [[file('e.csv', TEXT), '--lines', '5'], '--lines: given "5", allowed FROM:TO'],
    [[join(folder, 'nowhere.csv')], 'nowhere.csv: no such file or directory'],
    [[folder], 'illegal operation on a directory'],
    [[file('torn.gz', gzipSync(TEXT).subarray(0, 40))], 'torn.gz: unexpected end of file'],
    [[], 'no log was named'],
  ])('refuses %j with exit 2', async (args, message) => {
    const { status, stdout, stderr } = await log(args)
    expect(stderr).toContain(message)
    expect([status, stdout]).toEqual([2, ''])
  })
})
