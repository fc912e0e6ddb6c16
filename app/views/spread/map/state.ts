/** The map: over which two quantities, what was asked, and what came of it. It stays while other views are open. */
import { create } from 'zustand'
import {
  type GripMap,
  jobOf,
  lawOf,
  type MapAxis,
  type MapGrid,
  quantileOf,
  quantityAt,
  readPath,
  runMap,
  type Scenario,
  type StrategyId,
} from '../../../../sim/index.ts'
import { askedOf } from '../../../store/asked.ts'
import { crew } from '../../../worker/crew.ts'
import { quantitiesOf } from '../quantities.ts'

export interface MapQuestion {
  scenario: Scenario
  x: MapAxis
  y: MapAxis
}

export interface MapAnswer extends MapQuestion {
  strategy: StrategyId
  /** Grips so far. */
  points: number
  /** Grows in place. */
  grid: MapGrid
  /** Null: the borders are still being followed. */
  map: GripMap | null
}

/** Least time between two pictures of a map that grows [ms]. */
const PACE = 300

export const useMap = askedOf<MapQuestion, MapAnswer>(async (question, strategy, tell) => {
  const { scenario, x, y } = question
  let last = performance.now()
  const map = await runMap(scenario, { strategy, x, y }, crew, (points, grid) => {
    if (performance.now() - last < PACE) return true
    last = performance.now()
    return tell({ ...question, strategy, points, grid, map: null })
  })
  tell({ ...question, strategy, points: map.evaluations, grid: map.grid, map })
})

/** What shades a map: a figure of the job by its id, `spare`, the nearest margin, or `none`. */
export type Shaded = string

interface MapSettings {
  /** Null: as is sensible for the scenario. */
  x: MapAxis | null
  y: MapAxis | null
  shaded: Shaded
}

export const useMapSettings = create<MapSettings>()(() => ({ x: null, y: null, shaded: 'spare' }))

/** Quantities that a map may go over. */
export const mapPaths = (scenario: Scenario) => quantitiesOf(scenario, /^(run|requirements|spread)\b/)

/** What a map goes over unless it is said: the first two of the job's that the scenario has, of those that vary if two do. */
export function usualAxes(scenario: Scenario): [MapAxis, MapAxis] {
  const paths = mapPaths(scenario)
  const varied = scenario.spread.varies.map(({ path }) => path).filter((path) => paths.includes(path))
  const some = varied.length > 1 ? varied : paths
  const [x, y] = [...jobOf(scenario).study.mapped.filter((path) => some.includes(path)), ...some]
  return [usualAxis(scenario, x!), usualAxis(scenario, y === x ? paths.find((path) => path !== x)! : y!)]
}

/** Share of a law beyond either end of the range. */
const BEYOND = 0.001

/** Where the quantity's law lies; of one that does not vary from half to twice its value, or where it usually is. */
export function usualAxis(scenario: Scenario, path: string): MapAxis {
  const { minimum, maximum, usual } = quantityAt(scenario, path)!
  const value = readPath(scenario, path) as number
  const varied = scenario.spread.varies.find((each) => each.path === path)
  const law = varied && lawOf(varied)
  const [from, to] = law
    ? [quantileOf(law, value, BEYOND), quantileOf(law, value, 1 - BEYOND)]
    : value !== 0
      ? [value / 2, value * 2].sort((a, b) => a - b)
      : (usual ?? [minimum, maximum])
  const inside = (end: number) => Math.min(maximum, Math.max(minimum, Number(end.toPrecision(3))))
  const [low, high] = [inside(from!), inside(to!)]
  return low < high ? { path, from: low, to: high } : { path, from: minimum, to: maximum }
}

/** The two axes as they stand for a scenario; one that it has not got any more gives way to a sensible one. */
export function axesOf(scenario: Scenario, { x, y }: Pick<MapSettings, 'x' | 'y'>): [MapAxis, MapAxis] {
  const paths = mapPaths(scenario)
  const [usualX, usualY] = usualAxes(scenario)
  const across = x && paths.includes(x.path) ? x : usualX
  const up = y && paths.includes(y.path) ? y : usualY
  if (across.path !== up.path) return [across, up]
  return [across, usualAxis(scenario, [usualX, usualY].find(({ path }) => path !== across.path)!.path)]
}
