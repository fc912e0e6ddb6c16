/**
 * The share of rare failures, in standard normal space. Subset simulation (Au and Beck, Estimation of small failure probabilities in
 * high dimensions by subset simulation, Probab. Eng. Mech. 16, 2001) finds them level by level, its chains moved by conditional sampling
 * (Papaioannou et al., MCMC algorithms for subset simulation, Probab. Eng. Mech. 41, 2015); points drawn about what it found (importance
 * sampling) then tell the share more closely.
 */
import { exponential } from '../../core/elementary.ts'
import { centresOf, Importance } from './importance.ts'
import type { Interval } from './intervals.ts'
import { Chains, type Evaluated, normals, variationOf } from './subset.ts'

/** Limit state of many points at once, in their order: 0 or less has failed. */
export type LimitState = (points: readonly Float64Array[]) => Promise<number[]>

export interface Wish {
  /** Quantities, each a standard normal score. */
  dimension: number
  seed: number
  /** Points of a level; twenty at least. */
  size?: number
  /** Coefficient of variation to go on for. */
  variation?: number
}

interface Found {
  evaluations: number
  /** Limit state at which each level ended, falling; its share of the level before is SHARE, or the next that ties leave. */
  levels: number[]
}

export type Rare =
  | (Found & {
      kind: 'share'
      share: number
      /** Coefficient of variation of the share. */
      variation: number
      /** The failure nearest the middle of all laws that was found. */
      likeliest: Float64Array
    })
  /** Rarer than `LEAST`: `nearest` is the least limit state of the last level, `point` where, or the likeliest failure if there is one. */
  | (Found & { kind: 'below'; share: typeof LEAST; nearest: number; point: Float64Array })
  /** More than half of a level has the same limit state `at`: no way leads down from there. `share`: of parts that come that far. */
  | (Found & { kind: 'flat'; at: number; share: number; failed: number })

/** Share of each level that goes on. */
const SHARE = 0.1
/** The least share that is told. */
export const LEAST = 1e-7
/** More alike at a threshold than this share of a level, and it does not rank. */
const TIED = 0.5
const SIZE = 500
const VARIATION = 0.1
/** Points drawn about the failures at most, in sizes of a level. */
const ROUNDS = 4

export async function rareShare(limit: LimitState, wish: Wish): Promise<Rare> {
  const { dimension, seed, size = SIZE, variation = VARIATION } = wish
  const counted = counting(limit)
  const normal = normals(seed)
  const chains = new Chains(counted.ask, normal)
  const levels: number[] = []
  let share = 1
  let square = 0
  let level = await chains.begin(dimension, size)
  for (;;) {
    const failed = level.points.filter(({ state }) => state <= 0).length
    const { threshold, passing } = thresholdOf(level.points)
    if (threshold <= 0 || share * SHARE < LEAST * 0.999) {
      const evaluated = { ...level, failed, share: (share * failed) / size }
      const whole = Math.sqrt(square + variationOf(level, 0) ** 2)
      return conclude(evaluated, whole, { counted, levels, size, variation, normal })
    }
    if (passing.length > TIED * size) {
      return {
        kind: 'flat',
        at: threshold,
        share,
        failed: (share * failed) / size,
        evaluations: counted.evaluations(),
        levels,
      }
    }
    levels.push(threshold)
    square += variationOf(level, threshold) ** 2
    share *= passing.length / size
    level = await chains.next(passing, threshold, size, Math.round(size * SHARE))
  }
}

interface Rest {
  counted: ReturnType<typeof counting>
  levels: number[]
  size: number
  variation: number
  normal: () => number
}

