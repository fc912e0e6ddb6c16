/** A measured frequency response over that of an axis, and the axis fitted to it. */
import {
  axisResponse,
  countedRows,
  curveOf,
  decades,
  fitResponse,
  LOG_DELAY,
  type MeasuredResponse,
  type ResponseShown,
  responseIn,
  type Scenario,
  type Table,
} from '../../sim/index.ts'
import type { RespondedTold, ResponseTable, Unfit } from './log-messages.ts'

/** Points of a line that the model draws. */
const DRAWN = 400

/** What a table holds of a frequency response; null: it holds none. */
export function responseTable(table: Table): ResponseTable | null {
  const read = responseIn(table)
  if (!read) return null
  const { frequency, coherence } = read.response
  return {
    rows: frequency.length,
    from: frequency[0] ?? 0,
    to: frequency.at(-1) ?? 0,
    units: read.units,
    coherence: coherence !== null,
  }
}

/** `whyOf` tells why there is no fit. */
export function responded(
  scenario: Scenario,
  measured: MeasuredResponse,
  shown: ResponseShown,
  whyOf: (error: unknown) => Unfit,
): RespondedTold {
  const { frequency, re, im, coherence, blocks, input = 'command' } = measured
  const rows = countedRows(measured)
  const counts = new Uint8Array(frequency.length)
  for (const k of rows) counts[k] = 1
  const places = frequency.length > 0 ? decades(frequency[0]!, frequency.at(-1)!, DRAWN) : frequency
  const drawn = (of: Scenario, delay: number) => {
    const at = axisResponse(of, shown, delay, input)
    return curveOf(places, (k) => at(places[k]!))
  }
  const told = {
    measured: curveOf(frequency, (k) => ({ re: re[k]!, im: im[k]! })),
    coherence,
    blocks,
    input,
    counts,
    before: drawn(scenario, 0),
  }
  try {
    const fit = fitResponse(scenario, measured, shown)
    const delay = fit.values.find(({ path }) => path === LOG_DELAY)?.value ?? 0
    return { ...told, after: drawn(fit.scenario, delay), fit, why: null }
  } catch (error) {
    return { ...told, after: null, fit: null, why: whyOf(error) }
  }
}
