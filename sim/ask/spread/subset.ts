/** Levels of points in standard normal space, each made of chains that start where the one before came lowest. */
import { exponential } from '../../core/elementary.ts'
import { normalQuantile } from './distributions.ts'
import { keyOf, unitOf, wordAt } from './words.ts'

export interface Evaluated {
  point: Float64Array
  /** Limit state. */
  state: number
}

export interface Level {
  points: Evaluated[]
  /** Places of a chain's points, in their order; null: all were drawn independently. */
  chains: number[][] | null
}

type Ask = (points: readonly Float64Array[]) => Promise<number[]>

/** Independent standard normal numbers of a seed. */
export function normals(seed: number): () => number {
  const key = keyOf(seed)
  let place = 0
  return () => normalQuantile(unitOf(wordAt(key, place++)))
}

/** Steps taken at first, and the share of them that should be accepted (Papaioannou et al. 2015). */
const STEP = 0.6
const ACCEPTED = 0.44
const SHORTEST = 0.05

export class Chains {
  private readonly ask: Ask
  private readonly normal: () => number
  private step = STEP

  constructor(ask: Ask, normal: () => number) {
    this.ask = ask
    this.normal = normal
  }

  async begin(dimension: number, size: number): Promise<Level> {
    const points = Array.from({ length: size }, () => Float64Array.from({ length: dimension }, this.normal))
    const states = await this.ask(points)
    return { points: points.map((point, k) => ({ point, state: states[k]! })), chains: null }
  }

  /**
   * `size` points below the threshold, from `count` of those that are: all chains move at once, each to a point correlated with its
   * last, and stay where that is above the threshold. The step follows the share that is accepted.
   */
  async next(passing: readonly Evaluated[], threshold: number, size: number, count: number): Promise<Level> {
    const points = this.drawn(passing, count)
    const chains = points.map((_, k) => [k])
    for (let time = 1; points.length < size; time++) {
      const moving = chains.slice(0, size - points.length)
      const step = Math.min(this.step, 1)
      const kept = Math.sqrt(1 - step * step)
      const tried = moving.map((chain) => points[chain.at(-1)!]!.point.map((z) => kept * z + step * this.normal()))
      const states = await this.ask(tried)
      let accepted = 0
      for (const [k, chain] of moving.entries()) {
        const moves = states[k]! <= threshold
        if (moves) accepted++
        points.push(moves ? { point: tried[k]!, state: states[k]! } : points[chain.at(-1)!]!)
        chain.push(points.length - 1)
      }
      const change = (accepted / moving.length - ACCEPTED) / Math.sqrt(time)
      this.step = Math.min(Math.max(this.step * exponential(change), SHORTEST), 1)
    }
    return { points, chains }
  }

  /** Some of a list, each as likely. */
  private drawn(list: readonly Evaluated[], count: number): Evaluated[] {
    const keyed = list.map((each) => ({ each, key: this.normal() })).sort((one, other) => one.key - other.key)
    return keyed.slice(0, count).map(({ each }) => each)
  }
}

/**
 * Coefficient of variation of the share of a level at or below the threshold, with what the points of a chain have in common (Au and
 * Beck 2001, eq. 28); never below that of independent ones.
 */
export function variationOf({ points, chains }: Level, threshold: number): number {
  const hits = points.map(({ state }) => (state <= threshold ? 1 : 0) as number)
  const share = hits.reduce((sum, hit) => sum + hit, 0) / hits.length
  if (share === 0) return Number.POSITIVE_INFINITY
  const scatter = (1 - share) / (hits.length * share)
  return Math.sqrt(scatter * (1 + (chains && share < 1 ? Math.max(0, common(hits, chains, share)) : 0)))
}

function common(hits: readonly number[], chains: readonly number[][], share: number): number {
  const longest = Math.max(...chains.map((chain) => chain.length))
  let sum = 0
  for (let lag = 1; lag < longest; lag++) {
    let both = 0
    let pairs = 0
    for (const chain of chains) {
      for (let k = 0; k + lag < chain.length; k++, pairs++) both += hits[chain[k]!]! * hits[chain[k + lag]!]!
    }
    sum += 2 * (1 - lag / longest) * ((both / pairs - share * share) / (share * (1 - share)))
  }
  return sum
}
