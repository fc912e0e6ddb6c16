/** Pieces of a border, each between two classes, joined end to end. */

type Place = readonly [number, number]

export interface Segment {
  from: Place
  to: Place
  classes: readonly [string, string]
}

export interface Border {
  /** The two classes it parts, in the order of their names. */
  classes: [string, string]
  /** Where it closes, the last is the first. */
  points: [number, number][]
}

/** `place` puts a segment's places into the units of the borders. */
export function polylines(segments: readonly Segment[], place: (at: Place) => [number, number]): Border[] {
  const byClasses = new Map<string, { classes: [string, string]; segments: Segment[] }>()
  for (const segment of segments) {
    const classes = [...segment.classes].sort() as [string, string]
    const key = JSON.stringify(classes)
    const group = byClasses.get(key) ?? { classes, segments: [] }
    group.segments.push(segment)
    byClasses.set(key, group)
  }
  return [...byClasses.values()].flatMap((group) =>
    chains(group.segments).map((points) => ({ classes: group.classes, points: points.map(place) })),
  )
}

const nameOf = ([x, y]: Place) => `${x},${y}`

function chains(segments: readonly Segment[]): Place[][] {
  const ends = new Map<string, Set<Segment>>()
  for (const segment of segments) {
    for (const end of [segment.from, segment.to]) {
      const name = nameOf(end)
      ends.set(name, (ends.get(name) ?? new Set()).add(segment))
    }
  }
  const follow = (from: Place): Place[] => {
    const points = [from]
    for (let at = from; ; ) {
      const [next] = ends.get(nameOf(at))!
      if (!next) return points
      ends.get(nameOf(next.from))!.delete(next)
      ends.get(nameOf(next.to))!.delete(next)
      at = nameOf(next.from) === nameOf(at) ? next.to : next.from
      points.push(at)
      // A line ends where others meet it.
      if (ends.get(nameOf(at))!.size !== 1) return points
    }
  }
  const places = segments.flatMap(({ from, to }) => [from, to])
  const left = (place: Place) => ends.get(nameOf(place))!.size
  const starts = places.filter((place) => left(place) !== 2)
  // First what has ends, then what is left: closed lines.
  return [...starts, ...places].flatMap((place) => {
    const found: Place[][] = []
    while (left(place) > 0) found.push(follow(place))
    return found
  })
}
