/** What linear motors share: their case, the bar that pushes the jaw, rows of magnets and of coils. */
import { memo, type ReactNode } from 'react'
import type { Scenario } from '../../../sim/index.ts'
import type { DrawingProps, Motion, Slots } from '../families/drawing.ts'
import { baseLength, JAW, type Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import { Coil, Magnet } from './magnetic.tsx'
import { box, Named, Pair } from './marks.tsx'
import { couplingLayout, Racks, slotOf } from './racks.tsx'

/** Outer height from the axis and wall of the case [units]. */
export const CASE = { outer: 22, wall: 2.6 } as const

/** Longest stroke that is drawn inside a drive [units]; a longer one is run through in proportion. */
const LONGEST_STROKE = 45

/** Stroke inside the drive [units], from a scenario before there is a plan. */
export const strokeOf = (scenario: Scenario) =>
  Math.min(LONGEST_STROKE, (100 * scenario.jaws.stroke) / baseLength(scenario))

/** The same of a plan [px]. */
export const innerStroke = ({ stroke, u }: Plan) => Math.min(LONGEST_STROKE * u, stroke)

/** Travel inside the drive [px]. */
export const innerTravel = (plan: Plan, motion: Motion) => (motion.travel * innerStroke(plan)) / plan.stroke

/** Case of a linear motor: two walls and a cap at the left, screwed to the gripper's end wall. */
export function LinearCase({ plan, children }: { plan: Plan; children?: ReactNode }) {
  const paint = usePaint()
  const { u, driveLeft, driveRight } = plan
  const outer = CASE.outer * u
  const wall = CASE.wall * u
  return (
    <g>
      <Named name="motor case">
        <path
          d={
            `M${driveRight} ${-outer}H${driveLeft}V${outer}H${driveRight}V${outer - wall}H${driveLeft + wall}` +
            `V${-outer + wall}H${driveRight}Z`
          }
          fill={paint.housing}
          className="pic-wide"
        />
        <rect {...box(driveLeft + wall, -outer + wall, driveRight, outer - wall)} className="pic-tone-empty" />
      </Named>
      {children}
    </g>
  )
}

/** Bush in the end wall through which the bar runs, at level y with half height r. */
export function WallBush({ plan, y = 0, r }: { plan: Plan; y?: number; r: number }) {
  const paint = usePaint()
  const { u, driveRight, wallLeft } = plan
  return (
    <g transform={`translate(0 ${y})`}>
      <title>guide bush</title>
      <rect {...box(driveRight, -r - 2.6 * u, wallLeft, r + 2.6 * u)} className="pic-tone-empty" />
      <Pair x1={driveRight} x2={wallLeft} inner={r + 0.3 * u} outer={r + 2.6 * u} fill={paint.nut} />
    </g>
  )
}

/** Bar from x inside the drive (at no travel) to the driven jaw's block, at level y with half height r. */
export function PushBar({ plan, motion, x, y = 0, r }: PushBarProps) {
  const start = x + innerTravel(plan, motion)
  const end = -plan.half + (JAW.blockFrom + 5) * plan.u + motion.travel
  return (
    <g>
      <title>push bar</title>
      <rect {...box(start, y - r, end, y + r)} className="pic-edge pic-tone-steel" />
      <path d={`M${end - 3 * plan.u} ${y - r}V${y + r}`} className="pic-thin" />
    </g>
  )
}

interface PushBarProps {
  plan: Plan
  motion: Motion
  x: number
  y?: number
  r: number
}

/** The racks that take the second jaw along; nothing against an anvil. */
export function JawCoupling({ plan, motion }: DrawingProps & { motion: Motion }) {
  if (!plan.mirrored) return null
  const layout = couplingLayout(plan)
  return <Racks plan={plan} layout={layout} motion={motion} angle={motion.travel / layout.teeth.r} />
}

export function couplingSlots(plan: Plan): Slots {
  if (!plan.mirrored) return {}
  const layout = couplingLayout(plan)
  return { driven: slotOf(plan, layout, 1), far: slotOf(plan, layout, -1) }
}

interface MagnetRowProps {
  x: number
  y: number
  width: number
  height: number
  count: number
  firstNorth?: boolean
}

/** Magnets side by side, poles in turn. */
export const MagnetRow = memo(function MagnetRow({ x, y, width, height, count, firstNorth = true }: MagnetRowProps) {
  const each = width / count
  return Array.from({ length: count }, (_, i) => (
    <Magnet
      key={`${x + i * each}`}
      x={x + i * each}
      y={y}
      width={each}
      height={height}
      north={(i % 2 === 0) === firstNorth}
    />
  ))
})

/** Signed share of the current in phase k of three, over poles `pole` px wide. */
export function phase(current: number, travel: number, pole: number, k: number): number {
  return current * Math.cos((Math.PI * travel) / pole + (2 * Math.PI * k) / 3)
}

interface CoilRowProps extends Omit<MagnetRowProps, 'firstNorth'> {
  /** Share of each coil's length that the iron between the coils takes. */
  gap: number
  current: number
  travel: number
  pole: number
  /** Turns the sense of the wires: the other cut of ring coils. */
  otherCut?: boolean
}

/** Coils of three phases side by side; how dark the wires are tells the current in each. */
export function CoilRow({ x, y, width, height, count, gap, current, travel, pole, otherCut = false }: CoilRowProps) {
  const each = width / count
  return Array.from({ length: count }, (_, i) => {
    const amount = phase(current, travel, pole, i)
    return (
      <Coil
        key={`${x + i * each}`}
        x={x + (i + gap / 2) * each}
        y={y}
        width={each * (1 - gap)}
        height={height}
        toward={amount >= 0 !== otherCut}
        level={Math.abs(amount)}
      />
    )
  })
}
