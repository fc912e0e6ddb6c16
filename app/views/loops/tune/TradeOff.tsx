import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react'
import type { JobId, TuneCandidate } from '../../../../sim/index.ts'
import type { UnitSystem } from '../../../read/units.ts'
import { useView } from '../../../store/view.ts'
import { ChartReadout, ChartTools } from '../../../ui/ChartTools.tsx'
import { groupOf, type Surface } from '../../../ui/chart/group.ts'
import { useHands } from '../../../ui/chart/reach.ts'
import { UnitText } from '../../../ui/Symbols.tsx'
import { useWidth } from '../../../ui/useWidth.ts'
import { useZoom } from '../useZoom.ts'
import { frameOf, HEIGHT, type Part, ROOM, wholeOf } from './frame.ts'
import { isPlaced, type Placed, told, tuneFigure } from './points.ts'

interface Props {
  candidates: TuneCandidate[]
  job: JobId
  /** Those that can be picked, by time. */
  choices: Placed[]
  best: TuneCandidate | null
  present: TuneCandidate | null
  picked: Placed
  onPick(candidate: TuneCandidate): void
}

/** Highest effort over time: the trade-off as a line, what it beats paler, the gains on the bench as a square. */
export function TradeOff({ job, candidates, choices, best, present, picked, onPick }: Props) {
  const units = useView((state) => state.units)
  const [host, width] = useWidth<HTMLDivElement>()
  const id = useId()
  const zoom = useZoom<Part>()
  const bench = isPlaced(present) ? present : null
  const drawn = useMemo(() => candidates.filter(({ sound }) => sound).filter(isPlaced), [candidates])
  const whole = useMemo(() => wholeOf(bench ? [...drawn, bench] : drawn), [drawn, bench])
  const [quick, gentle] = [tuneFigure(job, 'time', units), tuneFigure(job, 'peak', units)]
  const frame = frameOf(zoom.get() ?? whole, width, quick.unit, gentle.unit)
  const at = choices.indexOf(picked)
  const mark = groupOf(GROUP).use((state) => state.mark)
  const latest = useRef<Latest>(null as never)
  latest.current = { choices, at, whole, width, job, units, onPick }
  const [surface, setSurface] = useState<Surface | null>(null)
  useHands(surface)
  useEffect(() => {
    if (host.current) setSurface(surfaceOf(host.current, zoom, () => latest.current))
  }, [host, zoom])
  useEffect(() => groupOf(GROUP).use.setState({ cursor: at }), [at])
  const press = (event: KeyboardEvent) => {
    const next = placeOf(event.key, at, choices.length)
    if (next === undefined) return
    event.preventDefault()
    onPick(choices[Math.min(choices.length - 1, Math.max(0, next))]!)
  }
  const words = [
    `${choices.length} to choose from, the quickest with ${told(choices[0]!, job, units)}, the gentlest with ${told(choices.at(-1)!, job, units)}.`,
    bench ? `The gains on the bench: ${told(bench, job, units)}.` : '',
  ].join(' ')
  return (
    <figure className="trade-off">
      <ChartTools syncKey={GROUP} name="Trade-off" />
      <figcaption className="chart-title">
        {gentle.label} <UnitText symbol={gentle.unit.symbol} /> over {quick.label.toLowerCase()}{' '}
        <UnitText symbol={quick.unit.symbol} />
      </figcaption>
      <div
        ref={host}
        className="chart-plot"
        role="slider"
        tabIndex={0}
        aria-label={`Trade-off of ${quick.label.toLowerCase()} and ${gentle.label.toLowerCase()}`}
        aria-describedby={id}
        aria-valuemin={1}
        aria-valuemax={choices.length}
        aria-valuenow={at + 1}
        aria-valuetext={`${at + 1} of ${choices.length}${picked === best ? ', the best' : ''}: ${told(picked, job, units)}`}
        aria-keyshortcuts="+ - 0 m x c"
        onKeyDown={press}
      >
        <Drawing frame={frame} {...{ width, drawn, choices, bench, picked }} marked={choices[mark ?? -1]} />
      </div>
      <ChartReadout syncKey={GROUP} name="Trade-off" />
      <p className="loops-small">
        On the line: no other is better in both. Grey: beaten. Pick by pointer or arrow keys; drag over a part to look
        closer, press twice to come back.
      </p>
      <p id={id} className="sr-only">
        {words}
      </p>
    </figure>
  )
}

/** Where a key leads from place `at`; undefined: nowhere. */
const placeOf = (key: string, at: number, count: number): number | undefined =>
  ({ ArrowLeft: at - 1, ArrowDown: at - 1, ArrowRight: at + 1, ArrowUp: at + 1, Home: 0, End: count })[key]

const GROUP = 'loops-tune'

interface Latest extends Pick<Props, 'choices' | 'onPick'> {
  /** Place of the picked one among the choices. */
  at: number
  whole: Part
  width: number
  job: JobId
  units: UnitSystem
}

