/**
 * Where one class gives way to another over two parameters. A grid first; then the border is followed from cell to cell, its place on
 * each cell's sides found by bisection and the straight line between them put to the proof. What it costs grows with the border's length.
 */
import { Lattice, type Side } from './lattice.ts'
import { type Border, polylines, type Segment } from './polylines.ts'

/** Classes of many points (x, y) at once, in their order. */
export type Classify = (points: readonly (readonly [number, number])[]) => Promise<string[]>

export interface Range {
  from: number
  to: number
}

export interface Cell {
  /** Its corner of least x and y, and its size, in the units of the parameters. */
  x: number
  y: number
  width: number
  height: number
  /** At (x, y), (x + width, y), (x, y + height), (x + width, y + height). */
  corners: [string, string, string, string]
}

export interface BorderMap {
  /** They tile the ranges. */
  cells: Cell[]
  borders: Border[]
  /** Points that were classified. */
  evaluations: number
  /** An island, or a strip, may hide between the points of the first grid if it is narrower than this share of either range. */
  hidden: number
}

/** Cells of the first grid along either parameter. */
export const GRID = 32
/** Units of the lattice along a cell of the grid, and along the finest cell: 1/512 of the range in a grid of 32. */
const COARSE = 128
const FINE = 8
/** What a side's crossing is known to, and how far to either side of the line its middle is tried: a quarter of 1/500 and a half. */
const GAP = 2
const OFF = 4

/**
 * Borders are right to 1/500 of the ranges with a grid of 32, finer with a finer one, except where two of them run closer together than
 * the finest cell. A class is whatever `classify` calls it; it is asked in large batches, and never twice for a point.
 */
export async function traceBorder(x: Range, y: Range, classify: Classify, grid = GRID): Promise<BorderMap> {
  const side = grid * COARSE
  const along = (range: Range, place: number) => placeOn(range, place, side)
  const lattice = new Lattice(side, (points) => classify(points.map(([a, b]) => [along(x, a), along(y, b)] as const)))
  const tracer = new Tracer(lattice)
  await tracer.run(grid)
  return {
    cells: [...tracer.leaves.values()].map((leaf) => ({
      x: along(x, leaf.x),
      y: along(y, leaf.y),
      width: ((x.to - x.from) * leaf.size) / side,
      height: ((y.to - y.from) * leaf.size) / side,
      corners: tracer.cornersOf(leaf) as Cell['corners'],
    })),
    borders: polylines(tracer.segments, ([a, b]) => [along(x, a), along(y, b)]),
    evaluations: lattice.size,
    hidden: 1 / grid,
  }
}

const placeOn = ({ from, to }: Range, place: number, side: number) => from + ((to - from) * place) / side

/** Where the lines of the first grid lie on a range, both ends included: the very values that are classified. */
export const gridOn = (range: Range, grid = GRID): number[] =>
  Array.from({ length: grid + 1 }, (_, line) => placeOn(range, line * COARSE, grid * COARSE))

interface Leaf {
  x: number
  y: number
  size: number
}

const nameOf = ({ x, y, size }: Leaf) => `${x},${y},${size}`

class Tracer {
  readonly leaves = new Map<string, Leaf>()
  readonly segments: Segment[] = []
  private readonly lattice: Lattice

  constructor(lattice: Lattice) {
    this.lattice = lattice
  }

  async run(grid: number): Promise<void> {
    const cells = Array.from({ length: grid * grid }, (_, k) => ({
      x: (k % grid) * COARSE,
      y: Math.floor(k / grid) * COARSE,
      size: COARSE,
    }))
    for (const cell of cells) this.leaves.set(nameOf(cell), cell)
    await this.lattice.ask(cells.flatMap(cornerPlaces))
    let open = cells.filter((cell) => this.mixed(cell))
    while (open.length > 0) {
      const split = await this.settle(open)
      open = await this.divide(split)
    }
    for (const leaf of this.leaves.values()) if (this.mixed(leaf)) this.draw(leaf)
  }

  cornersOf = (leaf: Leaf): string[] => cornerPlaces(leaf).map(([x, y]) => this.lattice.at(x, y))

  private mixed = (leaf: Leaf): boolean => new Set(this.cornersOf(leaf)).size > 1

  /** Finds where the border meets the cells' sides; gives those in which it is more than one straight line. */
  private async settle(open: readonly Leaf[]): Promise<Leaf[]> {
    const coarse = open.filter(({ size }) => size > FINE)
    await this.lattice.bisect(open.flatMap(sidesOf), GAP)
    const straight = coarse.filter((leaf) => this.lineOf(leaf) !== null)
    const trials = straight.map((leaf) => trialsOf(this.lineOf(leaf)!))
    await this.lattice.ask(trials.flat())
    const proven = new Set(
      straight.filter((leaf, k) => {
        const [one, other] = trials[k]!.map(([x, y]) => this.lattice.at(x, y))
        const { left, right } = this.lineOf(leaf)!
        return one === left && other === right
      }),
    )
    return coarse.filter((leaf) => !proven.has(leaf))
  }

