/** Where a web meets the rolls that it runs over: straight from tangent to tangent. */

export interface Disc {
  x: number
  y: number
  r: number
  /** The web runs over its top: 1, under it: −1. */
  side: 1 | -1
}

export interface Point {
  x: number
  y: number
}

/** The straight between two discs, from where it leaves the one to where it meets the other; both lie apart, the second to the right. */
export function straight(a: Disc, b: Disc): [Point, Point] {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const apart = Math.hypot(dx, dy)
  const along = (a.side * a.r - b.side * b.r) / apart
  const across = Math.sqrt(Math.max(0, 1 - along * along))
  // The normal that points up: a length `along` of the way from disc to disc, the rest across it.
  const n = { x: (dx * along + dy * across) / apart, y: (dy * along - dx * across) / apart }
  const at = ({ x, y, r, side }: Disc) => ({ x: x + side * r * n.x, y: y + side * r * n.y })
  return [at(a), at(b)]
}

/** Depth of a web that hangs by `slack` longer than its span, both [m]: a shallow parabola, slack = 8·f²/(3·L) (closed form). */
export const sagOf = (slack: number, length: number): number => Math.sqrt((3 / 8) * length * Math.max(0, slack))

/** The way along discs: straights, and arcs about every disc but the first and the last. `sag` [px] hangs in the straight of that number. */
export function pathOf(discs: readonly Disc[], hanging: number, sag: number): string {
  const runs = discs.slice(1).map((disc, n) => straight(discs[n]!, disc))
  return runs
    .map(([from, to], n) => {
      const disc = discs[n]!
      const start = n === 0 ? `M${text(from)}` : `A${disc.r} ${disc.r} 0 0 ${disc.side > 0 ? 1 : 0} ${text(from)}`
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 + 2 * sag }
      return `${start}${n === hanging && sag > 0.5 ? `Q${text(middle)} ${text(to)}` : `L${text(to)}`}`
    })
    .join('')
}

const text = ({ x, y }: Point) => `${x.toFixed(2)} ${y.toFixed(2)}`
