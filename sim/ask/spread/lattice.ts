/** Whole-numbered places 0 … side along either axis, each classified once, and the sides of cells between them. */

type Place = readonly [number, number]

/** From (x, y) along one axis, `size` units. */
export interface Side {
  x: number
  y: number
  dx: number
  dy: number
  size: number
}

export interface Crossing {
  place: [number, number]
  /** Class where the side begins and where it ends. */
  before: string
  after: string
  /** No third class was met in between. */
  pure: boolean
}

export class Lattice {
  private readonly classes = new Map<number, string>()
  private readonly crossings = new Map<string, { at: number; pure: boolean }>()
  private readonly side: number
  private readonly classify: (places: Place[]) => Promise<string[]>

  constructor(side: number, classify: (places: Place[]) => Promise<string[]>) {
    this.side = side
    this.classify = classify
  }

  get size(): number {
    return this.classes.size
  }

  /** Of a place that was asked for. */
  at(x: number, y: number): string {
    return this.classes.get(this.keyOf(x, y))!
  }

  async ask(places: readonly Place[]): Promise<void> {
    const wanted = new Map<number, Place>()
    for (const [x, y] of places) {
      const key = this.keyOf(x, y)
      if (!this.classes.has(key)) wanted.set(key, [x, y])
    }
    if (wanted.size === 0) return
    const found = await this.classify([...wanted.values()])
    for (const [k, key] of [...wanted.keys()].entries()) this.classes.set(key, found[k]!)
  }

  /** Finds where the class changes along each side whose ends differ, to within `gap` units; all sides step together. */
  async bisect(sides: readonly Side[], gap: number): Promise<void> {
    const open = new Map<string, { side: Side; low: number; high: number; pure: boolean }>()
    for (const each of sides) {
      const side = forward(each)
      const name = nameOf(side)
      if (this.crossings.has(name) || open.has(name) || this.along(side, 0) === this.along(side, side.size)) continue
      open.set(name, { side, low: 0, high: side.size, pure: true })
    }
    while (open.size > 0) {
      await this.ask([...open.values()].map(({ side, low, high }) => placeOn(side, (low + high) / 2)))
      for (const [name, state] of open) {
        const middle = (state.low + state.high) / 2
        const met = this.along(state.side, middle)
        if (met === this.along(state.side, 0)) state.low = middle
        else state.high = middle
        if (met !== this.along(state.side, 0) && met !== this.along(state.side, state.side.size)) state.pure = false
        if (state.high - state.low > gap) continue
        this.crossings.set(name, { at: (state.low + state.high) / 2, pure: state.pure })
        open.delete(name)
      }
    }
  }

  /** Where a bisected side changes class; null: its ends are alike. */
  crossing(side: Side): Crossing | null {
    const found = this.crossings.get(nameOf(forward(side)))
    if (!found) return null
    const before = this.along(side, 0)
    const after = this.along(side, side.size)
    return { place: placeOn(forward(side), found.at), before, after, pure: found.pure }
  }

  /** Class that a place on the side has by its ends and crossing; null: it is not on the side, or nobody has looked yet. */
  looksAt(side: Side, x: number, y: number): string | null {
    const ahead = forward(side)
    const step = (x - ahead.x) * ahead.dx + (y - ahead.y) * ahead.dy
    const off = Math.abs((x - ahead.x) * ahead.dy) + Math.abs((y - ahead.y) * ahead.dx)
    if (off !== 0 || step < 0 || step > ahead.size) return null
    const [before, after] = [this.along(ahead, 0), this.along(ahead, ahead.size)]
    if (before === after) return before
    const found = this.crossings.get(nameOf(ahead))
    if (!found) return null
    return step < found.at ? before : after
  }

  private along(side: Side, step: number): string {
    const [x, y] = placeOn(side, step)
    return this.at(x, y)
  }

  private keyOf = (x: number, y: number) => y * (this.side + 1) + x
}

const placeOn = ({ x, y, dx, dy }: Side, step: number): [number, number] => [x + dx * step, y + dy * step]

const nameOf = ({ x, y, dx, size }: Side) => `${x},${y},${dx},${size}`

/** The same side with growing places. */
const forward = (side: Side): Side =>
  side.dx + side.dy > 0
    ? side
    : {
        x: side.x + side.dx * side.size,
        y: side.y + side.dy * side.size,
        dx: -side.dx || 0,
        dy: -side.dy || 0,
        size: side.size,
      }
