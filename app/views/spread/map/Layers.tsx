/** The map itself: areas by hue and hatching, a figure as shade with lines of equal value, and the borders. */
import { memo, useId, useMemo } from 'react'
import { type Area, areasOf, classOf, JOBS, type JobId, type MapGrid, shownUnit } from '../../../../sim/index.ts'
import { useView } from '../../../store/view.ts'
import { formatPlain } from '../../../ui/format.ts'
import { contour, type Field, levelsOf, valueAt } from './contours.ts'
import { type Frame, fieldOf } from './frame.ts'
import { dressOf, hatchOf, wordOfClass } from './look.ts'
import type { MapAnswer, Shaded } from './state.ts'

interface LayersProps {
  answer: MapAnswer
  shaded: Shaded
  frame: Frame
}

export const Layers = memo(function Layers({ answer, shaded, frame }: LayersProps) {
  const name = useId()
  const areas = useMemo(
    () => (answer.map ? areasOf(answer.map) : squaresOf(answer.scenario.job, answer.grid)),
    [answer],
  )
  const field = useMemo(() => fieldOf(answer, shaded), [answer, shaded])
  const paths = useMemo(() => areas.map((area) => ({ name: area.class, d: pathOf(area, frame) })), [areas, frame])
  return (
    <>
      <defs>
        {paths.map((area) => (
          <pattern key={area.name} id={`${name}${area.name}`} width={8} height={8} patternUnits="userSpaceOnUse">
            <path className="map-hatch" {...dressOf(answer.scenario.job, area.name)} d={hatchOf(area.name)} />
          </pattern>
        ))}
      </defs>
      {paths.map((area) => (
        <path key={area.name} className="map-area" {...dressOf(answer.scenario.job, area.name)} d={area.d} />
      ))}
      <Shade field={field} frame={frame} />
      {paths.map((area) => (
        <path key={area.name} d={area.d} fill={`url(#${name}${area.name})`} />
      ))}
      <Contours job={answer.scenario.job} field={field} shaded={shaded} frame={frame} />
      {answer.map?.borders.map(({ points }, at) => (
        <path key={at} className="map-border" d={lineOf(points, frame)} />
      ))}
      <Names job={answer.scenario.job} grid={answer.grid} frame={frame} />
    </>
  )
})

const placeOf = (frame: Frame, [x, y]: readonly [number, number]) => `${frame.x(x).toFixed(1)} ${frame.y(y).toFixed(1)}`

const lineOf = (points: readonly (readonly [number, number])[], frame: Frame) =>
  `M${points.map((place) => placeOf(frame, place)).join('L')}`

const pathOf = ({ pieces }: Area, frame: Frame) => pieces.map((piece) => `${lineOf(piece, frame)}Z`).join('')

/** While the borders are not known yet: a square about each grip of the grid. */
function squaresOf(job: JobId, { xs, ys, outcomes }: MapGrid): Area[] {
  const areas = new Map<string, Area>()
  const middle = (all: number[], a: number, b: number) => ((all[a] ?? all[b]!) + (all[b] ?? all[a]!)) / 2
  for (const [at, outcome] of outcomes.entries()) {
    if (!outcome) continue
    const [column, row] = [at % xs.length, Math.floor(at / xs.length)]
    const [left, right] = [middle(xs, column - 1, column), middle(xs, column, column + 1)]
    const [low, high] = [middle(ys, row - 1, row), middle(ys, row, row + 1)]
    const area = areas.get(classOf(job, outcome)) ?? { class: classOf(job, outcome), pieces: [] }
    area.pieces.push([
      [left, low],
      [right, low],
      [right, high],
      [left, high],
    ])
    areas.set(area.class, area)
  }
  return [...areas.values()]
}

/** Steps of the shade, and pieces that a cell of the grid is drawn in. */
const STEPS = 16
const PIECES = 3
/** The darkest of the shade. */
const DARK = 0.34

function Shade({ field, frame }: { field: Field; frame: Frame }) {
  const paths = useMemo(() => shadeOf(field, frame), [field, frame])
  return paths.map((d, step) =>
    d === '' ? null : <path key={step} className="map-shade" d={d} fillOpacity={(DARK * step) / (STEPS - 1)} />,
  )
}

/** A path a step, of strips of pieces that have it side by side. */
function shadeOf(field: Field, frame: Frame): string[] {
  const [low, high] = endsOf(field)
  const paths = new Array<string>(STEPS).fill('')
  if (!(high > low)) return paths
  const [columns, rows] = [PIECES * (field.columns - 1), PIECES * (field.rows - 1)]
  const stepAt = (column: number, row: number) => {
    const value = valueAt(field, (column + 0.5) / PIECES, (row + 0.5) / PIECES)
    if (Number.isNaN(value)) return -1
    return Math.min(STEPS - 1, Math.max(0, Math.floor((STEPS * (value - low)) / (high - low))))
  }
  const [wide, tall] = [frame.width / columns, frame.height / rows]
  for (let row = 0; row < rows; row++) {
    const y = (frame.top + frame.height - (row + 1) * tall).toFixed(2)
    for (let from = 0; from < columns; ) {
      const step = stepAt(from, row)
      let to = from + 1
      while (to < columns && stepAt(to, row) === step) to++
      const across = ((to - from) * wide).toFixed(2)
      if (step > 0)
        paths[step] += `M${(frame.left + from * wide).toFixed(2)} ${y}h${across}v${tall.toFixed(2)}h-${across}Z`
      from = to
    }
  }
  return paths
}

