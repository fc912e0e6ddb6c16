/** A jaw: carriage on the rail, block that takes the drive, finger and pad. Its own origin is the undeformed pad face. */
import { memo } from 'react'
import { Bolt, box, CentreLine, Named } from '../elements/marks.tsx'
import type { Slot } from '../families/drawing.ts'
import { usePaint } from '../paint.ts'
import { JAW, LEVEL, type Plan } from './plan.ts'

interface JawProps {
  plan: Plan
  /** Height and level of a slot through which the other jaw's rack passes [px]; none for a screw. */
  slot?: Slot | undefined
}

export const Jaw = memo(function Jaw({ plan, slot }: JawProps) {
  const { u } = plan
  const paint = usePaint()
  const from = JAW.blockFrom * u
  const to = JAW.blockTo * u
  return (
    <g>
      <Carriage plan={plan} />
      <Named name="jaw block">
        <rect {...box(from, LEVEL.block * u, to, LEVEL.blockBottom * u)} fill={paint.moving} className="pic-wide" />
        {slot && (
          <rect x={from} y={slot.y} width={to - from} height={slot.height} className="pic-edge pic-tone-empty" />
        )}
      </Named>
      <Named name="finger">
        <Finger plan={plan} />
      </Named>
    </g>
  )
})

/** Carriage of the profile rail in lengthwise section: balls under load and returning, end caps. */
function Carriage({ plan }: { plan: Plan }) {
  const { u } = plan
  const paint = usePaint()
  const top = LEVEL.carriage * u
  const bottom = LEVEL.block * u
  const from = JAW.blockFrom * u
  const to = JAW.blockTo * u
  const cap = 3 * u
  const ball = 1.55 * u
  const count = Math.floor((to - from - 2 * cap) / (2.25 * ball))
  const step = (to - from - 2 * cap) / count
  const rows = [top + ball * 0.75, top + 5.6 * u]
  return (
    <Named name="carriage">
      <rect {...box(from + cap, top + 0.6 * u, to - cap, bottom)} fill={paint.nut} className="pic-edge" />
      <rect {...box(from, top + 0.6 * u, from + cap, bottom - 1.5 * u)} className="pic-edge pic-tone-rubber" />
      <rect {...box(to - cap, top + 0.6 * u, to, bottom - 1.5 * u)} className="pic-edge pic-tone-rubber" />
      <rect
        {...box(from + cap, rows[1]! - ball * 1.25, to - cap, rows[1]! + ball * 1.25)}
        className="pic-thin pic-tone-empty"
      />
      {rows.map((y) =>
        Array.from({ length: count }, (_, i) => {
          const x = from + cap + (i + 0.5) * step
          return <circle key={x} cx={x} cy={y} r={ball} className="pic-thin pic-tone-bright" />
        }),
      )}
    </Named>
  )
}

/** Finger with its screwed foot; the fixed finger of an anvil gripper has the body's hatching. */
export function Finger({ plan, fixed = false }: { plan: Plan; fixed?: boolean }) {
  const { u, fingerEnd } = plan
  const paint = usePaint()
  const top = LEVEL.blockBottom * u
  const foot = top + 6 * u
  const inner = -JAW.pad * u
  const root = inner - JAW.finger * u
  const tip = inner - JAW.tip * u
  const heel = -25.5 * u
  const neck = Math.min(foot + 7 * u, (foot + fingerEnd) / 2)
  return (
    <>
      <path
        d={
          `M${heel} ${top}H${inner + u}V${foot}H${inner}V${fingerEnd}H${tip + 3 * u}L${tip} ${fingerEnd - 3 * u}` +
          `L${root} ${neck}Q${root} ${foot} ${root - 3 * u} ${foot}H${heel}Z`
        }
        fill={fixed ? paint.housing : paint.body}
        className="pic-wide"
      />
      <Bolt x={heel + 3.6 * u} y={foot + 2.4 * u} size={2.4 * u} length={11 * u} down />
      <CentreLine x1={inner + 1.5 * u} y1={plan.contactY} x2={tip - 2 * u} y2={plan.contactY} over={0} />
    </>
  )
}

/** The pad, pressed in by `given` [px]. */
export function Pad({ plan, given }: { plan: Plan; given: number }) {
  const paint = usePaint()
  const { padThickness, padHalf, contactY } = plan
  const width = Math.max(0.2 * padThickness, padThickness - given)
  return (
    <Named name="pad">
      <rect
        x={-padThickness}
        y={contactY - padHalf}
        width={width}
        height={2 * padHalf}
        rx={Math.min(1.5, padHalf / 4)}
        fill={paint.rubber}
        className="pic-edge"
      />
    </Named>
  )
}
