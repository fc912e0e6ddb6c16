/** How rare a failure is, where plain sampling would never meet one, and the likeliest way to it. */
import type { Edit, Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { normalShare } from './distributions.ts'
import { noiseSeed, partsFrom, variedPaths } from './draw.ts'
import { type Rare, rareShare, type Wish } from './rare.ts'
import type { Crew } from './tasks.ts'

/** Points that a worker is given at once. */
const ITEM = 5

/** Seeds tried further for the likeliest failure. */
const OTHERS = [1, 2, 3, 4, 5, 6, 7, 8]

export interface RareGrips {
  rare: Rare
  /** Parts that were gripped. */
  grips: number
  /** Parts whose values break a rule of the format; they count as holding. */
  refused: number
  /** The likeliest failure as edits of the file, its noise included; null: none was found that fails when it is gripped again. */
  likeliest: Edit[] | null
}

export interface RareWish extends Omit<Wish, 'dimension'> {
  strategy: StrategyId
}

/**
 * A part fails that is not held, misses a requirement or exceeds a rating. `told` hears of every part and returns whether to go on; a
 * search that is stopped rejects. Rejects with a Refusal where the correlations of the scenario contradict each other.
 */
export async function runRare(
  scenario: Scenario,
  { strategy, ...wish }: RareWish,
  crew: Crew,
  told: (grips: number) => boolean = () => true,
): Promise<RareGrips> {
  const dimension = scenario.spread.varies.length
  const shared = { scenario, strategy }
  let grips = 0
  let refused = 0
  const seedOf = (index: number) => noiseSeed(wish.seed, index)
  const seeds = new Map<Float64Array, number>()
  const limit = async (points: readonly Float64Array[]) => {
    const first = grips
    const items = Array.from({ length: Math.ceil(points.length / ITEM) }, (_, at) => {
      const some = points.slice(at * ITEM, (at + 1) * ITEM)
      return {
        shares: some.map((point) => point.map(inside)),
        seeds: some.map((_, place) => seedOf(first + at * ITEM + place)),
      }
    })
    const states = new Array<number>(points.length)
    let going = true
    await crew.work('placed', shared, items, (outcomes, at) => {
      for (const [place, { spare }] of outcomes.entries()) {
        if (Number.isNaN(spare)) refused++
        states[at * ITEM + place] = Number.isNaN(spare) ? Number.POSITIVE_INFINITY : spare
      }
      grips += outcomes.length
      going = told(grips)
      return going
    })
    if (!going) throw new Error('stopped')
    for (const [at, point] of points.entries()) seeds.set(point, seedOf(first + at))
    return states.map((state) => (state < 0 ? state : Math.max(state, Number.MIN_VALUE)))
  }
  /** The point as edits, with a noise with which it does fail: its own, that of the file, or one of a few more. */
  const failureAt = async (point: Float64Array): Promise<Edit[] | null> => {
    const tried = [seeds.get(point) ?? scenario.run.seed, scenario.run.seed, ...OTHERS.map((at) => seedOf(-at))]
    let failing: number | undefined
    await crew.work('placed', shared, [{ shares: tried.map(() => point.map(inside)), seeds: tried }], (outcomes) => {
      failing = tried[outcomes.findIndex(({ spare }) => spare < 0)]
      return true
    })
    return failing === undefined ? null : editsAt(scenario, point, failing)
  }
  const rare = await rareShare(limit, { ...wish, dimension })
  const point = rare.kind === 'share' ? rare.likeliest : null
  return { rare, grips, refused, likeliest: point && (await failureAt(point)) }
}

/** Share of a law that lies as far out as a normal score, or farther, on the same side. */
export const tailOf = (score: number) => inside(-Math.abs(score))

/** Share of the law below a normal score, within the open interval. */
const inside = (score: number) => Math.min(Math.max(normalShare(score), 1e-300), 1 - 2 ** -53)

function editsAt(scenario: Scenario, point: Float64Array, seed: number): Edit[] {
  const { values } = partsFrom(scenario)(0, point.map(inside), seed)
  const paths = variedPaths(scenario)
  return [...values.map((value, at) => ({ path: paths[at]!, value })), { path: 'run.seed', value: seed }]
}
