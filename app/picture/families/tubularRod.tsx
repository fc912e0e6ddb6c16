/** Tubular motor, rod moving: a rod filled with magnets runs through a tube of ring coils. */
import {
  CASE,
  CoilRow,
  couplingSlots,
  innerStroke,
  innerTravel,
  JawCoupling,
  LinearCase,
  MagnetRow,
  PushBar,
  strokeOf,
  WallBush,
} from '../elements/linear.tsx'
import { box, CentreLine, Named, Pair } from '../elements/marks.tsx'
import type { Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import type { DrawingProps, FamilyDrawing, Motion } from './drawing.ts'

/** Lengths [units]: cap, coil tube, room before the end wall. */
const END = 4
const TUBE = 48
const FRONT = 3
const COILS = 9
/** Radii [units]. */
const ROD = 6
const COIL = { inner: 7.4, outer: 16 } as const
/** Coils to one pole of the rod. */
const COILS_PER_POLE = 1.5

function levels(plan: Plan) {
  const { u, driveLeft, driveRight } = plan
  const tube = { x1: driveRight - (FRONT + TUBE) * u, x2: driveRight - FRONT * u }
  return { tube, rod: driveLeft + END * u, pole: (COILS_PER_POLE * TUBE * u) / COILS }
}

function Fixed({ plan }: DrawingProps) {
  const paint = usePaint()
  const { u, driveLeft, driveRight } = plan
  const { tube } = levels(plan)
  return (
    <g>
      <LinearCase plan={plan} />
      <Named name="coil tube">
        <Pair x1={tube.x1} x2={tube.x2} inner={COIL.inner * u} outer={(CASE.outer - CASE.wall) * u} fill={paint.iron} />
        <Pair x1={tube.x1 - 4 * u} x2={tube.x1} inner={ROD * u + 0.6} outer={11 * u} fill={paint.nut} />
      </Named>
      <WallBush plan={plan} r={ROD * u} />
      <CentreLine x1={driveLeft} y1={0} x2={driveRight} y2={0} />
    </g>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const { u } = plan
  const { tube, rod, pole } = levels(plan)
  const travel = innerTravel(plan, motion)
  const height = (COIL.outer - COIL.inner) * u
  const row = {
    x: tube.x1,
    width: tube.x2 - tube.x1,
    height,
    count: COILS,
    gap: 0.16,
    current: motion.current,
    travel,
    pole,
  }
  const length = tube.x2 - rod
  const count = Math.max(2, Math.round(length / pole))
  return (
    <g>
      <Named name="ring coils of three phases">
        <CoilRow {...row} y={-COIL.outer * u} />
        <CoilRow {...row} y={COIL.inner * u} otherCut />
      </Named>
      <PushBar plan={plan} motion={motion} x={rod + length} r={ROD * u} />
      <Named name="rod with magnets" transform={`translate(${travel.toFixed(2)} 0)`}>
        <MagnetRow
          x={rod + 1.6 * u}
          y={-(ROD - 0.9) * u}
          width={length - 1.6 * u}
          height={2 * (ROD - 0.9) * u}
          count={count}
        />
        <rect {...box(rod, -ROD * u, rod + length, ROD * u)} className="pic-edge pic-line" />
        <rect {...box(rod, -ROD * u, rod + 1.6 * u, ROD * u)} className="pic-edge pic-tone-steel" />
      </Named>
      <JawCoupling {...props} />
    </g>
  )
}

export const tubularRod: FamilyDrawing = {
  length: (scenario) => END + strokeOf(scenario) + TUBE + FRONT,
  slots: ({ plan }) => couplingSlots(plan),
  Fixed,
  Moving,
  labels: ({ plan }) => {
    const { u } = plan
    const { tube, rod } = levels(plan)
    return [
      { text: 'magnet rod', x: rod + innerStroke(plan) * 0.4 + 5 * u, y: -3 * u, rides: 'driven' },
      { text: 'ring coils', x: (tube.x1 + tube.x2) / 2, y: -12 * u },
      { text: 'iron tube', x: tube.x2 - 6 * u, y: -17.6 * u },
    ]
  },
}
