/**
 * Importance sampling about failures that are known: normal laws of unit width about the middles of their groups, each point weighted by
 * how much rarer it is in truth.
 */
import { exponential } from '../../core/elementary.ts'

/** Two groups are told apart where their middles are so far from each other; halves of one normal cloud are 1.6. */
const APART = 2.6
const MOST_GROUPS = 8
const ROUNDS = 10

/** Middles of the groups of points. */
export function centresOf(points: readonly Float64Array[]): Float64Array[] {
  const done: Float64Array[] = []
  const open = [points]
  while (open.length > 0) {
    const group = open.shift()!
    const halves = halvesOf(group)
    const apart = halves && Math.sqrt(squareOf(meanOf(halves[0]), meanOf(halves[1]))) > APART
    if (apart && done.length + open.length + 2 <= MOST_GROUPS) open.push(...halves)
    else done.push(meanOf(group))
  }
  return done
}

/** By the nearer of two middles (Lloyd), begun at the point farthest from the mean and the one farthest from that. */
function halvesOf(group: readonly Float64Array[]): [Float64Array[], Float64Array[]] | null {
  const farthest = (from: Float64Array) =>
    group.reduce((best, each) => (squareOf(each, from) > squareOf(best, from) ? each : best))
  let one = farthest(meanOf(group))
  let other = farthest(one)
  for (let round = 0; ; round++) {
    const near = group.filter((each) => squareOf(each, one) <= squareOf(each, other))
    const rest = group.filter((each) => squareOf(each, one) > squareOf(each, other))
    if (near.length === 0 || rest.length === 0) return null
    if (round === ROUNDS) return [near, rest]
    one = meanOf(near)
    other = meanOf(rest)
  }
}

const meanOf = (points: readonly Float64Array[]): Float64Array =>
  points[0]!.map((_, k) => points.reduce((sum, point) => sum + point[k]!, 0) / points.length)

const squareOf = (one: Float64Array, other: Float64Array): number =>
  one.reduce((sum, each, k) => sum + (each - other[k]!) ** 2, 0)

/** Part of the points drawn all about, as far out as the failures lie: for what nobody has found yet. */
const ABOUT = 0.25

export interface Weighted {
  point: Float64Array
  weight: number
}

export class Importance {
  readonly centres: readonly Float64Array[]
  readonly failures: Weighted[] = []
  private readonly parts: number[]
  /** Standard deviation of the points drawn all about. */
  private readonly wide: number
  /** What the squares of the weights come to by failures drawn by their own law: it grows where no centre is near one. */
  private readonly square: number
  private drawn = 0

  /** `share` is what the `known` failures, weighted, are of all. */
  constructor(centres: readonly Float64Array[], known: readonly Weighted[], share: number) {
    this.centres = centres
    const whole = known.reduce((sum, { weight }) => sum + weight, 0)
    this.parts = centres.map((_, k) => partOf(this.grouped(known, k)) / whole)
    const dimension = centres[0]!.length
    const radius = Math.sqrt(known.reduce((sum, { point, weight }) => sum + (weight / whole) * lengthSquare(point), 0))
    this.wide = Math.max(1, radius / Math.sqrt(dimension))
    this.square = (share * known.reduce((sum, { point, weight }) => sum + weight * this.weight(point), 0)) / whole
  }

  /** Points of the mixture, its parts in their proportions. */
  draw(count: number, normal: () => number): Float64Array[] {
    return Array.from({ length: count }, (_, k) => {
      const share = (k + 0.5) / count
      if (share < ABOUT) return this.centres[0]!.map(() => this.wide * normal())
      return this.centres[this.pick((share - ABOUT) / (1 - ABOUT))]!.map((at) => at + normal())
    })
  }

  take(points: readonly Float64Array[], states: readonly number[]): void {
    this.drawn += points.length
    for (const [k, point] of points.entries()) {
      if (states[k]! <= 0) this.failures.push({ point, weight: this.weight(point) })
    }
  }

  /** The share, and its coefficient of variation by the larger of both squares. */
  told(): { share: number; variation: number } {
    const share = partOf(this.failures) / this.drawn
    const own = this.failures.reduce((sum, { weight }) => sum + weight * weight, 0) / this.drawn
    const square = Math.max(own, this.square)
    const variation =
      share > 0 ? Math.sqrt(Math.max(square / share ** 2 - 1, 0) / this.drawn) : Number.POSITIVE_INFINITY
    return { share, variation }
  }

  /** The centres drawn to the middle of what failed near each, as much as that weighs beside what was `known` there. */
  drawnIn(known: readonly Weighted[]): Float64Array[] {
    return this.centres.map((centre, k) => {
      const own = this.grouped(this.failures, k)
      if (own.length === 0) return centre
      const [news, olds] = [independent(own), independent(this.grouped(known, k)) / CHAINED]
      const mean = weightedMean(own)
      return centre.map((at, j) => (olds * at + news * mean[j]!) / (olds + news))
    })
  }

  /** How much rarer the point is by the standard normal law than by the one it is drawn from. */
  private weight(point: Float64Array): number {
    const own = lengthSquare(point) / 2
    const wide = this.wide ** 2
    let thin = ABOUT
    for (let k = 0; k < point.length; k++) thin /= this.wide
    // From the largest exponent, so that none overflows.
    const exponents = this.centres.map((centre) => own - squareOf(point, centre) / 2)
    const about = own - own / wide
    const most = Math.max(about, ...exponents)
    const sum = exponents.reduce(
      (total, each, k) => total + (1 - ABOUT) * this.parts[k]! * exponential(each - most),
      thin * exponential(about - most),
    )
    return exponential(-most) / sum
  }

  private grouped(known: readonly Weighted[], group: number): Weighted[] {
    return known.filter(({ point }) => {
      const squares = this.centres.map((centre) => squareOf(point, centre))
      return squares.indexOf(Math.min(...squares)) === group
    })
  }

  private pick(share: number): number {
    let below = 0
    for (const [k, part] of this.parts.entries()) {
      below += part
      if (share < below) return k
    }
    return this.parts.length - 1
  }
}

/** Points of chains that are worth one drawn independently, about. */
const CHAINED = 4

const partOf = (points: readonly Weighted[]) => points.reduce((sum, { weight }) => sum + weight, 0)
const lengthSquare = (point: Float64Array) => point.reduce((sum, z) => sum + z * z, 0)

/** How many points of equal weight tell as much (Kish 1965). */
const independent = (points: readonly Weighted[]) =>
  points.length === 0 ? 0 : partOf(points) ** 2 / points.reduce((sum, { weight }) => sum + weight * weight, 0)

function weightedMean(points: readonly Weighted[]): Float64Array {
  const whole = partOf(points)
  return points[0]!.point.map((_, k) =>
    points.reduce((sum, { point, weight }) => sum + (weight / whole) * point[k]!, 0),
  )
}
