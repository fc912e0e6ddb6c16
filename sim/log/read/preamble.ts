/** What the lines above the numbers say of time. */
import type { Table } from './table.ts'
import { measures, unitsSpelled } from './units.ts'

/** Phrases for the time from row to row, without accents; a new one is one line. `\\w*` stands for any ending. */
const PERIODS = [
  'sampl\\w* ?(?:period|time|interval|step)',
  '(?:period|interval|step) of sampl\\w*',
  'time (?:step|increment)|timestep',
  'delta ?t',
  'dt',
  'abtast(?:zeit|intervall|periode)',
  'periode d.?echantillonnage',
  'pas de temps',
  '(?:periodo|tempo) di campionamento',
  '(?:periodo|tiempo) de muestreo',
]
/** For rows per time. */
const RATES = [
  'sampl\\w* ?(?:rate|freq\\w*)',
  '(?:rate|frequency) of sampl\\w*',
  'data ?rate',
  'log\\w* rate',
  'fs',
  'abtast(?:rate|frequenz)',
  'frequence d.?echantillonnage',
  'frequenza di campionamento',
  'frecuencia de muestreo',
]
/** For a clock that is counted. */
const TICKS = ['clock', 'timer', 'tick\\w*', 'takt\\w*', 'horloge', 'reloj', 'counter']

const anyOf = (phrases: readonly string[]) => new RegExp(`\\b(?:${phrases.join('|')})\\b`, 'i')
const [PERIOD, RATE, TICK] = [anyOf(PERIODS), anyOf(RATES), anyOf(TICKS)]
/** A frequency under no name. */
const BARE = /(?=(?<![\w.,])\d+(?:[.,]\d+)?\s*[kM]?Hz\b)/

/** A quantity [SI] and the line that states it. */
export interface Saying {
  value: number
  text: string
}

/** Time from row to row [s]; null: no line gives it with its unit. */
export const periodIn = (table: Table): Saying | null => said(table, PERIOD, 's') ?? inverse(said(table, RATE, 'Hz'))

/** Rows a second [Hz], likewise. */
export const rateIn = (table: Table): Saying | null => said(table, RATE, 'Hz') ?? inverse(said(table, PERIOD, 's'))

/** Ticks a second of a clock [Hz]. */
export const ticksIn = (table: Table): Saying | null => said(table, TICK, 'Hz')

/** A frequency that stands there by itself [Hz]: it may be one of anything. */
export const frequencyIn = (table: Table): Saying | null => said(table, BARE, 'Hz')

/** The line that speaks of the rows' time, be it without a unit; '': none does. */
export const periodLine = ({ layout }: Table): string =>
  (layout?.preamble ?? []).find((line) => PERIOD.test(plain(line)) || RATE.test(plain(line)))?.trim() ?? ''

const inverse = (saying: Saying | null): Saying | null => saying && { ...saying, value: 1 / saying.value }

const plain = (line: string) => line.normalize('NFD').replaceAll(/\p{M}/gu, '')

/** A quantity that the preamble states with its unit [SI]; null: it does not. */
function said({ layout }: Table, words: RegExp, si: string): Saying | null {
  for (const line of layout?.preamble ?? []) {
    const text = plain(line)
    const found = words.exec(text)
    if (!found) continue
    const value = quantityIn(text.slice(found.index + found[0].length), si)
    if (value !== null && value > 0) return { value, text: line.trim() }
  }
  return null
}

/** `[ms]:;4.000`, `: 4.000 ms`, `= 8kHz` */
function quantityIn(text: string, si: string): number | null {
  const [, before, figure, behind] =
    /^[^\d\w]*([a-zµμ]*)[^\d\w-]*([\d.,]+(?:e[+-]?\d+)?)[\s;,"]*([\p{L}µμ]*)/iu.exec(text) ?? []
  const unit = [behind, before]
    .flatMap((each) => unitsSpelled(each ?? ''))
    .find((each) => measures(each, si === 'Hz' ? '1/s' : si))
  const value = Number(figure?.replace(/[.,]$/, '').replace(',', '.'))
  return unit?.size && Number.isFinite(value) ? value * unit.size.factor : null
}
