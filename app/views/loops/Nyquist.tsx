import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react'
import type { Curves, LoopAnalysis, LoopsResult } from '../../../sim/index.ts'
import { FREQUENCY } from '../../read/loops/frequency.ts'
import { DASHES, frequencyRange, lineWords, pointLabel, SHORT, WIDTH, WORST_WIDTH } from '../../read/loops/lines.ts'
import { keyed } from '../../ui/chart/Frame.tsx'
import { groupOf, type Surface } from '../../ui/chart/group.ts'
import { DECADES } from '../../ui/chart/logLook.ts'
import { useHands } from '../../ui/chart/reach.ts'
import { formatFigure, formatPlain } from '../../ui/format.ts'
import {
  AT_FIRST,
  nearestFrequency,
  type Plane,
  pathOf,
  planeOf,
  pointAt,
  SIZE,
  type Square,
  squareOf,
  WIDEST,
} from './plane.ts'
import { useLoopsState } from './state.ts'
import { evenTicks } from './tune/frame.ts'
import { useZoom } from './useZoom.ts'

interface Props {
  result: LoopsResult
  analyses: LoopAnalysis[]
  worst: LoopAnalysis | null
}

/** It reads at the cursors of magnitude and phase. */
const GROUP = 'loops'

/** The open loop in the complex plane for positive frequencies, with unit circle, critical point and the worst case's distance from it. */
export function Nyquist(props: Props) {
  const { result, analyses, worst } = props
  const zoom = useZoom<Square>()
  const square = zoom.get() ?? AT_FIRST
  const host = useRef<HTMLDivElement>(null)
  const latest = useRef(props)
  latest.current = props
  const cursor = useLoopsState((state) => state.cursor) ?? worst?.crossover ?? null
  const mark = groupOf(GROUP).use((state) => state.mark)
  const [surface, setSurface] = useState<Surface | null>(null)
  useHands(surface)
  useEffect(() => {
    if (host.current) setSurface(surfaceOf(host.current, zoom, () => latest.current))
  }, [zoom])
  const range = frequencyRange(analyses)
  const press = (event: KeyboardEvent) => {
    const next = keyed(event, cursor ?? range[0], range, { lens: DECADES, xRange: range }, 1 / 200)
    if (next === null) return
    event.preventDefault()
    useLoopsState.setState({ cursor: next })
  }
  const summary = useId()
  const margin = worst?.margins?.modulusMargin ?? null
  const told = analyses.map((each) => `${pointLabel(result, each.workingPoint)}: ${distance(each)}`).join(' ')
  return (
    <figure className="nyquist">
      <figcaption className="chart-title">Nyquist view</figcaption>
      <div
        ref={host}
        role="slider"
        tabIndex={0}
        aria-label="Nyquist view: frequency cursor"
        aria-describedby={summary}
        aria-valuemin={range[0]}
        aria-valuemax={range[1]}
        aria-valuenow={Math.min(range[1], Math.max(range[0], cursor ?? range[0]))}
        aria-valuetext={cursor === null ? 'no cursor' : `${FREQUENCY.figure(cursor)}: ${readOut(analyses, cursor)}`}
        aria-keyshortcuts="+ - 0 m x c"
        className="chart-plot"
        onKeyDown={press}
      >
        <Drawing {...{ analyses, worst, square, margin }} cursors={[cursor, mark]} />
      </div>
      <p id={summary} className="sr-only">
        {told}
      </p>
      <p className="loops-small">
        {lineWords(analyses)}; heavy: worst case.
        {margin !== null &&
          ` Thin circle: peak sensitivity ${formatFigure(1 / margin)} of the worst case, whose curve stays out of the radius 1/${formatFigure(1 / margin)} = ${formatFigure(margin)} about −1.`}
      </p>
    </figure>
  )
}

interface DrawingProps extends Pick<Props, 'analyses' | 'worst'> {
  square: Square
  margin: number | null
  /** Frequencies of the two cursors [rad/s]. */
  cursors: (number | null)[]
}

