/** What a person says of a column in one line: `NAME=HEADER[:UNIT][*SCALE][+OFFSET]`, such as `current=Iq:mA*-1+0.02`. */
import { channelNamed } from './channels.ts'
import { headingOf } from './guess.ts'
import type { ColumnChoice } from './log.ts'
import type { Table } from './table.ts'

const NUMBER = '(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?'
const TAIL = new RegExp(`^(?::([^*]*?))?(?:\\*([+-]?${NUMBER})(?:/(${NUMBER}))?)?([+-]${NUMBER})?$`)

/**
 * The longest header of the table with which the text behind NAME begins is meant, as headers may hold any sign; the scale may be a
 * fraction such as `0.005/4096`. Null: it is none such, or its NAME no channel.
 */
export function columnChoice(text: string, { columns }: Pick<Table, 'columns'>): ColumnChoice | null {
  const [, name = '', rest = ''] = /^([^=]+)=(.+)$/s.exec(text) ?? []
  const channel = name === 'none' ? null : channelNamed(name.trim())
  if (rest === '' || (channel === null && name !== 'none')) return null
  const known = columns
    .flatMap((raw, place) => [raw.name, headingOf(raw).name, `#${place + 1}`])
    .filter((header) => header !== '' && rest.startsWith(header) && TAIL.test(rest.slice(header.length)))
    .sort((a, b) => b.length - a.length)
  const header = known[0] ?? /^#\d+|^[^:*]+/.exec(rest)?.[0]
  const tail = header === undefined ? null : TAIL.exec(rest.slice(header.length))
  if (header === undefined || !tail) return null
  const [, unit, scale, below, offset] = tail
  return {
    channel,
    header,
    ...(unit ? { unit } : {}),
    ...(scale === undefined ? {} : { scale: Number(scale) / Number(below ?? 1) }),
    ...(offset === undefined ? {} : { offset: Number(offset) }),
  }
}
