/** What becomes of the part over two parameters, where one fate gives way to another, and the figures on a grid. */
import { JOBS } from '../../job/index.ts'
import type { JobId, Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { type BorderMap, gridOn, type Range, traceBorder } from './border.ts'
import { isFit, type Outcome } from './outcome.ts'
import type { Crew } from './tasks.ts'

export interface MapAxis extends Range {
  path: string
}

export interface MapWish {
  strategy: StrategyId
  x: MapAxis
  y: MapAxis
}

/** Points that a worker is given at once. */
const ITEM = 8

/** Done well, but a requirement is missed or a rating exceeded. */
export const UNFIT = 'unfit'

/** What a map calls that which became of a part. */
export const classOf = (job: JobId, outcome: Outcome): string =>
  outcome.fate === JOBS[job].well && !isFit(job, outcome) ? UNFIT : outcome.fate

/** The grips on the lines of the first grid: all of a row of x, row by row of y. Null: not yet run. */
export interface MapGrid {
  xs: number[]
  ys: number[]
  outcomes: (Outcome | null)[]
}

export interface GripMap extends BorderMap {
  grid: MapGrid
}

/** The noise is that of the file at every point. `told` hears of the points so far, and of the grid, which grows in place. */
export async function runMap(
  scenario: Scenario,
  { strategy, x, y }: MapWish,
  crew: Crew,
  told: (points: number, grid: MapGrid) => boolean = () => true,
): Promise<GripMap> {
  const shared = { scenario, strategy }
  const paths = [x.path, y.path]
  const { grid, keep } = gridOf(x, y)
  let done = 0
  const border = await traceBorder(x, y, async (points) => {
    const classes = new Array<string>(points.length)
    const items = Array.from({ length: Math.ceil(points.length / ITEM) }, (_, at) => ({
      paths,
      values: points.slice(at * ITEM, (at + 1) * ITEM).map((point) => [...point]),
    }))
    let going = true
    await crew.work('valued', shared, items, (outcomes, at) => {
      for (const [place, outcome] of outcomes.entries()) {
        classes[at * ITEM + place] = classOf(scenario.job, outcome)
        keep(points[at * ITEM + place]!, outcome)
      }
      done += outcomes.length
      going = told(done, grid)
      return going
    })
    if (!going) throw new Error('stopped')
    return classes
  })
  return { ...border, grid }
}

function gridOf(x: Range, y: Range) {
  const [xs, ys] = [gridOn(x), gridOn(y)]
  const columns = new Map(xs.map((value, at) => [value, at]))
  const rows = new Map(ys.map((value, at) => [value, at]))
  const grid: MapGrid = { xs, ys, outcomes: new Array<Outcome | null>(xs.length * ys.length).fill(null) }
  const keep = ([a, b]: readonly [number, number], outcome: Outcome) => {
    const [column, row] = [columns.get(a), rows.get(b)]
    if (column !== undefined && row !== undefined) grid.outcomes[row * xs.length + column] = outcome
  }
  return { grid, keep }
}