async function conclude(
  level: { points: readonly Evaluated[]; share: number },
  variation: number,
  { counted, levels, size, variation: wished, normal }: Rest,
): Promise<Rare> {
  const below = ({ state, point }: Evaluated): Rare => ({
    kind: 'below',
    share: LEAST,
    nearest: state,
    point,
    evaluations: counted.evaluations(),
    levels,
  })
  const lowest = level.points.reduce((best, each) => (each.state < best.state ? each : best))
  if (lowest.state > 0) return below(lowest)
  const known = level.points.filter(({ state }) => state <= 0).map(({ point }) => ({ point, weight: 1 }))
  const pilot = new Importance(centresOf(known.map(({ point }) => point)), known, level.share)
  await drawInto(pilot, size, counted.ask, normal)
  const drawn = new Importance(pilot.drawnIn(known), known, level.share)
  // How many are drawn is settled before any is: to stop at a lucky moment would tell too little.
  const rounds = Math.ceil((pilot.told().variation / wished) ** 2)
  await drawInto(drawn, size * Math.min(Math.max(rounds, 1), ROUNDS), counted.ask, normal)
  const failures = [...known, ...pilot.failures, ...drawn.failures].map(({ point }) => point)
  const likeliest = await nearestOf(failures, drawn.centres, counted.ask)
  const told = believed({ share: level.share, variation }, drawn.told())
  if (told.share < LEAST) return below({ ...lowest, point: likeliest })
  return { kind: 'share', ...told, likeliest, evaluations: counted.evaluations(), levels }
}

/** Half of a 95 % interval, in standard deviations. */
const REACH = 1.96

/** 95 % limits of a share with a coefficient of variation, the logarithm of what is told of it taken as normal. */
export function limitsOf(share: number, variation: number): Interval {
  const factor = exponential(REACH * Math.sqrt(Math.log1p(variation * variation)))
  return { low: share / factor, high: Math.min(1, share * factor) }
}

async function drawInto(importance: Importance, count: number, ask: LimitState, normal: () => number): Promise<void> {
  const points = importance.draw(count, normal)
  importance.take(points, await ask(points))
}

interface Told {
  share: number
  variation: number
}

/** The closer of both, if it agrees with the levels: they have been everywhere, the other only about what they found. */
function believed(levels: Told, drawn: Told): Told {
  // By their ratio: what levels tell too little, they also think too certain.
  const apart = Math.abs(Math.log(drawn.share / levels.share))
  const scatter = Math.sqrt(drawn.variation ** 2 + levels.variation ** 2)
  return drawn.variation < levels.variation && apart < 3 * scatter ? drawn : levels
}

function counting(limit: LimitState) {
  let evaluations = 0
  return {
    evaluations: () => evaluations,
    ask: (points: readonly Float64Array[]) => {
      evaluations += points.length
      return limit(points)
    },
  }
}

/** The limit state that SHARE of a level keeps below, and all that do: more where some are equal. */
function thresholdOf(points: readonly Evaluated[]) {
  const sorted = points.map(({ state }) => state).sort((a, b) => a - b)
  const threshold = sorted[Math.round(points.length * SHARE) - 1]!
  return { threshold, passing: points.filter(({ state }) => state <= threshold) }
}

/** Places tried along a ray at once, and how often. */
const STEPS = 9
const TIMES = 2

/** Of the nearest failure, and of the middles of what failed: each drawn in along its ray as far as it fails; the nearest of all. */
async function nearestOf(failures: readonly Float64Array[], centres: readonly Float64Array[], ask: LimitState) {
  const nearest = failures.reduce((best, each) => (lengthOf(each) < lengthOf(best) ? each : best))
  const rays = [nearest, ...centres]
  const states = await ask(centres)
  let best = nearest
  for (const [k, ray] of rays.entries()) {
    if (k > 0 && states[k - 1]! > 0) continue
    let [safe, failing] = [0, 1]
    for (let time = 0; time < TIMES; time++) {
      const step = (failing - safe) / (STEPS + 1)
      const places = Array.from({ length: STEPS }, (_, j) => safe + (j + 1) * step)
      const found = await ask(places.map((place) => ray.map((z) => z * place)))
      const first = found.findIndex((state) => state <= 0)
      if (first >= 0) failing = places[first]!
      safe = failing - step
    }
    const point = ray.map((z) => z * failing)
    if (lengthOf(point) < lengthOf(best)) best = point
  }
  return best
}

const lengthOf = (point: Float64Array) => Math.sqrt(point.reduce((sum, z) => sum + z * z, 0))
