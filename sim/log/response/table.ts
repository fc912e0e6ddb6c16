/** A frequency response that somebody has measured, as CSV: frequency, magnitude and phase, or real and imaginary part. */
import { headingOf } from '../read/guess.ts'
import type { Table, TableColumn } from '../read/table.ts'
import type { MeasuredResponse, ResponseInput } from './spectrum.ts'

type Kind = 'frequency' | 'magnitude' | 'phase' | 're' | 'im' | 'coherence'

/** Words by which a column is known; a new one is a word here. */
const NAMES: [Kind, RegExp][] = [
  ['coherence', /coher|kohär|γ/i],
  ['frequency', /^f$|freq|frequenz|omega|ω|^w$/i],
  ['phase', /phase|\barg\b|\bangle\b|winkel/i],
  ['re', /\bre(al)?\b/i],
  ['im', /\bim(ag\w*)?\b/i],
  ['magnitude', /\bmag(nitude)?\b|\bgain\b|\bampl|betrag|verstärkung|\babs\b|\|/i],
]

/** What the table says of a column, its unit included. */
const textOf = (column: TableColumn) => `${column.name} ${column.unit}`

/** How frequency, magnitude and phase are understood; null: the table has real and imaginary parts. */
export interface ResponseUnits {
  frequency: 'Hz' | 'rad/s'
  magnitude: 'dB' | 'ratio' | null
  phase: 'deg' | 'rad' | null
}

/** What a person says of a table; `scale`: what one of its magnitudes is in SI, in m/s or m for each ampere. */
export interface ResponseSaid extends Partial<ResponseUnits> {
  scale?: number
  input?: ResponseInput
}

export interface ReadResponse {
  response: MeasuredResponse
  units: ResponseUnits
}

/** The frequency response that a table holds: it has a frequency and what is needed beside it. Null: it holds none. */
export function responseIn(table: Table, said: ResponseSaid = {}): ReadResponse | null {
  const found = new Map<Kind, TableColumn>()
  for (const column of table.columns) {
    const kind = NAMES.find(([, words]) => words.test(headingOf(column).name) || words.test(textOf(column)))?.[0]
    if (kind && !found.has(kind)) found.set(kind, column)
  }
  const [frequency, magnitude, phase, re, im] = (['frequency', 'magnitude', 'phase', 're', 'im'] as const).map((kind) =>
    found.get(kind),
  )
  if (!frequency || !((magnitude && phase) || (re && im))) return null
  const units = unitsOf(frequency, magnitude, phase, said)
  const scale = said.scale ?? 1
  const coherence = found.get('coherence')
  const rows = [...Array(table.rows).keys()]
    .map((k) => ({
      frequency: frequency.values[k]! * (units.frequency === 'Hz' ? 2 * Math.PI : 1),
      ...(re && im
        ? { re: scale * re.values[k]!, im: scale * im.values[k]! }
        : fromPolar(
            scale * (units.magnitude === 'dB' ? 10 ** (magnitude!.values[k]! / 20) : magnitude!.values[k]!),
            phase!.values[k]! * (units.phase === 'deg' ? Math.PI / 180 : 1),
          )),
      coherence: coherence ? coherence.values[k]! : Number.NaN,
    }))
    .filter((row) => row.frequency > 0 && Number.isFinite(row.re) && Number.isFinite(row.im))
    .sort((a, b) => a.frequency - b.frequency)
  const column = (key: 'frequency' | 're' | 'im' | 'coherence') => Float64Array.from(rows, (row) => row[key])
  const response = {
    frequency: column('frequency'),
    re: column('re'),
    im: column('im'),
    coherence: coherence ? column('coherence') : null,
    blocks: 0,
    input: said.input ?? 'command',
  }
  return { response, units }
}

/** By their names and units, where a person does not say it. */
function unitsOf(
  frequency: TableColumn,
  magnitude: TableColumn | undefined,
  phase: TableColumn | undefined,
  said: ResponseSaid,
): ResponseUnits {
  const of = <T>(column: TableColumn, words: RegExp, yes: T, no: T) => (words.test(textOf(column)) ? yes : no)
  return {
    frequency: said.frequency ?? of(frequency, /rad|omega|ω|^w\b/i, 'rad/s', 'Hz'),
    magnitude: magnitude ? (said.magnitude ?? of(magnitude, /dB|decibel/i, 'dB', 'ratio')) : null,
    phase: phase ? (said.phase ?? of(phase, /rad/i, 'rad', 'deg')) : null,
  }
}

const fromPolar = (gain: number, angle: number) => ({ re: gain * Math.cos(angle), im: gain * Math.sin(angle) })
