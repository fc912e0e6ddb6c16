/**
 * A round magnifier at the driven contact. Shapes are drawn a little larger, deflections many times larger than in the rest
 * of the picture, as in a plot of deformed structures; the factor stands beside it.
 */
import { useId } from 'react'
import { usePaint } from '../paint.ts'
import type { GripFrame } from './frameAt.ts'
import { lensShape } from './lensShape.ts'
import { PART_FILL } from './partFill.ts'
import type { Plan } from './plan.ts'
import { magnification } from './scales.ts'
import type { ShapeKind } from './shape.ts'

/** Where the undeformed pad face stands, of the radius. */
const ZERO = -0.1
const ROUND: ShapeKind[] = ['globe', 'ball', 'softBall']
const HOLLOW: ShapeKind[] = ['globe', 'cup']

interface MagnifierProps {
  plan: Plan
  frame: GripFrame
  /** Largest squeeze of the run [m]. */
  squeeze: number
}

export function Magnifier({ plan, frame, squeeze }: MagnifierProps) {
  const clip = useId()
  const paint = usePaint()
  const { lens, m, origin, contactY, half } = plan
  const { r } = lens
  const factor = magnification((0.5 * r) / (squeeze * m))
  const { driven } = frame.contacts
  const scale = m * factor
  const gone = frame.fallen !== null
  const contactX = origin.x - half + (frame.travel - driven.pad) * m
  const pad = Math.min(driven.pad * scale, 0.7 * r)
  const part = Math.min(driven.part * scale, 1.2 * r)
  const gap = pad > 0 ? 0 : Math.min(2.4 * r, Math.max(0, part - driven.overlap * scale))
  const shape = lensShape({ r, pad, part, gap, round: ROUND.includes(plan.shape), hollow: HOLLOW.includes(plan.shape) })
  const cracked = frame.crack === 'driven'
  const hurt = cracked || frame.marked.includes('driven') || frame.dent > 0
  const hatch = paint[PART_FILL[plan.shape]]
  const eye = 7
  const dx = contactX - lens.x
  const dy = origin.y + contactY - lens.y
  const distance = Math.hypot(dx, dy) || 1
  return (
    <g>
      <circle cx={contactX} cy={origin.y + contactY} r={eye} className="pic-leader" />
      <line
        x1={lens.x + (dx / distance) * r}
        y1={lens.y + (dy / distance) * r}
        x2={contactX - (dx / distance) * eye}
        y2={origin.y + contactY - (dy / distance) * eye}
        className="pic-leader"
      />
      <g transform={`translate(${lens.x} ${lens.y})`}>
        <clipPath id={clip}>
          <circle r={r} />
        </clipPath>
        <circle r={r} className="pic-lens" />
        <g clipPath={`url(#${clip})`}>
          <g transform={`translate(${ZERO * r} 0)`}>
            {!gone && (
              <>
                <path d={shape.part} fill={hatch} fillRule="evenodd" className="pic-wide" />
                {hurt && <path d={shape.hurt} fill={paint.damage} />}
                {cracked && <path d={shape.crack} className="pic-damage" />}
              </>
            )}
            <path d={shape.pad} fill={paint.rubber} className="pic-wide" />
            <path d={gone ? '' : shape.before} className="pic-hidden" />
            <line x1={-r * 1.2} y1={0} x2={r * 1.4} y2={0} className="pic-centre" />
          </g>
        </g>
        <circle r={r} className="pic-lens-rim" />
        <text x={0} y={r - 9} textAnchor="middle" className="pic-text pic-halo">
          ×{factor >= 1000 ? factor.toExponential(0) : factor}
        </text>
      </g>
    </g>
  )
}
