/**
 * A round magnifier at the driven contact. Shapes are drawn a little larger, deflections many times larger than in the rest
 * of the picture, as in a plot of deformed structures; the factor stands beside it.
 */
import { useId } from 'react'
import type { GripFrame } from './frameAt.ts'
import { usePaint } from './paint.ts'
import type { Plan } from './plan.ts'
import { magnification } from './scales.ts'

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
  const view = {
    r,
    zero: -0.1 * r,
    pad: Math.min(driven.pad * scale, 0.7 * r),
    part: Math.min(driven.part * scale, 1.2 * r),
    overlap: Math.max(-2.4 * r, driven.overlap * scale),
    round: plan.shape === 'globe' || plan.shape === 'ball' || plan.shape === 'softBall',
    hollow: plan.shape === 'globe' || plan.shape === 'cup' || plan.shape === 'ring',
  }
  const shape = outlines(view)
  const cracked = frame.crack === 'driven'
  const hurt = cracked || frame.marked.includes('driven') || frame.dent > 0
  const hatch = plan.shape === 'softBall' || plan.shape === 'block' ? paint.soft : paint.part
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
          <g transform={`translate(${view.zero} 0)`}>
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

interface View {
  r: number
  zero: number
  pad: number
  part: number
  overlap: number
  round: boolean
  hollow: boolean
}

const n = (value: number) => value.toFixed(2)

/** Outlines in the lens; x = 0 is the undeformed pad face. */
function outlines({ r, pad, part, overlap, round, hollow }: View) {
  const radius = (round ? 1.5 : 3.2) * r
  const start = -overlap
  const face = start + part
  const flat = Math.sqrt(2 * radius * part)
  const high = 1.15 * r
  const end = Math.max(flat + 0.01, Math.min(high, radius * 0.98))
  const at = (y: number) => start + radius - Math.sqrt(Math.max(0, radius * radius - y * y))
  const touching = pad > 0 || (overlap > 0 && face <= 0.01)
  const outer = Math.min(high, Math.sqrt(2 * radius * (part + pad)))
  const flatY = Math.min(flat, end)
  const back = hollow ? 0.3 * r : 3 * r
  const wall = `L${n(at(end) + back)} ${n(end)}${hollow ? `A${n(radius)} ${n(radius)} 0 0 1 ${n(face + back)} ${n(flatY)}L${n(face + back)} ${n(-flatY)}A${n(radius)} ${n(radius)} 0 0 1 ${n(at(end) + back)} ${n(-end)}` : `L${n(at(end) + back)} ${n(-end)}`}Z`
  const dip = touching
    ? `L0 ${n(-outer)}A${n(radius)} ${n(radius)} 0 0 0 ${n(-pad)} ${n(-Math.min(flat, outer))}L${n(-pad)} ${n(Math.min(flat, outer))}A${n(radius)} ${n(radius)} 0 0 0 0 ${n(outer)}`
    : ''
  return {
    part:
      `M${n(at(end))} ${n(-end)}A${n(radius)} ${n(radius)} 0 0 0 ${n(face)} ${n(-flatY)}L${n(face)} ${n(flatY)}` +
      `A${n(radius)} ${n(radius)} 0 0 0 ${n(at(end))} ${n(end)}${wall}`,
    pad: `M${n(-2 * r)} ${n(-high)}L0 ${n(-high)}${dip}L0 ${n(high)}L${n(-2 * r)} ${n(high)}Z`,
    before:
      `${touching ? `M0 ${n(-outer)}L0 ${n(outer)}` : ''}` +
      `${part > 0 ? `M${n(face)} ${n(-flatY)}A${n(radius)} ${n(radius)} 0 0 0 ${n(face)} ${n(flatY)}` : ''}`,
    hurt: `M${n(face)} ${n(-0.4 * r)}Q${n(face + 0.34 * r)} 0 ${n(face)} ${n(0.4 * r)}Z`,
    crack:
      `M${n(face)} 0l${n(0.12 * r)} ${n(-0.08 * r)}l${n(0.06 * r)} ${n(0.12 * r)}l${n(0.16 * r)} ${n(-0.14 * r)}l${n(0.08 * r)} ${n(0.1 * r)}l${n(0.2 * r)} ${n(-0.16 * r)}` +
      `M${n(face + 0.18 * r)} ${n(0.04 * r)}l${n(0.1 * r)} ${n(0.16 * r)}l${n(0.14 * r)} ${n(0.04 * r)}`,
  }
}
