import { type KeyboardEvent, type PointerEvent, useId } from 'react'
import type { TuneCandidate } from '../../../../sim/index.ts'
import { quantityUnit } from '../../../read/units.ts'
import { useView } from '../../../store/view.ts'
import { UnitText } from '../../../ui/Symbols.tsx'
import { useWidth } from '../../../ui/useWidth.ts'
import { frameOf, HEIGHT, ROOM } from './frame.ts'
import { isPlaced, type Placed, told } from './points.ts'

interface Props {
  candidates: TuneCandidate[]
  /** Those that can be picked, by grip time. */
  choices: Placed[]
  best: TuneCandidate | null
  present: TuneCandidate | null
  picked: Placed
  onPick(candidate: TuneCandidate): void
}

/** Peak force over grip time: the trade-off as a line, what it beats paler, the gains on the bench as a square. */
export function TradeOff({ candidates, choices, best, present, picked, onPick }: Props) {
  const units = useView((state) => state.units)
  const [host, width] = useWidth<HTMLDivElement>()
  const id = useId()
  const drawn = candidates.filter(({ sound }) => sound).filter(isPlaced)
  const bench = isPlaced(present) ? present : null
  const force = quantityUnit('force', units)
  const time = quantityUnit('shortTime', units)
  const frame = frameOf(bench ? [...drawn, bench] : drawn, width, time, force)
  const at = choices.indexOf(picked)

  const point = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    if (!(event.buttons & 1)) return
    const { left, top } = event.currentTarget.getBoundingClientRect()
    const far = (each: Placed) =>
      Math.hypot(frame.x(each.gripTime) - event.clientX + left, frame.y(each.peakForce) - event.clientY + top)
    onPick(choices.reduce((near, each) => (far(each) < far(near) ? each : near)))
  }
  const press = (event: KeyboardEvent) => {
    const next = placeOf(event.key, at, choices.length)
    if (next === undefined) return
    event.preventDefault()
    onPick(choices[Math.min(choices.length - 1, Math.max(0, next))]!)
  }
  const words = [
    `${choices.length} to choose from, the quickest with ${told(choices[0]!, units)}, the gentlest with ${told(choices.at(-1)!, units)}.`,
    bench ? `The gains on the bench: ${told(bench, units)}.` : '',
  ].join(' ')
  return (
    <figure className="trade-off">
      <figcaption className="chart-title">
        Peak force <UnitText symbol={force.symbol} /> over grip time <UnitText symbol={time.symbol} />
      </figcaption>
      <div
        ref={host}
        role="slider"
        tabIndex={0}
        aria-label="Trade-off of grip time and peak force"
        aria-describedby={id}
        aria-valuemin={1}
        aria-valuemax={choices.length}
        aria-valuenow={at + 1}
        aria-valuetext={`${at + 1} of ${choices.length}${picked === best ? ', the best' : ''}: ${told(picked, units)}`}
        onPointerDown={point}
        onPointerMove={point}
        onKeyDown={press}
      >
        <Drawing frame={frame} {...{ width, drawn, choices, bench, picked }} />
      </div>
      <p className="loops-small">
        On the line: no other is better in both. Grey: beaten. Pick by pointer or arrow keys.
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

interface DrawingProps extends Pick<Props, 'choices' | 'picked'> {
  frame: ReturnType<typeof frameOf>
  width: number
  drawn: Placed[]
  bench: Placed | null
}

function Drawing({ frame: { x, y, timeTicks, forceTicks }, width, drawn, choices, bench, picked }: DrawingProps) {
  return (
    <svg width={width} height={HEIGHT} aria-hidden="true">
      {forceTicks.map(({ place, text }) => (
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
      {drawn.map((each, index) => (
        <circle key={index} className="beaten" cx={x(each.gripTime)} cy={y(each.peakForce)} r="2.5" />
      ))}
      <polyline className="front" points={choices.map((c) => `${x(c.gripTime)},${y(c.peakForce)}`).join(' ')} />
      {choices.map((each, index) => (
        <circle key={index} className="choice-dot" cx={x(each.gripTime)} cy={y(each.peakForce)} r="4" />
      ))}
      {bench && <Bench x={x(bench.gripTime)} y={y(bench.peakForce)} width={width} />}
      <circle className="picked" cx={x(picked.gripTime)} cy={y(picked.peakForce)} r="8" />
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