function Drawing({ analyses, worst, square, margin, cursors }: DrawingProps) {
  const clip = useId()
  const plane = planeOf(square)
  const { x, y, one } = plane
  return (
    <svg viewBox={`-2 -2 ${SIZE + 4} ${SIZE + 4}`} aria-hidden="true">
      <clipPath id={clip}>
        <rect width={SIZE} height={SIZE} />
      </clipPath>
      <rect className="frame" width={SIZE} height={SIZE} />
      <g clipPath={`url(#${clip})`}>
        <path className="axis" d={`M0,${y(0)}H${SIZE}M${x(0)},0V${SIZE}`} />
        <circle className="unit-circle" cx={x(0)} cy={y(0)} r={one} />
        {margin !== null && <circle className="modulus" cx={x(-1)} cy={y(0)} r={margin * one} />}
        {analyses.map(
          (each) =>
            each.curves && (
              <path
                key={each.workingPoint}
                className="curve"
                d={pathOf(each.curves, plane)}
                strokeWidth={each === worst ? WORST_WIDTH : WIDTH}
                strokeDasharray={DASHES[each.workingPoint].join(' ')}
              />
            ),
        )}
        {cursors.map((at, n) =>
          analyses.map(
            ({ workingPoint, curves }) =>
              at !== null && curves && <Dot key={workingPoint} curves={curves} at={at} plane={plane} second={n > 0} />,
          ),
        )}
        <path className="critical" d={`M${x(-1) - 6},${y(0)}h12M${x(-1)},${y(0) - 6}v12`} />
        <text x={x(-1) + 8} y={y(0) - 8}>
          −1
        </text>
        {x(0.72) < SIZE - 44 && (
          <text x={x(0.72)} y={y(0.78)}>
            |L| = 1
          </text>
        )}
      </g>
      <Ticks square={square} plane={plane} />
    </svg>
  )
}

/** Figures of both axes along the frame. */
function Ticks({ square, plane: { x, y } }: { square: Square; plane: Plane }) {
  const inner = (place: number) => place > 24 && place < SIZE - 24
  return (
    <>
      {evenTicks(...square.x)
        .filter((value) => inner(x(value)))
        .map((value) => (
          <text key={value} x={x(value)} y={SIZE - 6} textAnchor="middle">
            {formatPlain(value, 4)}
          </text>
        ))}
      {evenTicks(...square.y)
        .filter((value) => inner(y(value)))
        .map((value) => (
          <text key={value} x={5} y={y(value) + 4}>
            {formatPlain(value, 4)}
          </text>
        ))}
      <text x={SIZE - 6} y={SIZE - 6} textAnchor="end">
        Re L
      </text>
      <text x={5} y={14}>
        Im L
      </text>
    </>
  )
}

/** The curve at a cursor of magnitude and phase. */
function Dot({ curves, at, plane, second }: { curves: Curves; at: number; plane: Plane; second: boolean }) {
  const point = pointAt(curves, at)
  if (!point) return null
  const [x, y] = [plane.x(point.re), plane.y(point.im)]
  return second ? (
    <path className="mark-dot" d={`M${x - 4},${y - 4}l8,8m0,-8l-8,8`} />
  ) : (
    <circle className="cursor-dot" cx={x} cy={y} r="3.5" />
  )
}

function distance({ stable, margins, crossover }: LoopAnalysis): string {
  if (!stable) return 'not stable.'
  if (crossover === null) return 'stays inside the unit circle.'
  return `comes within ${formatFigure(margins?.modulusMargin)} of the critical point −1.`
}

/** How far each curve is from −1 at a frequency. */
function farAt(curves: Curves, at: number): number | null {
  const point = pointAt(curves, at)
  return point && Math.hypot(1 + point.re, point.im)
}

const readOut = (analyses: LoopAnalysis[], at: number) =>
  analyses
    .flatMap(({ workingPoint, curves }) => {
      const far = curves && farAt(curves, at)
      return far == null ? [] : [`${SHORT[workingPoint]} ${formatFigure(far)} from −1`]
    })
    .join(', ')

function surfaceOf(element: HTMLElement, zoom: ReturnType<typeof useZoom<Square>>, latest: () => Props): Surface {
  const shown = () => zoom.get() ?? AT_FIRST
  const curves = () => latest().analyses.flatMap((each) => each.curves ?? [])
  /** The frame within the drawing, which has a little room around it. */
  const area = () => {
    const { left, top, width } = element.getBoundingClientRect()
    const rim = (2 / (SIZE + 4)) * width
    return { left: left + rim, top: top + rim, width: width - 2 * rim, height: width - 2 * rim }
  }
  return {
    element,
    group: groupOf(GROUP),
    area,
    bounds: () => WIDEST,
    shown,
    show: (view) => zoom.set(view && squareOf({ ...shown(), ...view })),
    even: true,
    pick(clientX, clientY) {
      const { left, top, width } = area()
      const place = { x: ((clientX - left) / width) * SIZE, y: ((clientY - top) / width) * SIZE }
      return nearestFrequency(curves(), planeOf(shown()), place) ?? frequencyRange(latest().analyses)[0]
    },
    placeOf: () => Number.NaN,
    cursor: () => useLoopsState.getState().cursor ?? latest().worst?.crossover ?? null,
    setCursor: (cursor) => useLoopsState.setState({ cursor }),
    axis: FREQUENCY,
    read: () => ({
      title: 'Distance from −1',
      unit: '',
      lines: latest().analyses.flatMap(({ workingPoint, curves: own }) =>
        own ? [{ label: SHORT[workingPoint], at: (at: number) => farAt(own, at) }] : [],
      ),
    }),
  }
}
