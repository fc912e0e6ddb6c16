/** A pinion between two racks, or over one: how a rack drive moves the jaws, and how a linear motor takes the second jaw along. */
import { memo } from 'react'
import type { Motion } from '../families/drawing.ts'
import { JAW, type Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import { addendum, dedendum, gearPath, rackPath, type Teeth, teethOf } from './gear.ts'
import { Bolt, CentreLine, Named } from './marks.tsx'

/** Height of a rack behind its teeth [units]. */
const RACK = 3.4

/** The pinion that only couples the jaws of a linear motor [units]. */
const COUPLING_PINION = 5.6

/** `x`: middle of the pinion. */
export interface RackLayout {
  x: number
  teeth: Teeth
}

export const couplingLayout = (plan: Plan): RackLayout => ({
  x: 0,
  teeth: teethOf(COUPLING_PINION * plan.u, 3 * plan.u),
})

/** Slot for a rack that passes a jaw block, above (−1) or below (1) the axis. */
export function slotOf({ u }: Plan, { teeth }: RackLayout, side: 1 | -1) {
  const near = teeth.r - addendum(teeth.pitch) - 0.8 * u
  const far = teeth.r + dedendum(teeth.pitch) + (RACK + 0.8) * u
  return { y: side > 0 ? near : -far, height: far - near }
}

/** Both racks and their pinion; `angle` of the pinion [rad]. */
export function Racks({
  plan,
  layout,
  motion,
  angle,
}: {
  plan: Plan
  layout: RackLayout
  motion: Motion
  angle: number
}) {
  const { x, teeth } = layout
  return (
    <g>
      <Named name="pinion" transform={`translate(${x} 0)`}>
        <g transform={`rotate(${((angle * 180) / Math.PI).toFixed(2)})`}>
          <Pinion teeth={teeth} />
        </g>
        <CentreLine x1={-teeth.r} y1={0} x2={teeth.r} y2={0} over={4} />
        <CentreLine x1={0} y1={-teeth.r} x2={0} y2={teeth.r} over={9} />
      </Named>
      <Named name="rack of the driven jaw" transform={`translate(${motion.travel.toFixed(2)} 0)`}>
        <Rack plan={plan} layout={layout} jaw="driven" />
      </Named>
      {plan.mirrored && (
        <Named name="rack of the second jaw" transform={`translate(${(-motion.travel).toFixed(2)} 0)`}>
          <Rack plan={plan} layout={layout} jaw="far" />
        </Named>
      )}
    </g>
  )
}

export const Pinion = memo(function Pinion({ teeth }: { teeth: Teeth }) {
  const bore = teeth.r * 0.36
  return (
    <>
      <path d={gearPath(teeth)} className="pic-edge pic-tone-steel" />
      <circle r={bore} className="pic-edge pic-tone-bright" />
      <path
        d={`M${-bore * 0.3} ${-bore * 0.9}V${-bore * 1.35}H${bore * 0.3}V${-bore * 0.9}`}
        className="pic-thin pic-tone-empty"
      />
    </>
  )
})

/** The driven jaw's rack runs above the pinion, the other's below; each is screwed into its jaw block. */
const Rack = memo(function Rack({ plan, layout, jaw }: { plan: Plan; layout: RackLayout; jaw: 'driven' | 'far' }) {
  const paint = usePaint()
  const { u, half } = plan
  const { x, teeth } = layout
  const side = jaw === 'driven' ? -1 : 1
  const reach = 2.2 * teeth.pitch + teeth.r * 0.4
  // Rooted in the block, far enough to the other side of the pinion at every travel.
  const root = jaw === 'driven' ? -half + (JAW.blockTo - 9) * u : half - (JAW.blockTo - 9) * u
  const beyond = root < x ? x + reach : jaw === 'driven' ? x - reach - plan.stroke : x - reach
  const [x1, x2] = [Math.min(root, beyond), Math.max(root, beyond)]
  const bolt = root + (root < x ? 1 : -1) * 4.5 * u
  const level = side * teeth.r
  return (
    <g transform={`translate(0 ${level})`}>
      <path
        d={rackPath(teeth, x1 - x, x2 - x, side, RACK * u)}
        transform={`translate(${x} 0)`}
        fill={paint.nut}
        className="pic-edge"
      />
      <Bolt x={bolt} y={side * (dedendum(teeth.pitch) + RACK * u)} size={1.7 * u} length={RACK * u} down={side > 0} />
    </g>
  )
})
