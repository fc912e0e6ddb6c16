/** Geometry of the story of the effort: scales, lines with their peaks kept, names apart. Pixels unless said otherwise. */
import { jobOf, type Scenario, type StrategyId, shownAs } from '../../../sim/index.ts'
import { roundBelow } from '../../picture/grip/scales.ts'
import { rowAt } from '../../picture/rowAt.ts'
import { effortAt, effortsOf } from '../../read/effort/effort.ts'
import type { Over, Point } from '../../read/effort/over.ts'
import { isDamage } from '../../read/result/words.ts'
import { nameOf } from '../../read/stage/moments.ts'
import type { RunView } from '../../store/results.ts'
import { limits } from '../../ui/chart/data.ts'
import { apart } from '../../ui/chart/labels.ts'
import { formatFigure } from '../../ui/format.ts'
import type { TimeLens } from '../../ui/timeLens.ts'
import type { ShownUnit } from '../../ui/unit.ts'
import type { Size } from './useSize.ts'

export interface Room {
  left: number
  right: number
  top: number
  bottom: number
  /** Width and height of the plot itself. */
  width: number
  height: number
}

/** Room around the plot for figures, names and times, in lines of type. */
export const roomOf = ({ width, height }: Size, text: number): Room => {
  const left = 2.4 * text
  const right = 8.5 * text
  const top = 0.9 * text
  const bottom = 2.3 * text
  return {
    left,
    right,
    top,
    bottom,
    width: Math.max(40, width - left - right),
    height: Math.max(40, height - top - bottom),
  }
}

export interface StoryLine {
  id: string
  strategy: StrategyId
  label: string
  path: string
  /** Along the line of an axis beside. */
  rings: Place[]
  /** Where the line's name stands. */
  nameY: number
}

interface Place {
  x: number
  y: number
}

export interface StoryMark {
  id: string
  strategy: StrategyId
  x: number
  y: number
  words: string
  /** How far the words stand below their usual place, clear of another mark's. */
  drop: number
  damage: boolean
  time: number
}

export interface Story {
  lines: StoryLine[]
  marks: StoryMark[]
  /** The window's edges from left to right; empty: no such edge, or beyond the plot. */
  least: Place[]
  most: Place[]
  /** Along the axis of the effort, and along the other one where that is not time. */
  figures: { y: number; text: string }[]
  across: { x: number; text: string }[]
}

interface StoryInput {
  runs: RunView[]
  scenario: Scenario
  axis: TimeLens
  unit: ShownUnit
  room: Room
  text: number
  /** What it is drawn over and how that is read; left out: over time. */
  over?: { over: Over; unit: ShownUnit } | null
}

/** A run as it is drawn: time, place across and effort of each row [SI]. */
interface Drawn {
  run: RunView
  time: Float64Array
  across: Float64Array
  effort: Float64Array
}

export function storyOf(input: StoryInput): Story {
  const { runs, scenario, unit, room, text } = input
  const drawn = runs.flatMap((run) => drawnOf(run, input.over?.over ?? null))
  const farthest = input.over
    ? Math.max(input.over.over.farthest(scenario), ...drawn.map(({ across, run }) => largest(across, run.rows)))
    : scenario.run.duration
  const edges = edgesOf(input, farthest)
  const highest = Math.max(0, ...drawn.map(({ effort, run }) => largest(effort, run.rows)))
  const [, top] = limits(
    0,
    highest,
    [...edges.least, ...edges.most].map(({ effort }) => effort),
  )
  const y = (effort: number) => room.height * (1 - Math.max(0, effort) / top)
  const x = (across: number) =>
    (input.over ? Math.min(1, across / farthest) : input.axis.toDisplay(across)) * room.width
  const shown = (edge: Point[]) =>
    edge.every(({ effort }) => effort <= top) ? edge.map(({ across, effort }) => ({ x: x(across), y: y(effort) })) : []
  const names = apart(endsOf(runs, drawn, y), 1.2 * text, 0.6 * text, room.height + 0.6 * text)
  return {
    lines: runs.map((run, i) => ({ ...lineOf(run, drawn, { x, y, room, text }), nameY: names[i]! })),
    marks: clear(
      drawn.flatMap((each) => fateMark(each, x, y)),
      text,
    ),
    least: shown(edges.least),
    most: shown(edges.most),
    figures: figuresOf(top, unit, text / room.height).map(({ value, text }) => ({ y: y(value), text })),
    across: input.over ? figuresOf(farthest, input.over.unit, 0).map(({ value, text }) => ({ x: x(value), text })) : [],
  }
}

function drawnOf(run: RunView, over: Over | null): Drawn[] {
  const [effort] = effortsOf(run)
  if (!run.traces || !effort) return []
  const { time } = run.traces
  return [{ run, time, effort, across: over ? over.across(run) : time }]
}

