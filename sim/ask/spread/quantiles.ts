/**
 * How a figure is distributed, in counts: buckets a thousandth wide, by the leading bits of the number, so that parts of a study join in
 * any order to the same bits. What it says of a quantile is right to 0.1 % of the quantile's size.
 */

/** Digits of a double kept behind its leading one: a bucket is 2⁻¹⁰ of its lower end wide. */
const KEPT = 10
const DROPPED = 20 - KEPT

const view = new DataView(new ArrayBuffer(8))

/** Buckets count up from zero with the size of the number, and down with that of a negative one; zero has bucket 0 to itself. */
function bucketOf(value: number): number {
  if (value === 0) return 0
  view.setFloat64(0, Math.abs(value))
  const bucket = (view.getUint32(0) >>> DROPPED) + 1
  return value < 0 ? -bucket : bucket
}

/** Lower end of a positive bucket. */
function endOf(bucket: number): number {
  view.setUint32(0, (bucket - 1) << DROPPED)
  view.setUint32(4, 0)
  return view.getFloat64(0)
}

/** Both ends of a bucket, the lower first. */
function endsOf(bucket: number): [number, number] {
  if (bucket === 0) return [0, 0]
  const size = Math.abs(bucket)
  const [near, far] = [endOf(size), Math.min(endOf(size + 1), Number.MAX_VALUE)]
  return bucket > 0 ? [near, far] : [-far, -near]
}

/** Compact and exact: the least and the greatest, then bucket and count in turn, each bucket as the step from the last. */
export interface SketchJson {
  least: number
  most: number
  counts: number[]
}

export class Sketch {
  private readonly counts = new Map<number, number>()
  /** Buckets that there are, rising; null: not put in order since the last was added. */
  #ordered: number[] | null = null
  private total = 0
  private least = Number.POSITIVE_INFINITY
  private most = Number.NEGATIVE_INFINITY

  /** How many numbers it holds. */
  get size(): number {
    return this.total
  }

  /** `value` is a finite number; throws a RangeError for any other. */
  add(value: number): void {
    if (!Number.isFinite(value)) throw new RangeError(`Not a number to count: ${value}.`)
    this.put(bucketOf(value), 1)
    this.least = Math.min(this.least, value)
    this.most = Math.max(this.most, value)
  }

  join(other: Sketch): void {
    for (const [bucket, count] of [...other.counts]) this.put(bucket, count)
    this.least = Math.min(this.least, other.least)
    this.most = Math.max(this.most, other.most)
  }

  /** The number with the share 0 … 1 below it, within its bucket as if that were evenly filled; NaN of nothing. */
  quantile(share: number): number {
    const rank = share * this.total
    let below = 0
    for (const [bucket, count] of this.inOrder()) {
      if (below + count >= rank) return this.inside(bucket, (rank - below) / count)
      below += count
    }
    return this.total > 0 ? this.most : Number.NaN
  }

  /** How many lie in each of `bins` equal parts of low … high; a bucket across a border is shared out, so counts may be broken. */
  histogram(low: number, high: number, bins: number): Float64Array {
    const heights = new Float64Array(bins)
    const place = (value: number) => ((value - low) / (high - low)) * bins
    for (const [bucket, count] of this.inOrder()) {
      const from = place(this.inside(bucket, 0))
      const to = place(this.inside(bucket, 1))
      if (to < 0 || from > bins) continue
      if (to === from) heights[Math.min(Math.floor(from), bins - 1)]! += count
      for (let bin = Math.max(Math.floor(from), 0); to > from && bin < Math.min(to, bins); bin++) {
        const overlap = Math.min(to, bin + 1) - Math.max(from, bin)
        heights[bin]! += (count * overlap) / (to - from)
      }
    }
    return heights
  }

  toJSON(): SketchJson {
    let last = 0
    const counts = this.inOrder().flatMap(([bucket, count]) => {
      const step = bucket - last
      last = bucket
      return [step, count]
    })
    return this.total > 0 ? { least: this.least, most: this.most, counts } : { least: 0, most: 0, counts: [] }
  }

  /** Throws a RangeError where the counts are none. */
  static from({ least, most, counts }: SketchJson): Sketch {
    const sketch = new Sketch()
    let bucket = 0
    for (let k = 0; k < counts.length; k += 2) {
      bucket += counts[k]!
      const count = counts[k + 1]
      if (!Number.isSafeInteger(bucket) || !Number.isSafeInteger(count) || count! < 1) {
        throw new RangeError('Not the counts of a distribution.')
      }
      sketch.put(bucket, count!)
    }
    if (sketch.total > 0) {
      sketch.least = least
      sketch.most = most
    }
    return sketch
  }

  private put(bucket: number, count: number): void {
    if (!this.counts.has(bucket)) this.#ordered = null
    this.counts.set(bucket, (this.counts.get(bucket) ?? 0) + count)
    this.total += count
  }

  private inOrder(): [number, number][] {
    this.#ordered ??= [...this.counts.keys()].sort((one, other) => one - other)
    return this.#ordered.map((bucket) => [bucket, this.counts.get(bucket)!])
  }

  /** A place inside a bucket, 0 … 1 of its width, never beyond the least or the greatest. */
  private inside(bucket: number, place: number): number {
    const [low, high] = endsOf(bucket)
    return Math.min(Math.max(low + (high - low) * place, this.least), this.most)
  }
}
