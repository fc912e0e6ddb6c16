/**
 * The part as it is seen along the grip, through the fixed or far jaw, where it is held off its centre of mass: the section cannot
 * show how it turns between the pads. One scale for part and pads; the angle is true.
 */
import { padRadiusOf, type Scenario } from '../../../sim/index.ts'
import type { GripFrame } from './frameAt.ts'
import type { Plan } from './plan.ts'

/** Of the space within the rim that part and centre of mass may fill. */
const FILLED = 0.86
/** From the right side of the picture, where gravity stands, and from its foot [px]. */
const BESIDE = 26
const FOOT = 5
const LEAST = 24

interface TurnProps {
  plan: Plan
  frame: GripFrame
  scenario: Scenario
}

export function Turn({ plan, frame, scenario: { part, jaws } }: TurnProps) {
  const { up, across } = part.centre
  if ((up === 0 && across === 0) || frame.fallen !== null) return null
  const r = Math.max(LEAST, 0.66 * plan.lens.r)
  // What turns is the disc about its centre of mass; the pads hold it beside that.
  const away = Math.hypot(up, across)
  const px = (FILLED * r) / (away + Math.max(part.width / 2, padRadiusOf(jaws)))
  const [x, y] = [across * px, -up * px]
  const degrees = (frame.turn * 180) / Math.PI
  const size = (part.width / 2) * px
  return (
    <g transform={`translate(${plan.width - r - BESIDE} ${plan.height - r - FOOT})`}>
      <circle r={r} className="pic-lens" />
      <g transform={`rotate(${(-degrees).toFixed(2)})`}>
        <circle cx={x} cy={y} r={size} className="pic-edge pic-tone-bright" />
        <line x1={x} y1={y - size} x2={x} y2={y + size} className="pic-centre" />
        <path d={`M${x - 5} ${y}H${x + 5}M${x} ${y - 5}V${y + 5}`} className="pic-edge pic-line" />
        <circle cx={x} cy={y} r={3.5} className="pic-edge pic-line" />
      </g>
      <circle r={padRadiusOf(jaws) * px} className="pic-hidden" />
      <circle r={r} className="pic-lens-rim" />
      <text x={0} y={r - 8} textAnchor="middle" className="pic-text pic-halo">
        {Math.abs(degrees) < 0.05 ? '0' : degrees.toFixed(1).replace('-', '−')}°
      </text>
    </g>
  )
}
