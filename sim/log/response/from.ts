/** The frequency response of an axis from one recording, and responses as they are drawn. */
import type { Complex } from '../../loops/complex.ts'
import { NoFit } from '../facts.ts'
import { type Measured, wholeColumn } from '../measured.ts'
import type { Shown } from './axis.ts'
import { type MeasuredResponse, responseOf } from './spectrum.ts'

/**
 * Share of the frequencies that rows can show which is taken: what is held from row to row bends a response by sin(x)/x, x = ω·step/2,
 * which is 0.9 dB here and 3.9 dB at the end.
 */
const TAKEN = 0.5

/**
 * From the command, else the current, to speed or position. A speed that was not logged is the position's response times jω, which
 * no filter has bent. Throws a NoFit where the recording has not both, or is too short.
 */
export function responseFrom(measured: Measured, shown: Shown): MeasuredResponse {
  const command = wholeColumn(measured, 'command')
  const input = command ?? wholeColumn(measured, 'current')
  const [speed, position] = [wholeColumn(measured, 'speed'), wholeColumn(measured, 'motorTravel')]
  const output = shown === 'speed' ? (speed ?? position) : (position ?? speed)
  if (!input || !output) throw new NoFit({ kind: 'no-response', shown })
  const found = {
    ...lower(responseOf(measured.time, input, output)),
    input: command ? ('command' as const) : ('current' as const),
  }
  const turns = (shown === 'speed' ? 1 : 0) - (output === speed ? 1 : 0)
  return turns === 0 ? found : turned(found, turns)
}

function lower({ frequency, re, im, coherence, blocks }: MeasuredResponse): MeasuredResponse {
  const end = Math.ceil(TAKEN * frequency.length)
  const part = (column: Float64Array) => column.slice(0, end)
  return { frequency: part(frequency), re: part(re), im: part(im), coherence: coherence && part(coherence), blocks }
}

/** Times jω, or over it. */
function turned(response: MeasuredResponse, turns: number): MeasuredResponse {
  const { frequency, re, im } = response
  const size = (k: number) => frequency[k]! ** turns
  return {
    ...response,
    re: im.map((value, k) => -turns * size(k) * value),
    im: re.map((value, k) => turns * size(k) * value),
  }
}

/** Magnitude [dB] and unwrapped phase [°] over frequency [rad/s]. */
export interface ResponseCurve {
  frequency: Float64Array
  magnitude: Float64Array
  phase: Float64Array
}

/** Of values at rising frequencies; the first phase lies within −270° and 90°, as those of axes do. */
export function curveOf(frequency: Float64Array, at: (k: number) => Complex): ResponseCurve {
  const magnitude = new Float64Array(frequency.length)
  const phase = new Float64Array(frequency.length)
  let expected = -90
  for (const k of frequency.keys()) {
    const { re, im } = at(k)
    magnitude[k] = 20 * Math.log10(Math.hypot(re, im))
    const raw = (180 * Math.atan2(im, re)) / Math.PI
    phase[k] = raw + 360 * Math.round((expected - raw) / 360)
    if (Number.isFinite(phase[k]!)) expected = phase[k]!
  }
  return { frequency, magnitude, phase }
}

/** So many frequencies [rad/s] from one to the other, even in decades. */
export const decades = (from: number, to: number, count: number) =>
  Float64Array.from({ length: count }, (_, k) => from * (to / from) ** (k / Math.max(1, count - 1)))
