/** Geometry of the report's small traces, in units of their drawing. Knows no React. */
import { jobOf, type Scenario } from '../../../sim/index.ts'
import { effortsOf, highestEffort, limitWords } from '../../read/effort/effort.ts'
import type { Over, Point } from '../../read/effort/over.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { roundTimes, timeTexts } from '../../ui/chart/ticks.ts'
import { PLAIN_TIME } from '../../ui/chart/types.ts'
import { formatPlain } from '../../ui/format.ts'
import type { ShownUnit } from '../../ui/unit.ts'

export const BOX = { width: 300, height: 102, left: 32, right: 6, top: 14, bottom: 17 }

export interface Place {
  x(across: number): number
  y(effort: number): number
}

/** What a trace is drawn on: how far and how high it goes [SI], its edges and their words, figures below. */
export interface Ground {
  farthest: number
  top: number
  edges: { least: Point[]; most: Point[] }
  words: { least: string | null; most: string | null }
  /** Nothing lies between them. */
  empty: boolean
  /** Figures along the axis across; the last one with its unit. */
  figures: { at: number; text: string }[]
}

/** Over time, with the window that the job has all along. */
export function timeGround(scenario: Scenario, runs: RunView[], units: UnitSystem): Ground {
  const { least, most, from = 0 } = jobOf(scenario).study.window(scenario)
  const { duration } = scenario.run
  const level = (effort: number | null, start: number) =>
    effort === null
      ? []
      : [
          { across: start, effort },
          { across: duration, effort },
        ]
  const times = roundTimes(0, duration, PLAIN_TIME, BOX.width - BOX.right - BOX.left, 50)
  const texts = timeTexts(times)
  return {
    farthest: duration,
    top: topEffort(runs, least, most),
    edges: { least: level(least, Math.min(from, duration)), most: level(most, 0) },
    words: limitWords(scenario, units),
    empty: least !== null && most !== null && least >= most,
    figures: times.map((at, n) => ({ at, text: n === times.length - 1 ? `${texts[n]} s` : texts[n]! })),
  }
}

/** Over what the job is told by. */
export function overGround(over: Over, scenario: Scenario, runs: RunView[], unit: ShownUnit): Ground {
  const farthest = BEHIND * Math.max(over.farthest(scenario), ...runs.map((run) => farthestOf(over, run)))
  const edges = over.edges(scenario, farthest)
  const high = (points: Point[]) => (points.length > 0 ? Math.max(...points.map(({ effort }) => effort)) : null)
  const ats = ticksOf(farthest, unit)
  return {
    farthest,
    top: topEffort(runs, high(edges.least), high(edges.most)),
    edges,
    words: { least: over.below, most: over.above },
    empty: false,
    figures: ats.map((at, n) => {
      const text = formatPlain(unit.toShown(at), 3)
      return { at, text: n === ats.length - 1 ? `${text} ${unit.symbol}` : text }
    }),
  }
}

/** Room behind the farthest place [share]. */
const BEHIND = 1.04

function farthestOf(over: Over, run: RunView): number {
  if (!run.traces) return 0
  const across = over.across(run)
  let most = 0
  for (let row = 0; row < run.rows; row++) if (across[row]! > most) most = across[row]!
  return most
}

/** Places of a time, depth or angle and of an effort [SI]; what lies above stays at the edge. */
export function placeIn({ farthest, top }: Pick<Ground, 'farthest' | 'top'>): Place {
  const wide = BOX.width - BOX.left - BOX.right
  const high = BOX.height - BOX.top - BOX.bottom
  return {
    x: (across) => BOX.left + (wide * Math.min(across, farthest)) / farthest,
    y: (effort) => BOX.top + high * (1 - Math.min(1, Math.max(0, effort / top))),
  }
}

/** Effort at the upper edge of all traces [SI], so that they can be compared: the peaks, and the window where it is near them. */
export function topEffort(
  runs: Pick<RunView, 'scenario' | 'result'>[],
  least: number | null,
  most: number | null,
): number {
  const peak = Math.max(0, ...runs.map(highestEffort))
  const seen = Math.max(peak, least ?? 0)
  return 1.2 * (Math.max(seen, most !== null && most < 2.5 * seen ? most : 0) || most || 1)
}

/** Round figures [SI] for an axis, five at most. */
export function ticksOf(top: number, unit: ShownUnit): number[] {
  const most = unit.toShown(top)
  const raw = most / 4
  const ten = 10 ** Math.floor(Math.log10(raw))
  const step = ten * (raw <= ten ? 1 : raw <= 2 * ten ? 2 : raw <= 5 * ten ? 5 : 10)
  const count = Math.floor(most / step + 1e-9)
  return Array.from({ length: count + 1 }, (_, n) => unit.toSi(Number((n * step).toPrecision(12))))
}

/** What a run draws: place and effort of each row; null: nothing is recorded. */
export function lineOf(run: RunView, over: Over | null): { across: Float64Array; effort: Float64Array } | null {
  const [effort] = effortsOf(run)
  if (!run.traces || !effort) return null
  return { across: over ? over.across(run) : run.traces.time, effort }
}

/**
 * The trace as a path: of every half unit of width its lowest and its highest row, in the order in which they came. What lies before the
 * axis begins is left out.
 */
export function outline({ x, y }: Place, across: Float64Array, values: Float64Array, rows: number): string {
  const points: string[] = []
  const put = (row: number) => points.push(`${x(across[row]!).toFixed(1)} ${y(values[row]!).toFixed(1)}`)
  for (let row = 0; row < rows; ) {
    if (across[row]! < 0) {
      row++
      continue
    }
    const edge = Math.floor(2 * x(across[row]!))
    let [low, high] = [row, row]
    for (; row < rows && Math.floor(2 * x(across[row]!)) === edge; row++) {
      if (values[row]! < values[low]!) low = row
      if (values[row]! > values[high]!) high = row
    }
    put(Math.min(low, high))
    if (low !== high) put(Math.max(low, high))
  }
  return points.length > 0 ? `M${points.join('L')}` : ''
}

/** Distance of two rings along a line, and of the first from the axis. */
const RINGS = { apart: 44, first: 22 }

/** Where rings stand along a trace. */
export function ringsOf({ x, y }: Place, across: Float64Array, values: Float64Array, rows: number) {
  const rings: { x: number; y: number }[] = []
  let next = BOX.left + RINGS.first
  for (let row = 0; row < rows; row++) {
    const at = x(across[row]!)
    if (at < next) continue
    rings.push({ x: at, y: y(values[row]!) })
    next += RINGS.apart
  }
  return rings
}