/** The window all along, the least from when it is asked for; or what the job is held against across. */
function edgesOf({ scenario, over }: StoryInput, end: number): { least: Point[]; most: Point[] } {
  if (over) return over.over.edges(scenario, end)
  const { least, most, from = 0 } = jobOf(scenario).study.window(scenario)
  const level = (effort: number | null, start: number) =>
    effort === null
      ? []
      : [
          { across: start, effort },
          { across: end, effort },
        ]
  return { least: level(least, Math.min(from, end)), most: level(most, 0) }
}

const endsOf = (runs: RunView[], drawn: Drawn[], y: (effort: number) => number) =>
  runs.map((run) => {
    const own = drawn.find((each) => each.run === run)
    return y(own ? own.effort[run.rows - 1]! : 0)
  })

interface Scales {
  x(across: number): number
  y(effort: number): number
  room: Room
  text: number
}

function lineOf(run: RunView, drawn: Drawn[], { x, y, room, text }: Scales): Omit<StoryLine, 'nameY'> {
  const own = drawn.find((each) => each.run === run)
  return {
    id: nameOf(run),
    strategy: run.strategy,
    label: nameOf(run),
    path: own ? linePath(own.across, own.effort, run.rows, x, y) : '',
    rings: own && run.axis !== undefined ? ringsOf(own, room.width, text, x, y) : [],
  }
}

/** A few round figures along an axis from 0 on; the lowest ones that `least`, a share of it, leaves room for. */
function figuresOf(most: number, unit: ShownUnit, least: number): { value: number; text: string }[] {
  const highest = unit.toShown(most)
  const step = roundBelow(highest / 2.2)
  const figures = []
  for (let n = 0; n * step <= highest * (1 + 1e-9); n++) {
    const value = unit.toSi(n * step)
    if (1 - value / most > 0.4 * least || least === 0)
      figures.push({ value, text: String(Number((n * step).toPrecision(6))) })
  }
  return figures
}

function largest(values: Float64Array, rows: number): number {
  let most = 0
  for (let row = 0; row < rows; row++) if (values[row]! > most) most = values[row]!
  return most
}

/**
 * The effort over time, or over whatever stands across; of all rows in a row that fall on one pixel the first, the lowest, the highest and
 * the last are kept. What lies before the axis begins is left out.
 */
export function linePath(
  across: Float64Array,
  effort: Float64Array,
  rows: number,
  x: (across: number) => number,
  y: (effort: number) => number,
): string {
  const points: string[] = []
  const point = (row: number) => points.push(`${x(across[row]!).toFixed(1)} ${y(effort[row]!).toFixed(1)}`)
  for (let row = 0; row < rows; ) {
    if (across[row]! < 0) {
      row++
      continue
    }
    const pixel = Math.floor(x(across[row]!))
    const first = row
    let low = row
    let high = row
    for (; row < rows && across[row]! >= 0 && Math.floor(x(across[row]!)) === pixel; row++) {
      if (effort[row]! < effort[low]!) low = row
      if (effort[row]! > effort[high]!) high = row
    }
    for (const kept of new Set([first, Math.min(low, high), Math.max(low, high), row - 1])) point(kept)
  }
  return points.length > 0 ? `M${points.join('L')}` : ''
}

/** Distance of two rings along a line, in lines of type. */
const RINGS = 4.5

function ringsOf(
  { across, effort, run: { rows } }: Drawn,
  width: number,
  text: number,
  x: (across: number) => number,
  y: (effort: number) => number,
): Place[] {
  const rings: Place[] = []
  let next = (RINGS * text) / 2
  for (let row = 0; row < rows && next < width; row++) {
    const at = x(across[row]!)
    if (at < next) continue
    rings.push({ x: at, y: y(effort[row]!) })
    next += RINGS * text
  }
  return rings
}

/** Where and when it went wrong, on the line itself. */
function fateMark(
  { run, time: times, across }: Drawn,
  x: (across: number) => number,
  y: (effort: number) => number,
): StoryMark[] {
  const { result, rows, strategy, scenario } = run
  const wrong = result && jobOf(scenario).moments.wrong(result)
  if (!result || !wrong) return []
  const { time } = wrong
  const { index } = rowAt(times, rows, time)
  const words = `${run.axis === undefined ? '' : '○ '}${shownAs(scenario).fate(result)} at ${formatFigure(time)} s`
  return [
    {
      id: nameOf(run),
      strategy,
      time,
      x: x(across === times ? time : Math.max(0, across[index]!)),
      y: y(wrong.effort ?? effortAt(run, time) ?? 0),
      words,
      drop: 0,
      damage: isDamage(result.verdict),
    },
  ]
}

/** Words of marks that lie close, one under the other; the same words at the same place are written once. */
function clear(marks: StoryMark[], text: number): StoryMark[] {
  const placed: StoryMark[] = []
  for (const mark of marks) {
    const near = placed.filter(
      (other) => Math.abs(other.x - mark.x) < WORDS * text && Math.abs(other.y - mark.y) < 1.2 * text,
    )
    const same = near.some((other) => other.words === mark.words)
    placed.push({ ...mark, words: same ? '' : mark.words, drop: same ? 0 : 1.2 * text * near.length })
  }
  return placed
}

/** Length of a mark's words, in lines of type. */
const WORDS = 9
