/** A frequency response that somebody has measured, as CSV: frequency, magnitude and phase, or real and imaginary part. */
import { headingOf } from '../read/guess.ts'
import type { Table, TableColumn } from '../read/table.ts'
import type { MeasuredResponse } from './spectrum.ts'

type Kind = 'frequency' | 'magnitude' | 'phase' | 're' | 'im' | 'coherence'

/** Words by which a column is known; a new one is a word here. */
const NAMES: [Kind, RegExp][] = [
  ['coherence', /coher|kohär|γ/i],
  ['frequency', /^f$|freq|frequenz|omega|ω|rad\/s|^w$/i],
  ['phase', /phase|arg|angle|winkel/i],
  ['re', /\bre(al)?\b/i],
  ['im', /\bim(ag\w*)?\b/i],
  ['magnitude', /mag|gain|ampl|betrag|verstärkung|abs|\|/i],
]

/** What the table says of a column, its unit included. */
const textOf = (column: TableColumn) => `${column.name} ${column.unit}`

export interface ReadResponse {
  response: MeasuredResponse
  /** How frequency, magnitude and phase were understood. */
  units: { frequency: 'Hz' | 'rad/s'; magnitude: 'dB' | 'ratio' | null; phase: 'deg' | 'rad' | null }
}

/** Whether a table may be a frequency response: it has a frequency and what is needed beside it. */
export function responseIn(table: Table): ReadResponse | null {
  const found = new Map<Kind, TableColumn>()
  for (const column of table.columns) {
    const kind = NAMES.find(([, words]) => words.test(headingOf(column).name) || words.test(textOf(column)))?.[0]
    if (kind && !found.has(kind)) found.set(kind, column)
  }
  const [frequency, magnitude, phase, re, im] = (['frequency', 'magnitude', 'phase', 're', 'im'] as const).map((kind) =>
    found.get(kind),
  )
  if (!frequency || !((magnitude && phase) || (re && im))) return null
  const units = {
    frequency: /rad|omega|ω|^w\b/i.test(textOf(frequency)) ? ('rad/s' as const) : ('Hz' as const),
    magnitude: magnitude ? (/dB|decibel/i.test(textOf(magnitude)) ? ('dB' as const) : ('ratio' as const)) : null,
    phase: phase ? (/rad/i.test(textOf(phase)) ? ('rad' as const) : ('deg' as const)) : null,
  }
  const coherence = found.get('coherence')
  const rows = [...Array(table.rows).keys()]
    .map((k) => ({
      frequency: frequency.values[k]! * (units.frequency === 'Hz' ? 2 * Math.PI : 1),
      ...(re && im
        ? { re: re.values[k]!, im: im.values[k]! }
        : fromPolar(
            units.magnitude === 'dB' ? 10 ** (magnitude!.values[k]! / 20) : magnitude!.values[k]!,
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
  }
  return { response, units }
}

const fromPolar = (gain: number, angle: number) => ({ re: gain * Math.cos(angle), im: gain * Math.sin(angle) })
