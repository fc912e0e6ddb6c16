/** Geometry of the force story: scales, lines with their peaks kept, names apart. Pixels unless said otherwise. */
import { forceWindow, type Scenario, type StrategyId } from '../../../sim/index.ts'
import { roundBelow } from '../../picture/grip/scales.ts'
import { rowAt } from '../../picture/rowAt.ts'
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
  rings: { x: number; y: number }[]
  /** Where the line's name stands. */
  nameY: number
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
  /** Heights of the window's edges; null: no such edge, or beyond the plot. */
  least: number | null
  most: number | null
  figures: { y: number; text: string }[]
}

interface StoryInput {
  runs: RunView[]
  scenario: Scenario
  axis: TimeLens
  unit: ShownUnit
  room: Room
  text: number
}

export function storyOf({ runs, scenario, axis, unit, room, text }: StoryInput): Story {
  const { least, most } = forceWindow(scenario)
  const edges = [least, most].filter((edge) => edge !== null)
  const highest = Math.max(0, ...runs.map(({ traces, rows }) => (traces ? largest(traces.force, rows) : 0)))
  const [, top] = limits(0, highest, edges)
  const y = (force: number) => room.height * (1 - Math.max(0, force) / top)
  const x = (time: number) => axis.toDisplay(time) * room.width
  const shown = (edge: number | null) => (edge === null || edge > top ? null : y(edge))
  const ends = runs.map(({ traces, rows }) => y(traces && rows > 0 ? traces.force[rows - 1]! : 0))
  const names = apart(ends, 1.2 * text, 0.6 * text, room.height + 0.6 * text)
  return {
    lines: runs.map((run, i) => ({
      id: nameOf(run),
      strategy: run.strategy,
      label: nameOf(run),
      path: linePath(run, x, y),
      rings: run.axis === undefined ? [] : ringsOf(run, axis, room.width, text, y),
      nameY: names[i]!,
    })),
    marks: clear(
      runs.flatMap((run) => fateMark(run, x, y)),
      text,
    ),
    least: shown(least),
    most: shown(most),
    figures: figuresOf(top, unit, y, text),
  }
}

/** One to a few round figures along the force axis. */
function figuresOf(top: number, unit: ShownUnit, y: (force: number) => number, text: number) {
  const highest = unit.toShown(top)
  const step = roundBelow(highest / 2.2)
  const figures = []
  for (let n = 0; n * step <= highest; n++) {
    const at = y(unit.toSi(n * step))
    if (at > 0.4 * text) figures.push({ y: at, text: String(Number((n * step).toPrecision(6))) })
  }
  return figures
}

function largest(values: Float64Array, rows: number): number {
  let most = 0
  for (let row = 0; row < rows; row++) if (values[row]! > most) most = values[row]!
  return most
}

/** The force over time; of all rows that fall on one pixel the first, the lowest, the highest and the last are kept. */
export function linePath({ traces, rows }: RunView, x: (time: number) => number, y: (force: number) => number): string {
  if (!traces || rows === 0) return ''
  const { time, force } = traces
  const points: string[] = []
  const point = (row: number) => points.push(`${x(time[row]!).toFixed(1)} ${y(force[row]!).toFixed(1)}`)
  let row = 0
  while (row < rows) {
    const pixel = Math.floor(x(time[row]!))
    const first = row
    let low = row
    let high = row
    for (; row < rows && Math.floor(x(time[row]!)) === pixel; row++) {
      if (force[row]! < force[low]!) low = row
      if (force[row]! > force[high]!) high = row
    }
    for (const kept of new Set([first, Math.min(low, high), Math.max(low, high), row - 1])) point(kept)
  }
  return `M${points.join('L')}`
}

/** Distance of two rings along a line, in lines of type. */
const RINGS = 4.5

function ringsOf({ traces, rows }: RunView, axis: TimeLens, width: number, text: number, y: (force: number) => number) {
  if (!traces || rows === 0) return []
  const apart = RINGS * text
  const last = axis.toDisplay(traces.time[rows - 1]!) * width
  const count = Math.max(0, Math.floor(last / apart + 0.5))
  return Array.from({ length: count }, (_, n) => {
    const x = (n + 0.5) * apart
    return { x, y: y(traces.force[rowAt(traces.time, rows, axis.toTime(x / width)).index]!) }
  })
}

/** Where and when it went wrong, on the line itself. */
function fateMark(run: RunView, x: (time: number) => number, y: (force: number) => number): StoryMark[] {
  const { result, traces, rows, strategy } = run
  if (!result || !traces || rows === 0) return []
  const { events, metrics, verdict } = result
  const fates = {
    crushed: ['cracks', events.crack],
    dropped: ['drops', events.drop],
    loose: ['comes loose', events.loose],
    slipped: ['slides', events.slip],
    marked: ['is marked', events.mark],
    unstable: ['leaves its rails', events.unstable],
    missed: null,
    held: null,
  } as const
  const fate = fates[verdict]
  if (!fate || fate[1] === null) return []
  const [word, time] = fate
  const damage = verdict === 'crushed' || verdict === 'marked'
  const peak = damage ? (metrics.peakForce ?? 0) : traces.force[rowAt(traces.time, rows, time).index]!
  const words = `${run.axis === undefined ? '' : '○ '}${word} at ${formatFigure(time)} s`
  return [{ id: nameOf(run), strategy, time, x: x(time), y: y(peak), words, drop: 0, damage }]
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