/** Between which values the shade runs: the outermost few do not make all others look alike. */
function endsOf({ values }: Field): [number, number] {
  const sorted = [...values].filter((value) => !Number.isNaN(value)).sort((a, b) => a - b)
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN
  return [at(0.02), at(0.98)]
}

/** Lines of equal value. */
const LINES = 6

interface ContoursProps extends Pick<LayersProps, 'shaded' | 'frame'> {
  job: JobId
  field: Field
}

function Contours({ job, field, shaded, frame }: ContoursProps) {
  const units = useView((state) => state.units)
  const metric = JOBS[job].figures.find(({ id }) => id === shaded) ?? { unit: '', shown: '%' }
  const { toShown, toSi } = shownUnit(metric, units)
  const [low, high] = endsOf(field)
  // What has nothing to spare fails: that line is the border.
  const levels = levelsOf(toShown(low), toShown(high), LINES).filter((level) => shaded !== 'spare' || level !== 0)
  const place = ([column, row]: readonly [number, number]) =>
    [
      frame.left + (frame.width * column) / (field.columns - 1),
      frame.top + frame.height * (1 - row / (field.rows - 1)),
    ] as const
  return levels.map((level) => {
    const pieces = contour(field, toSi(level))
    const middle = pieces[Math.floor(pieces.length / 2)]
    if (!middle) return null
    const [x, y] = place(middle[0])
    const inside = x > frame.left + 24 && x < frame.left + frame.width - 24 && y > frame.top + 14
    return (
      <g key={level}>
        <path
          className="map-contour"
          d={pieces
            .map(([from, to]) => {
              const [a, b] = [place(from), place(to)]
              return `M${a[0].toFixed(1)} ${a[1].toFixed(1)}L${b[0].toFixed(1)} ${b[1].toFixed(1)}`
            })
            .join('')}
        />
        {inside && (
          <text className="map-level" x={x} y={y + 4} textAnchor="middle">
            {formatPlain(level, 3)}
          </text>
        )}
      </g>
    )
  })
}

/** Distance from the nearest grip of another class from which on there is room for a word, in lines of the grid. */
const ROOM = 2

/** What became of the part, written where its area is widest. */
function Names({ job, grid, frame }: { job: JobId; grid: MapGrid; frame: Frame }) {
  return widest(job, grid).map(({ name, column, row }) => (
    <text
      key={name}
      className="map-name"
      x={frame.x(grid.xs[column]!)}
      y={frame.y(grid.ys[row]!) + 5}
      textAnchor="middle"
    >
      {wordOfClass(job, name)}
    </text>
  ))
}

/** Of each class the grip that is farthest from those of others, counted in lines of the grid. */
function widest(job: JobId, { xs, ys, outcomes }: MapGrid): { name: string; column: number; row: number }[] {
  const [columns, rows] = [xs.length, ys.length]
  const classes = outcomes.map((outcome) => outcome && classOf(job, outcome))
  const depth = new Array<number>(classes.length).fill(0)
  const isRing = (column: number, row: number, far: number) => {
    const own = classes[row * columns + column]
    // Words are wider than high: what lies across counts half.
    for (const [dx, dy] of [
      [2 * far, 0],
      [-2 * far, 0],
      [0, far],
      [0, -far],
      [far, far],
      [-far, -far],
      [far, -far],
      [-far, far],
    ] as const) {
      const [x, y] = [column + dx, row + dy]
      if (x < 0 || y < 0 || x >= columns || y >= rows || classes[y * columns + x] !== own) return false
    }
    return true
  }
  // Of several as far, the one nearest the middle.
  const off = (at: number) => Math.abs(Math.floor(at / columns) - rows / 2) + Math.abs((at % columns) - columns / 2)
  const best = new Map<string, { at: number; depth: number }>()
  for (const [at, name] of classes.entries()) {
    if (!name) continue
    while (isRing(at % columns, Math.floor(at / columns), depth[at]! + 1)) depth[at]!++
    const known = best.get(name)
    const farther = !known || depth[at]! > known.depth || (depth[at] === known.depth && off(at) < off(known.at))
    if (farther) best.set(name, { at, depth: depth[at]! })
  }
  return [...best]
    .filter(([, { depth: far }]) => far >= ROOM)
    .map(([name, { at }]) => ({ name, column: at % columns, row: Math.floor(at / columns) }))
}