  /** Quarters cells, and then their neighbours whose sides turn out otherwise than they look; gives the cells that are to be settled. */
  private async divide(split: readonly Leaf[]): Promise<Leaf[]> {
    const open: Leaf[] = []
    for (let wave = [...split]; wave.length > 0; ) {
      const born = wave.filter((leaf) => this.leaves.delete(nameOf(leaf))).flatMap(quarters)
      for (const leaf of born) this.leaves.set(nameOf(leaf), leaf)
      await this.lattice.ask(born.flatMap(cornerPlaces))
      open.push(...born)
      const doubtful = born.flatMap((leaf) => cornerPlaces(leaf).flatMap((place) => this.contradicted(place)))
      wave = [...new Map(doubtful.map((leaf) => [nameOf(leaf), leaf])).values()]
    }
    return open.filter((leaf) => this.leaves.has(nameOf(leaf)) && this.mixed(leaf))
  }

  /** Cells with the place on one of their sides, that look as if it were of another class there. */
  private contradicted([x, y]: readonly [number, number]): Leaf[] {
    const found: Leaf[] = []
    for (const [a, b] of [
      [x - 1, y - 1],
      [x, y - 1],
      [x - 1, y],
      [x, y],
    ] as const) {
      const leaf = this.leafAt(a, b)
      if (!leaf || leaf.size <= FINE) continue
      for (const side of sidesOf(leaf)) {
        const looks = this.lattice.looksAt(side, x, y)
        if (looks !== null && looks !== this.lattice.at(x, y)) found.push(leaf)
      }
    }
    return found
  }

  private leafAt(x: number, y: number): Leaf | undefined {
    for (let size = COARSE; size >= FINE; size /= 2) {
      const leaf = this.leaves.get(nameOf({ x: x - (x % size), y: y - (y % size), size }))
      if (leaf) return leaf
    }
    return undefined
  }

  /** The line that crosses the cell, with the classes to its left and right; null: there is not just one. */
  private lineOf(leaf: Leaf) {
    const crossed = sidesOf(leaf).flatMap((side) => this.lattice.crossing(side) ?? [])
    if (crossed.length !== 2 || crossed.some(({ pure }) => !pure)) return null
    const [from, to] = crossed as [(typeof crossed)[0], (typeof crossed)[0]]
    // Sides run about the cell, so what one leaves behind lies to the same hand of the line as what the other comes to.
    return { from: from.place, to: to.place, left: from.before, right: from.after }
  }

  private draw(leaf: Leaf): void {
    const line = this.lineOf(leaf)
    if (line) {
      this.segments.push({ from: line.from, to: line.to, classes: [line.left, line.right] })
      return
    }
    const middle: [number, number] = [leaf.x + leaf.size / 2, leaf.y + leaf.size / 2]
    for (const side of sidesOf(leaf)) {
      const crossing = this.lattice.crossing(side)
      if (crossing) {
        this.segments.push({ from: crossing.place, to: middle, classes: [crossing.before, crossing.after] })
      }
    }
  }
}

const cornerPlaces = ({ x, y, size }: Leaf): [number, number][] => [
  [x, y],
  [x + size, y],
  [x, y + size],
  [x + size, y + size],
]

const quarters = ({ x, y, size }: Leaf): Leaf[] =>
  cornerPlaces({ x, y, size: size / 2 }).map(([a, b]) => ({ x: a, y: b, size: size / 2 }))

/** Anticlockwise about the cell. */
const sidesOf = ({ x, y, size }: Leaf): Side[] => [
  { x, y, dx: 1, dy: 0, size },
  { x: x + size, y, dx: 0, dy: 1, size },
  { x: x + size, y: y + size, dx: -1, dy: 0, size },
  { x, y: y + size, dx: 0, dy: -1, size },
]

/** Places a little to the left and to the right of the middle of a line. */
function trialsOf({
  from,
  to,
}: {
  from: readonly [number, number]
  to: readonly [number, number]
}): [number, number][] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const reach = OFF / Math.sqrt(dx * dx + dy * dy)
  return [1, -1].map((hand) => [
    Math.round((from[0] + to[0]) / 2 - hand * dy * reach),
    Math.round((from[1] + to[1]) / 2 + hand * dx * reach),
  ])
}
