/**
 * Sums that are the same to the last bit in whatever order their terms come: each term is a whole multiple of 2^-100, which cuts
 * figures at 1e-30 of their unit.
 */

const GRID = 2 ** 100
const SCALE = 1n << 100n

export interface SumText {
  count: number
  sum: string
  squares: string
}

export class ExactSum {
  count = 0
  private sum = 0n
  private squares = 0n

  /** `value` is finite. */
  add(value: number): void {
    this.count++
    this.sum += onGrid(value)
    this.squares += onGrid(value * value)
  }

  join(other: ExactSum): void {
    this.count += other.count
    this.sum += other.sum
    this.squares += other.squares
  }

  /** NaN of nothing. */
  get mean(): number {
    return Number(this.sum) / GRID / this.count
  }

  /** Standard deviation of the population that the values are a sample of (n − 1); NaN of fewer than two. */
  get sd(): number {
    if (this.count < 2) return Number.NaN
    const n = BigInt(this.count)
    const spread = n * this.squares * SCALE - this.sum * this.sum
    return spread <= 0n ? 0 : Math.sqrt(Number(spread / (n * (n - 1n)))) / GRID
  }

  toJSON(): SumText {
    return { count: this.count, sum: this.sum.toString(36), squares: this.squares.toString(36) }
  }

  static from({ count, sum, squares }: SumText): ExactSum {
    const made = new ExactSum()
    made.count = count
    made.sum = whole(sum)
    made.squares = whole(squares)
    return made
  }
}

const onGrid = (value: number) => BigInt(Math.trunc(value * GRID))

function whole(text: string): bigint {
  const digits = text.replace('-', '')
  let value = 0n
  for (const digit of digits) value = value * 36n + BigInt(Number.parseInt(digit, 36))
  return text.startsWith('-') ? -value : value
}
