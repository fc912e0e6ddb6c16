/** The loops as the command line prints them. */
import type { LoopAnalysis, LoopsResult } from './analyse.ts'
import type { Complex } from './complex.ts'
import type { LoopId } from './model.ts'
import { rounded } from './wording.ts'
import type { WorkingPointId } from './working-point.ts'

/** One loop at one working point; a figure that does not exist is null. */
export interface LoopRow {
  loop: LoopId
  workingPoint: WorkingPointId
  /** Sample period [s]; poles are in the z plane of that period. */
  period: number
  stable: boolean
  /** [rad/s], [deg], [dB] */
  crossover: number | null
  phaseMargin: number | null
  gainMargin: number | null
  lowerGainMargin: number | null
  peakSensitivity: number | null
  modulusMargin: number | null
  /** [rad/s], [dB] */
  bandwidth: number | null
  peaking: number | null
  poles: Complex[]
  note: string
}

export function rowOf({ loop, workingPoint, period, stable, crossover, margins, poles, note }: LoopAnalysis): LoopRow {
  return {
    loop,
    workingPoint,
    period,
    stable,
    crossover,
    phaseMargin: margins?.phaseMargin ?? null,
    gainMargin: margins?.gainMargin ?? null,
    lowerGainMargin: margins?.lowerGainMargin ?? null,
    peakSensitivity: margins?.peakSensitivity ?? null,
    modulusMargin: margins?.modulusMargin ?? null,
    bandwidth: margins?.bandwidth ?? null,
    peaking: margins?.peaking ?? null,
    poles,
    note,
  }
}

const HEAD = ['loop', 'at', 'crossover', 'phase margin', 'gain margin', 'peak sens.', 'bandwidth', 'stable']
const UNITS = ['', '', 'rad/s', 'deg', 'dB', '', 'rad/s', '']

export function loopsTable({ loops, friction, note }: LoopsResult): string {
  const figure = (value: number | null) => (value === null ? '—' : rounded(value))
  const line = (cells: string[]) =>
    cells
      .map((cell, i) => (i < 2 ? cell.padEnd(10) : cell.padStart(14)))
      .join('')
      .trimEnd()
  const rows = loops.map(rowOf)
  const body = rows.map((row) =>
    line([
      row.loop,
      row.workingPoint,
      figure(row.crossover),
      figure(row.phaseMargin),
      figure(row.gainMargin),
      figure(row.peakSensitivity),
      figure(row.bandwidth),
      row.stable ? 'yes' : 'NO',
    ]),
  )
  const notes = rows.filter((row) => row.note !== '').map((row) => `${row.loop}, ${row.workingPoint}: ${row.note}`)
  return [line(HEAD), line(UNITS), ...body, '', ...notes, '', friction, note].join('\n').trimEnd()
}
