/** Gravity, what the arm does, and the support on which the part stands until the lift. */
import { memo } from 'react'
import type { Scenario } from '../../../sim/index.ts'
import type { GripFrame } from './frameAt.ts'
import { restX } from './Part.tsx'
import type { Plan } from './plan.ts'

/** The table under the part: a line with hatching beneath, gone once the part hangs. */
export const Support = memo(function Support({ plan }: { plan: Plan }) {
  const width = Math.max(0.9 * plan.partWidth, 24)
  const x = restX(plan) - width / 2
  const lines = []
  for (let at = 6; at <= width; at += 6) lines.push(`M${x + at} ${plan.floor + 0.8}l-6 6`)
  return (
    <g>
      <title>support until the lift</title>
      <line x1={x} y1={plan.floor + 0.8} x2={x + width} y2={plan.floor + 0.8} className="pic-edge" />
      <path d={lines.join('')} className="pic-thin pic-line" />
    </g>
  )
})

/** Gravity as the gripper feels it. */
export const Gravity = memo(function Gravity({
  x,
  y,
  gravity,
}: {
  x: number
  y: number
  gravity: Scenario['arm']['gravity']
}) {
  if (gravity === 'none') return null
  const along = gravity === 'along'
  return (
    <g transform={`translate(${x} ${y})${along ? ' rotate(-90)' : ''}`}>
      <title>gravity</title>
      <path d="M0 -12V8" className="pic-edge" />
      <path d="M0 14L-3.6 5H3.6Z" className="pic-arrow-head" />
      <text
        transform={along ? 'rotate(90)' : ''}
        x={along ? 0 : 7}
        y={along ? -7 : 4}
        textAnchor={along ? 'middle' : 'start'}
        className="pic-text pic-symbol"
      >
        g
      </text>
    </g>
  )
})

/** Longest arrow of the arm's acceleration [px]. */
const ARM_ARROW = 30

interface ArmArrowProps {
  plan: Plan
  frame: GripFrame
  /** Greatest acceleration of the scenario's moves [m/s²]. */
  greatest: number
}

/** Acceleration of the arm, at the flange: an arrow in the plane, a dot or cross in a circle across it. */
export function ArmArrow({ plan, frame, greatest }: ArmArrowProps) {
  const { along, up, across } = frame.arm
  if (along === 0 && up === 0 && across === 0) return null
  const middle = plan.mirrored ? 0 : (plan.driveRight + plan.right) / 2
  const y = -47 * plan.u + 3
  const x = middle + Math.min(30 * plan.u, 60) + 14
  const scale = ARM_ARROW / greatest
  const size = Math.hypot(along, up) * scale
  const angle = (Math.atan2(-up, along) * 180) / Math.PI
  return (
    <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
      <title>acceleration of the arm</title>
      {size > 0.5 && (
        <g transform={`rotate(${angle.toFixed(1)})`}>
          <path d={`M0 0H${Math.max(0, size - 6).toFixed(1)}`} className="pic-arm" />
          <path d={`M${(size + 2).toFixed(1)} 0l-9 -4.4v8.8Z`} className="pic-arrow-head" />
        </g>
      )}
      {across !== 0 && (
        <g className="pic-edge pic-line">
          <circle r={3 + 5 * Math.min(1, Math.abs(across) / greatest)} className="pic-tone-empty" />
          {across < 0 ? (
            <circle r={1.6} className="pic-arrow-head" />
          ) : (
            <path d="M-3.4 -3.4L3.4 3.4M3.4 -3.4L-3.4 3.4" />
          )}
        </g>
      )}
      <text x={0} y={14} textAnchor="middle" className="pic-text pic-symbol pic-halo">
        a
      </text>
    </g>
  )
}