/** The cursors are places among the choices. */
function surfaceOf(element: HTMLElement, zoom: ReturnType<typeof useZoom<Part>>, latest: () => Latest): Surface {
  const shown = () => zoom.get() ?? latest().whole
  const frame = () =>
    frameOf(
      shown(),
      latest().width,
      tuneFigure(latest().job, 'time', 'si').unit,
      tuneFigure(latest().job, 'peak', 'si').unit,
    )
  const choiceAt = (place: number) => latest().choices[Math.round(place)]
  return {
    element,
    group: groupOf(GROUP),
    area() {
      const { left, top } = element.getBoundingClientRect()
      return {
        left: left + ROOM.left,
        top: top + ROOM.top,
        width: latest().width - ROOM.left - ROOM.right,
        height: HEIGHT - ROOM.top - ROOM.bottom,
      }
    },
    bounds: () => latest().whole,
    shown,
    show: (view) => zoom.set(view && { ...shown(), ...view }),
    even: true,
    pick(clientX, clientY) {
      const { left, top } = element.getBoundingClientRect()
      const { x, y } = frame()
      const { choices } = latest()
      const far = (each: Placed) => Math.hypot(x(each.time) - clientX + left, y(each.peak) - clientY + top)
      return choices.indexOf(choices.reduce((near, each) => (far(each) < far(near) ? each : near)))
    },
    placeOf: (cursor) => element.getBoundingClientRect().left + frame().x(choiceAt(cursor)?.time ?? Number.NaN),
    cursor: () => latest().at,
    setCursor(cursor) {
      const choice = choiceAt(cursor)
      if (choice) latest().onPick(choice)
    },
    axis: {
      title: 'Choice',
      figure: (place) => `${Math.round(place) + 1} of ${latest().choices.length}`,
      difference: (from, to) => String(Math.round(to - from)).replace('-', '\u2212'),
    },
    read() {
      const line = (key: 'time' | 'peak') => {
        const { label, unit } = tuneFigure(latest().job, key, latest().units)
        const { symbol, toShown } = unit
        const at = (place: number) => {
          const value = choiceAt(place)?.[key]
          return value === undefined ? null : toShown(value)
        }
        return { label: `${label.toLowerCase()}, ${symbol}`, at }
      }
      return { title: 'Trade-off', unit: '', lines: [line('time'), line('peak')] }
    },
  }
}

interface DrawingProps extends Pick<Props, 'choices' | 'picked'> {
  frame: ReturnType<typeof frameOf>
  width: number
  drawn: Placed[]
  bench: Placed | null
  /** At the second cursor. */
  marked: Placed | undefined
}

function Drawing({
  frame: { x, y, timeTicks, effortTicks },
  width,
  drawn,
  choices,
  bench,
  picked,
  marked,
}: DrawingProps) {
  const clip = useId()
  const across = Math.max(0, width - ROOM.left - ROOM.right)
  return (
    <svg width={width} height={HEIGHT} aria-hidden="true">
      <clipPath id={clip}>
        <rect x={ROOM.left - 8} y={ROOM.top - 8} width={across + 16} height={HEIGHT - ROOM.top - ROOM.bottom + 16} />
      </clipPath>
      {effortTicks.map(({ place, text }) => (
        <g key={text}>
          <path className="grid" d={`M${ROOM.left},${place}H${width - ROOM.right}`} />
          <text x={ROOM.left - 6} y={place + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {timeTicks.map(({ place, text }) => (
        <g key={text}>
          <path className="grid" d={`M${place},${ROOM.top}V${HEIGHT - ROOM.bottom}`} />
          <text x={place} y={HEIGHT - 6} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <g clipPath={`url(#${clip})`}>
        {drawn.map((each, index) => (
          <circle key={index} className="beaten" cx={x(each.time)} cy={y(each.peak)} r="2.5" />
        ))}
        <polyline className="front" points={choices.map((c) => `${x(c.time)},${y(c.peak)}`).join(' ')} />
        {choices.map((each, index) => (
          <circle key={index} className="choice-dot" cx={x(each.time)} cy={y(each.peak)} r="4" />
        ))}
        {bench && <Bench x={x(bench.time)} y={y(bench.peak)} width={width} />}
        <circle className="picked" cx={x(picked.time)} cy={y(picked.peak)} r="8" />
        {marked && <circle className="picked marked" cx={x(marked.time)} cy={y(marked.peak)} r="8" />}
      </g>
    </svg>
  )
}

function Bench({ x, y, width }: { x: number; y: number; width: number }) {
  const left = x > width - ROOM.right - 70
  return (
    <>
      <rect className="present" x={x - 4} y={y - 4} width="8" height="8" />
      <text x={left ? x - 9 : x + 9} y={y + 4} textAnchor={left ? 'end' : 'start'}>
        on the bench
      </text>
    </>
  )
}
