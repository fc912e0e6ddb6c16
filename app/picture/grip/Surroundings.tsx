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

interface ArmArrowProps {
  plan: Plan
  frame: GripFrame
  /** Greatest acceleration of the scenario's moves [m/s²]. */
  greatest: number
}

/** Acceleration of the arm, left of the flange: an arrow in the plane; across it a dot or a cross in a circle. */
export function ArmArrow({ plan, frame, greatest }: ArmArrowProps) {
  const { along, up, across } = frame.arm
  if (along === 0 && up === 0 && across === 0) return null
  const longest = 21 * plan.u
  const size = (Math.hypot(along, up) * longest) / greatest
  const angle = (Math.atan2(-up, along) * 180) / Math.PI
  const head = Math.min(9, size * 0.6)
  const ring = 0.5 * Math.max(5, (longest * Math.abs(across)) / greatest)
  return (
    <g transform={`translate(${(plan.driveRight - 20 * plan.u).toFixed(1)} ${(-35 * plan.u).toFixed(1)})`}>
      <title>acceleration of the arm</title>
      {size > 1 && (
        <g transform={`rotate(${angle.toFixed(1)}) translate(${(-size / 2).toFixed(1)} 0)`}>
          <path d={`M0 0H${(size - head * 0.8).toFixed(1)}`} className="pic-arm" />
          <path d={`M${size.toFixed(1)} 0l${-head} ${-head / 2}v${head}Z`} className="pic-arrow-head" />
        </g>
      )}
      {across !== 0 && (
        <g className="pic-edge">
          <circle r={ring} className="pic-tone-empty" />
          {across < 0 ? (
            <circle r={ring * 0.3} className="pic-arrow-head" />
          ) : (
            <path
              d={`M${-ring * 0.7} ${-ring * 0.7}L${ring * 0.7} ${ring * 0.7}M${ring * 0.7} ${-ring * 0.7}L${-ring * 0.7} ${ring * 0.7}`}
            />
          )}
        </g>
      )}
      <text
        x={Math.abs(angle) > 45 || size <= 1 ? Math.max(9, ring + 5) : 0}
        y={Math.abs(angle) > 45 || size <= 1 ? 4 : -8}
        className="pic-text pic-symbol"
      >
        a
      </text>
    </g>
  )
}
