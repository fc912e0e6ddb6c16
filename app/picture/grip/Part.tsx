/** The part: a section drawn by what it is, flattened, dented or broken as the run says. */

import { CentreLine, Named } from '../elements/marks.tsx'
import { usePaint } from '../paint.ts'
import { Damage } from './Damage.tsx'
import type { GripFrame } from './frameAt.ts'
import { PART_FILL } from './partFill.ts'
import type { Plan } from './plan.ts'
import { blockPath, cupPaths, type Pressed, roundPath } from './shape.ts'

/** Standard gravity, for the fall after the jaws have lost the part [m/s²]. */
const GRAVITY = 9.80665

/** Middle of the part along the grip [px], before it shifts. */
export const restX = (plan: Plan) => (plan.mirrored ? 0 : plan.half - plan.partWidth / 2)

export function Part({ plan, frame }: { plan: Plan; frame: GripFrame }) {
  const { m } = plan
  const fall = frame.fallen === null ? 0 : 0.5 * GRAVITY * frame.fallen * frame.fallen
  const x = restX(plan) + frame.partShift * m
  const y = plan.contactY + (frame.sag + fall) * m
  const pressed = {
    driven: frame.contacts.driven.part * m,
    far: frame.contacts.far.part * m,
    pad: plan.padHalf,
  }
  if (y - plan.partHeight > plan.height) return null
  return (
    <g transform={`translate(${x.toFixed(2)} ${y.toFixed(2)})`}>
      <Named name="part">
        <Section plan={plan} pressed={pressed} />
      </Named>
      <Damage plan={plan} frame={frame} pressed={pressed} />
      <CentreLine x1={0} y1={-plan.partHeight / 2} x2={0} y2={plan.partHeight / 2} over={6} />
    </g>
  )
}

function Section({ plan, pressed }: { plan: Plan; pressed: Pressed }) {
  const { shape, partWidth: width, partHeight: height } = plan
  const wall = Math.max(2, plan.partWall)
  const paint = usePaint()
  const fill = paint[PART_FILL[shape]]
  switch (shape) {
    case 'cup':
      return <Cup width={width} height={height} wall={wall} pressed={pressed} fill={fill} />
    case 'globe':
      return (
        <>
          <path d={roundPath(width, pressed)} className="pic-tone-bright" />
          <path
            d={roundPath(width, pressed) + roundPath(width, pressed, wall)}
            fillRule="evenodd"
            fill={fill}
            className="pic-edge"
          />
          <CentreLine x1={-width / 2} y1={0} x2={width / 2} y2={0} over={-wall - 3} />
        </>
      )
    case 'ball':
    case 'softBall':
      return (
        <>
          <path d={roundPath(width, pressed)} fill={fill} className="pic-wide" />
          {shape === 'softBall' && (
            <path d={roundPath(width, pressed, Math.max(1.8, 0.03 * width))} className="pic-thin pic-line" />
          )}
          <CentreLine x1={-width / 2} y1={0} x2={width / 2} y2={0} over={-3} />
        </>
      )
    case 'ring':
      return <Ring width={width} height={height} wall={wall} pressed={pressed} fill={fill} />
    case 'block':
      return <path d={blockPath(width, height, pressed, 0.08 * width)} fill={fill} className="pic-wide" />
  }
}

interface HollowProps {
  width: number
  height: number
  wall: number
  pressed: Pressed
  fill: string
}

/** A vessel in section: behind the cut, its inside with the far rim. */
function Cup({ width, height, wall, pressed, fill }: HollowProps) {
  const paths = cupPaths(width, height, wall, pressed)
  return (
    <>
      <path d={paths.inside} className="pic-tone-bright" />
      <path d={paths.wall} fill={fill} className="pic-wide" />
      <line x1={-width / 2 + wall} y1={-height / 2} x2={width / 2 - wall} y2={-height / 2} className="pic-thin" />
    </>
  )
}

/** A bushing with its axis upright: two cut walls, and between them the bore with its chamfered ends. */
function Ring({ width, height, wall, pressed, fill }: HollowProps) {
  const chamfer = 0.035 * width
  const bore = width / 2 - wall
  const y = height / 2
  const outline = blockPath(width, height, pressed, chamfer, true)
  return (
    <>
      <path d={outline} fill={fill} className="pic-wide" />
      <path
        d={`M${-bore - chamfer} ${-y}L${-bore} ${-y + chamfer}V${y - chamfer}L${-bore - chamfer} ${y}H${bore + chamfer}L${bore} ${y - chamfer}V${-y + chamfer}L${bore + chamfer} ${-y}Z`}
        className="pic-wide pic-tone-bright"
      />
      <path d={`M${-bore} ${-y + chamfer}H${bore}M${-bore} ${y - chamfer}H${bore}`} className="pic-thin pic-line" />
    </>
  )
}
