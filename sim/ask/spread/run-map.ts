/** What becomes of the part over two parameters, and where one fate gives way to another. */
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { type BorderMap, type Range, traceBorder } from './border.ts'
import { isFit } from './outcome.ts'
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

/** Held, but a requirement is missed or a rating exceeded. */
export const UNFIT = 'unfit'

/** The noise is that of the file at every point. `told` hears of the points so far. */
export async function runMap(
  scenario: Scenario,
  { strategy, x, y }: MapWish,
  crew: Crew,
  told: (points: number) => boolean = () => true,
): Promise<BorderMap> {
  const shared = { scenario, strategy }
  const paths = [x.path, y.path]
  let done = 0
  return traceBorder(x, y, async (points) => {
    const classes = new Array<string>(points.length)
    const items = Array.from({ length: Math.ceil(points.length / ITEM) }, (_, at) => ({
      paths,
      values: points.slice(at * ITEM, (at + 1) * ITEM).map((point) => [...point]),
    }))
    let going = true
    await crew.work('valued', shared, items, (outcomes, at) => {
      for (const [place, outcome] of outcomes.entries())
        classes[at * ITEM + place] = outcome.fate === 'held' && !isFit(outcome) ? UNFIT : outcome.fate
      done += outcomes.length
      going = told(done)
      return going
    })
    if (!going) throw new Error('stopped')
    return classes
  })
}
