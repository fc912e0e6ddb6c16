/** Forces on the part at both contacts, to scale, with the edges of the force window as ticks; and the scale bar. */
import { memo } from 'react'
import type { GripFrame } from './frameAt.ts'
import type { Plan } from './plan.ts'
import { type ForceEdges, roundBelow } from './scales.ts'

/** Writes a force [N] with its unit. */
export type FormatForce = (newtons: number) => string

interface ForcesProps {
  plan: Plan
  frame: GripFrame
  /** Pixels for a newton. */
  perNewton: number
  window: ForceEdges
  format: FormatForce
}

export function Forces({ plan, frame, perNewton, window, format }: ForcesProps) {
  const { half, m, contactY, mirrored } = plan
  const driven = -half + (frame.travel - frame.contacts.driven.pad) * m
  const far = mirrored ? half - (frame.travel - frame.contacts.far.pad) * m : half + frame.contacts.far.pad * m
  const shared = { perNewton, window, format, longest: plan.arrow }
  const reach = (force: number) => LETTER * format(force).length - Math.min(force * perNewton, plan.arrow) - 3
  const meet = driven + reach(frame.force) > far - reach(frame.farForce) - LETTER
  return (
    <g>
      <Arrow x={driven} y={contactY} outward={-1} force={frame.force} {...shared} />
      <Arrow x={far} y={contactY} outward={1} force={frame.farForce} below={meet} {...shared} />
    </g>
  )
}

interface ArrowProps extends Omit<ForcesProps, 'plan' | 'frame'> {
  x: number
  y: number
  outward: 1 | -1
  force: number
  longest: number
  /** The figure stands under the arrow, because it would meet that of the other one above. */
  below?: boolean
}

/** Width of a letter of a figure [px]. */
const LETTER = 6.5

function Arrow({ x, y, outward, force, perNewton, window, format, longest, below = false }: ArrowProps) {
  const length = Math.min(force * perNewton, longest)
  const broken = force * perNewton > longest * 1.001
  const head = Math.min(9, length)
  const tail = length * outward
  if (force <= 0) return null
  return (
    <g transform={`translate(${x.toFixed(2)} ${y})`}>
      <WindowTicks perNewton={perNewton} window={window} outward={outward} longest={longest} />
      <line x1={tail} y1={0} x2={outward * head * 0.7} y2={0} className="pic-force-halo" />
      <line x1={tail} y1={0} x2={outward * head * 0.7} y2={0} className="pic-force" />
      <path d={`M0 0L${outward * head} ${-head * 0.48}V${head * 0.48}Z`} className="pic-force-head" />
      {broken && <path d={`M${tail - outward * 14} 7l4 -14M${tail - outward * 9} 7l4 -14`} className="pic-break" />}
      {length > 2 && (
        <text
          x={tail + outward * 3}
          y={below ? 20 : -9}
          textAnchor={outward < 0 ? 'start' : 'end'}
          className="pic-text pic-halo"
        >
          {format(force)}
        </text>
      )}
    </g>
  )
}

/** Edges of the force window along the arrow, each hatched to its bad side: below the one the part drops, above the other it breaks. */
const WindowTicks = memo(function WindowTicks({ perNewton, window, outward, longest }: TicksProps) {
  const place = (force: number | null) => (force === null || force * perNewton > longest ? null : force * perNewton)
  const least = place(window.least)
  const most = place(window.most)
  const end = most ?? least
  if (end === null) return null
  const edge = (at: number, bad: 1 | -1) =>
    `M${outward * at} -9V9${[-9, -4.5, 0, 4.5].map((y) => `M${outward * at} ${y}l${outward * bad * 4.5} 4.5`).join('')}`
  const d = `M0 0H${outward * end}${least === null ? '' : edge(least, -1)}`
  return (
    <>
      <path d={d + (most === null ? '' : edge(most, 1))} className="pic-tick-halo" />
      <path d={d} className="pic-tick" />
      {most !== null && <path d={edge(most, 1)} className="pic-tick-damage" />}
    </>
  )
})

interface TicksProps {
  perNewton: number
  window: ForceEdges
  outward: 1 | -1
  longest: number
}

interface ScaleBarProps {
  x: number
  y: number
  perNewton: number
  longest: number
  format: FormatForce
  /** Rounds a length in newtons down to one that reads well in the shown unit. */
  round?: (newtons: number) => number
}

/** Scale bar of the arrows. */
export const ScaleBar = memo(function ScaleBar({
  x,
  y,
  perNewton,
  longest,
  format,
  round = roundBelow,
}: ScaleBarProps) {
  const force = round((0.8 * longest) / perNewton)
  const length = force * perNewton
  return (
    <g transform={`translate(${x} ${y})`}>
      <path d={`M0 -4V4M0 0H${length}M${length} -4V4`} className="pic-edge pic-line" />
      <text x={length + 6} y={4} className="pic-note">
        {format(force)}
      </text>
    </g>
  )
})
