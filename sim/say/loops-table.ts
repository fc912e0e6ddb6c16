/** The loops as the command line prints them. */
import type { LoopAnalysis, LoopsResult } from '../loops/analyse.ts'
import type { Complex } from '../loops/complex.ts'
import type { LoopId } from '../loops/model.ts'
import type { Stability } from '../loops/stability.ts'
import type { WorkingPointId } from '../loops/working-point.ts'
import { inPlainSpaces, NO_FIGURE } from './figure.ts'
import { frictionNote, loopNote, missingLoops } from './loops.ts'
import { figure, type Wording } from './wording.ts'

/** One loop at one working point; a figure that does not exist is null. */
export interface LoopRow {
  loop: LoopId
  workingPoint: WorkingPointId
  /** Sample period [s], and that in whose z plane the poles are: of the current loop the servo's. */
  period: number
  polePeriod: number
  stable: boolean
  stability: Stability
  /** [rad/s], [deg], [s], [dB] */
  crossover: number | null
  phaseMargin: number | null
  delayMargin: number | null
  gainMargin: number | null
  lowerGainMargin: number | null
  peakSensitivity: number | null
  /** [rad/s] */
  peakSensitivityFrequency: number | null
  /** Radius of the circle about −1 that L stays out of: 1/peakSensitivity. */
  modulusMargin: number | null
  /** [rad/s], [dB] */
  bandwidth: number | null
  peaking: number | null
  poles: Complex[]
  note: string
}

export function rowOf(analysis: LoopAnalysis, words: Wording): LoopRow {
  const { loop, workingPoint, period, polePeriod, stable, stability, crossover, margins, poles } = analysis
  return {
    loop,
    workingPoint,
    period,
    polePeriod,
    stable,
    stability,
    crossover,
    phaseMargin: margins?.phaseMargin ?? null,
    delayMargin: margins?.delayMargin ?? null,
    gainMargin: margins?.gainMargin ?? null,
    lowerGainMargin: margins?.lowerGainMargin ?? null,
    peakSensitivity: margins?.peakSensitivity ?? null,
    peakSensitivityFrequency: margins?.peakSensitivityFrequency ?? null,
    modulusMargin: margins?.modulusMargin ?? null,
    bandwidth: margins?.bandwidth ?? null,
    peaking: margins?.peaking ?? null,
    poles,
    note: inPlainSpaces(loopNote(analysis, words)),
  }
}

const HEAD = [
  'loop',
  'at',
  'crossover',
  'phase margin',
  'delay margin',
  'gain margin',
  'peak sens.',
  'bandwidth',
  'stable',
]
const UNITS = ['', '', 'rad/s', 'deg', 'ms', 'dB', '', 'rad/s', '']

export function loopsTable(result: LoopsResult, words: Wording): string {
  const cell = (value: number | null) => (value === null ? NO_FIGURE : inPlainSpaces(figure(value)))
  const line = (cells: string[]) =>
    cells
      .map((cell, i) => (i < 2 ? cell.padEnd(10) : cell.padStart(14)))
      .join('')
      .trimEnd()
  const rows = result.loops.map((loop) => rowOf(loop, words))
  const body = rows.map((row) =>
    line([
      row.loop,
      row.workingPoint,
      cell(row.crossover),
      cell(row.phaseMargin),
      cell(row.delayMargin && row.delayMargin * 1e3),
      cell(row.gainMargin),
      cell(row.peakSensitivity),
      cell(row.bandwidth),
      row.stable ? 'yes' : row.stability === 'border' ? 'border' : 'NO',
    ]),
  )
  const notes = rows.filter((row) => row.note !== '').map((row) => `${row.loop}, ${row.workingPoint}: ${row.note}`)
  const friction = inPlainSpaces(frictionNote(result.friction, words))
  return [line(HEAD), line(UNITS), ...body, '', ...notes, '', friction, missingLoops(result)].join('\n').trimEnd()
}
