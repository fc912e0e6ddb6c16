/** The areas of a map: its cells, and those that a border crosses cut along it, each with the class that it is of. */
import type { BorderMap, Cell } from './border.ts'

type Place = readonly [number, number]

export interface Area {
  class: string
  /** Polygons that tile it. */
  pieces: Place[][]
}

/** In the order of the classes' names. A cell of the finest size that several borders meet in is of the class of its first corner. */
export function areasOf({ cells, borders }: Pick<BorderMap, 'cells' | 'borders'>): Area[] {
  const lines = new Lines(borders.map(({ points }) => points))
  const areas = new Map<string, Place[][]>()
  const add = (name: string, piece: Place[]) => {
    if (piece.length < 3) return
    const pieces = areas.get(name) ?? []
    pieces.push(piece)
    areas.set(name, pieces)
  }
  for (const cell of cells) {
    const corners = cornersOf(cell)
    const crossing = new Set(cell.corners).size > 1 ? lines.through(cell) : null
    if (!crossing) add(cell.corners[0], corners)
    else for (const hand of [1, -1] as const) add(classOn(cell, crossing, hand), cut(corners, crossing, hand))
  }
  return [...areas].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, pieces]) => ({ class: name, pieces }))
}

type Line = readonly [Place, Place]

/** Round about, from the one of least x and y. */
const cornersOf = ({ x, y, width, height }: Cell): Place[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

/** The order in which a cell tells its corners' classes, by that of `cornersOf`. */
const ROUND = [0, 1, 3, 2]

/** Above 0: to the left of the line. */
const side = ([[ax, ay], [bx, by]]: Line, [x, y]: Place) => (bx - ax) * (y - ay) - (by - ay) * (x - ax)

/** The class on one hand of the line: that of the corner which lies farthest there. */
function classOn(cell: Cell, line: Line, hand: 1 | -1): string {
  const far = cornersOf(cell).map((corner) => hand * side(line, corner))
  return cell.corners[ROUND[far.indexOf(Math.max(...far))]!]!
}

/** What of a convex polygon lies on one hand of a line (Sutherland and Hodgman 1974). */
function cut(polygon: readonly Place[], line: Line, hand: 1 | -1): Place[] {
  return polygon.flatMap((from, at) => {
    const to = polygon[(at + 1) % polygon.length]!
    const [a, b] = [hand * side(line, from), hand * side(line, to)]
    const share = a / (a - b)
    const crossed: Place = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
    return [...(a >= 0 ? [from] : []), ...(a * b < 0 ? [crossed] : [])]
  })
}

/** Which straight piece of a border goes through which cell. */
class Lines {
  private readonly pieces: { line: Line; x: number; y: number }[]

  constructor(borders: readonly (readonly Place[])[]) {
    this.pieces = borders
      .flatMap((points) => points.slice(1).map((to, at): Line => [points[at]!, to]))
      .map((line) => ({ line, x: (line[0][0] + line[1][0]) / 2, y: (line[0][1] + line[1][1]) / 2 }))
      .sort((a, b) => a.x - b.x)
  }

  /** Null: none, or more than one. */
  through({ x, y, width, height }: Cell): Line | null {
    let found: Line | null = null
    for (let at = this.firstFrom(x); at < this.pieces.length && this.pieces[at]!.x <= x + width; at++) {
      const piece = this.pieces[at]!
      if (piece.y < y || piece.y > y + height) continue
      if (found) return null
      found = piece.line
    }
    return found
  }

  private firstFrom(x: number): number {
    let [low, high] = [0, this.pieces.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if (this.pieces[middle]!.x < x) low = middle + 1
      else high = middle
    }
    return low
  }
}
