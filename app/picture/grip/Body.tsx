/** What carries everything: flange to the arm, body with its end walls, guide rail, and the fixed jaw of an anvil gripper. */
import { memo } from 'react'
import { Bolt, box, CentreLine, Named } from '../elements/marks.tsx'
import { usePaint } from '../paint.ts'
import { Finger } from './Jaw.tsx'
import { LEVEL, type Plan } from './plan.ts'

export const Body = memo(function Body({ plan }: { plan: Plan }) {
  const { u, mirrored, driveRight, wallLeft, wallRight, right } = plan
  const paint = usePaint()
  const y = (level: number) => level * u
  const middle = mirrored ? 0 : (driveRight + right) / 2
  const flange = Math.min(30 * u, (right - driveRight) * 0.36)
  const wallEnd = mirrored ? right : wallRight + 25 * u
  return (
    <g>
      <Named name="flange to the arm">
        <path
          d={`M${middle - flange} ${y(LEVEL.plate)}V${y(LEVEL.flange)}H${middle + flange}V${y(LEVEL.plate)}Z`}
          fill={paint.housing}
          className="pic-wide"
        />
        <Bolt x={middle - flange * 0.72} y={y(LEVEL.flange)} size={3.2 * u} length={9 * u} />
        <Bolt x={middle + flange * 0.72} y={y(LEVEL.flange)} size={3.2 * u} length={9 * u} />
      </Named>
      <Named name="body">
        <path
          d={
            `M${driveRight} ${y(LEVEL.plate)}H${wallEnd}V${y(LEVEL.cover)}H${wallRight}V${y(LEVEL.rail)}` +
            `H${wallLeft}V${y(LEVEL.cover)}H${driveRight}Z`
          }
          fill={paint.body}
          className="pic-wide"
        />
        <rect {...box(wallLeft, y(LEVEL.rail), wallRight, y(LEVEL.cover))} className="pic-tone-empty" />
      </Named>
      <Named name="guide rail">
        <rect {...box(wallLeft, y(LEVEL.rail), wallRight, y(LEVEL.carriage))} className="pic-edge pic-tone-steel" />
        <RailBolts plan={plan} />
      </Named>
      {!mirrored && (
        <g transform={`translate(${plan.half} 0) scale(-1 1)`}>
          <Named name="fixed finger">
            <Finger plan={plan} fixed />
          </Named>
        </g>
      )}
      <CentreLine x1={middle} y1={y(LEVEL.flange)} x2={middle} y2={mirrored ? plan.floor : y(LEVEL.rail)} over={7} />
    </g>
  )
})

/** Counterbored screws that hold the rail, as hidden edges. */
function RailBolts({ plan }: { plan: Plan }) {
  const { u, wallLeft, wallRight } = plan
  const length = wallRight - wallLeft
  const count = Math.max(2, Math.round(length / (26 * u)))
  const top = LEVEL.rail * u
  const bottom = LEVEL.carriage * u
  return Array.from({ length: count }, (_, i) => {
    const x = wallLeft + ((i + 0.5) * length) / count
    return (
      <g key={x}>
        <path
          d={`M${x - 2.4 * u} ${bottom}V${bottom - 2.4 * u}H${x + 2.4 * u}V${bottom}M${x - 1.4 * u} ${bottom - 2.4 * u}V${top}M${x + 1.4 * u} ${bottom - 2.4 * u}V${top}`}
          className="pic-hidden"
        />
        <CentreLine x1={x} y1={top} x2={x} y2={bottom} over={2} />
      </g>
    )
  })
}
