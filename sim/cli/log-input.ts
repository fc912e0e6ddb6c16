/** Reading a log: a file, or standard input, compressed by gzip or not, piece by piece. */
import { createReadStream, statSync } from 'node:fs'
import type { Readable } from 'node:stream'
import { createGunzip } from 'node:zlib'
import { channelNames } from '../log/read/channels.ts'
import { columnChoice } from '../log/read/choice.ts'
import type { Log } from '../log/read/log.ts'
import { LogReader } from '../log/read/reader.ts'
import type { Table } from '../log/read/table.ts'
import { understand } from '../log/read/understand.ts'
import { inPlainSpaces } from '../say/figure.ts'
import { logFaultText, logRemarkText } from '../say/log.ts'
import { wordingOf } from '../say/wording.ts'
import { numberOf, Refused } from './command.ts'
import { progressOf } from './progress.ts'
import { reasonOf } from './system.ts'

/** Options of every command that reads logs. */
export const LOG_OPTIONS = {
  column: { type: 'string', multiple: true, default: [] as string[] },
  rate: { type: 'string' },
  lines: { type: 'string' },
} as const

/** How they stand in the usage text. */
export const LOG_USAGE = '[--column NAME=HEADER[:UNIT][*SCALE][+OFFSET] …] [--rate HZ] [--lines FROM:TO]'

/** As `LOG_OPTIONS` gives them. */
export interface LogOptions {
  column: string[]
  rate?: string
  lines?: string
}

/** The log as understood, faults and all; `turning`: of an axis whose output turns. Throws a Refused where the file cannot be read or an option means nothing. */
export async function readLog(file: string, options: LogOptions, turning = false): Promise<Log> {
  const rate = numberOf('--rate', options.rate)
  if (rate !== undefined && !(rate > 0)) throw new Refused([`--rate: given ${rate}, allowed a number above 0`])
  const table = await tableOf(file, linesOf(options.lines))
  const columns = options.column.map((text) => choiceOf(text, table))
  return understand(table, { columns, turning, ...(rate === undefined ? {} : { rate }) })
}

/** The log, or a Refused with why it cannot be used. */
export async function usableLog(file: string, options: LogOptions, turning = false): Promise<Log> {
  const log = await readLog(file, options, turning)
  if (log.faults.length > 0)
    throw new Refused([
      ...log.faults.map((fault) => `${file}: ${logFaultText(fault)}`),
      ...log.remarks.map((remark) => inPlainSpaces(logRemarkText(remark, wordingOf('si')))),
    ])
  return log
}

function choiceOf(text: string, table: Table) {
  const choice = columnChoice(text, table)
  if (choice) return choice
  const names = ['none', ...channelNames()].join(', ')
  throw new Refused([
    `--column: given "${text}", allowed NAME=HEADER[:UNIT][*SCALE][+OFFSET] such as current=Iq:mA*-1, NAME one of ${names}`,
  ])
}

function linesOf(text: string | undefined): { from: number; to: number } | undefined {
  if (text === undefined) return undefined
  const [, from, to] = /^(\d+):(\d+)$/.exec(text) ?? []
  if (Number(from) >= 1 && Number(to) >= Number(from)) return { from: Number(from), to: Number(to) }
  throw new Refused([`--lines: given "${text}", allowed FROM:TO such as 1000:50000, counted from 1`])
}

/** The numbers of a log as they stand in it. Throws a Refused where the file cannot be read. */
export async function tableOf(file: string, lines?: { from: number; to: number }): Promise<Table> {
  const reader = new LogReader(lines ? { lines } : {})
  const progress = progressOf(file)
  try {
    for await (const bytes of plain(source(file, progress.tell))) if (!reader.push(bytes)) break
  } catch (error) {
    throw new Refused([`${file}: ${reasonOf(error)}`])
  } finally {
    progress.end()
  }
  return reader.finish()
}

/** Bytes that are read at once. */
const PIECE = 1 << 20

/** The bytes of the file as they come; tells the share of them, where it is known how many there are. */
async function* source(file: string, tell: (done: number) => boolean): AsyncGenerator<Uint8Array> {
  const size = file === '-' ? 0 : statSync(file).size
  const stream: Readable = file === '-' ? process.stdin : createReadStream(file, { highWaterMark: PIECE })
  let read = 0
  for await (const bytes of stream) {
    yield bytes as Uint8Array
    read += (bytes as Uint8Array).length
    if (size > 0) tell(read / size)
  }
}

/** What gzip had packed is unpacked (RFC 1952: it begins with 1f 8b). */
async function* plain(bytes: AsyncGenerator<Uint8Array>): AsyncGenerator<Uint8Array> {
  const first = await bytes.next()
  if (first.done) return
  const all = resumed(first.value, bytes)
  if (first.value[0] !== 0x1f || first.value[1] !== 0x8b) yield* all
  else yield* unpacked(all)
}

async function* resumed(first: Uint8Array, rest: AsyncGenerator<Uint8Array>): AsyncGenerator<Uint8Array> {
  yield first
  yield* rest
}

async function* unpacked(packed: AsyncGenerator<Uint8Array>): AsyncGenerator<Uint8Array> {
  const { Readable: Streams } = await import('node:stream')
  const gunzip = createGunzip()
  const stream = Streams.from(packed)
  stream.on('error', (error) => gunzip.destroy(error))
  for await (const bytes of stream.pipe(gunzip)) yield bytes as Uint8Array
}
