/** Moving-magnet motor: one magnet with pole discs slides between two ring coils in an iron tube. */
import {
  CASE,
  couplingSlots,
  innerStroke,
  innerTravel,
  JawCoupling,
  LinearCase,
  PushBar,
  strokeOf,
  WallBush,
} from '../elements/linear.tsx'
import { Coil, Magnet } from '../elements/magnetic.tsx'
import { box, CentreLine, Named, Pair } from '../elements/marks.tsx'
import type { Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import type { DrawingProps, FamilyDrawing, Motion } from './drawing.ts'

/** Lengths [units]: cap, magnet with its discs, a coil beyond the stroke, iron ring between the coils. */
const END = 5
const SLUG = 26
const DISC = 3.5
const RING = 4
/** Radii [units]. */
const MAGNET = 8
const COIL = { inner: 9.4, outer: 17 } as const
const ROD = 2.8

function levels(plan: Plan) {
  const { u, driveLeft, driveRight } = plan
  const x1 = driveLeft + END * u
  const x2 = driveRight - END * u
  const middle = (x1 + x2) / 2
  return { x1, x2, middle, slug: middle - (SLUG / 2) * u - innerStroke(plan) / 2 }
}

function Fixed({ plan }: DrawingProps) {
  const paint = usePaint()
  const { u, driveLeft, driveRight } = plan
  const { x1, x2, middle } = levels(plan)
  return (
    <g>
      <LinearCase plan={plan} />
      <Named name="iron tube and pole rings">
        <Pair x1={x1} x2={x2} inner={COIL.outer * u} outer={(CASE.outer - CASE.wall) * u} fill={paint.iron} />
        <Pair
          x1={middle - (RING / 2) * u}
          x2={middle + (RING / 2) * u}
          inner={COIL.inner * u}
          outer={COIL.outer * u}
          fill={paint.iron}
        />
        <Pair x1={x1} x2={x1 + 2.5 * u} inner={COIL.inner * u} outer={COIL.outer * u} fill={paint.iron} />
        <Pair x1={x2 - 2.5 * u} x2={x2} inner={COIL.inner * u} outer={COIL.outer * u} fill={paint.iron} />
      </Named>
      <WallBush plan={plan} r={ROD * u} />
      <CentreLine x1={driveLeft} y1={0} x2={driveRight} y2={0} />
    </g>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const { u, driveLeft } = plan
  const { x1, x2, middle, slug } = levels(plan)
  const paint = usePaint()
  const { current } = motion
  const width = middle - (RING / 2) * u - x1 - 2.5 * u
  const height = (COIL.outer - COIL.inner) * u
  const level = Math.abs(current)
  // The coils are wound against each other, so that one pushes while the other pulls.
  const coils = [
    { x: x1 + 2.5 * u, sense: 1 },
    { x: x2 - 2.5 * u - width, sense: -1 },
  ]
  return (
    <g>
      <Named name="coils, wound against each other">
        {coils.map(({ x, sense }) => (
          <g key={sense}>
            <Coil x={x} y={-COIL.outer * u} width={width} height={height} toward={sense * current >= 0} level={level} />
            <Coil x={x} y={COIL.inner * u} width={width} height={height} toward={sense * current < 0} level={level} />
          </g>
        ))}
      </Named>
      <PushBar plan={plan} motion={motion} x={slug + SLUG * u} r={ROD * u} />
      <g transform={`translate(${innerTravel(plan, motion).toFixed(2)} 0)`}>
        <rect
          {...box(Math.max(slug - 7 * u, driveLeft + 3 * u), -ROD * u, slug, ROD * u)}
          className="pic-edge pic-tone-steel"
        />
        <Named name="moving magnet with pole discs">
          <rect {...box(slug, -MAGNET * u, slug + DISC * u, MAGNET * u)} fill={paint.iron} className="pic-edge" />
          <Magnet
            x={slug + DISC * u}
            y={-MAGNET * u}
            width={(SLUG / 2 - DISC) * u}
            height={2 * MAGNET * u}
            north={false}
          />
          <Magnet
            x={slug + (SLUG / 2) * u}
            y={-MAGNET * u}
            width={(SLUG / 2 - DISC) * u}
            height={2 * MAGNET * u}
            north
          />
          <rect
            {...box(slug + (SLUG - DISC) * u, -MAGNET * u, slug + SLUG * u, MAGNET * u)}
            fill={paint.iron}
            className="pic-edge"
          />
        </Named>
      </g>
      <JawCoupling {...props} />
    </g>
  )
}

export const movingMagnet: FamilyDrawing = {
  length: (scenario) => 2 * END + SLUG + strokeOf(scenario) + 10,
  slots: ({ plan }) => couplingSlots(plan),
  Fixed,
  Moving,
  labels: ({ plan }) => {
    const { u } = plan
    const { x1, x2, slug } = levels(plan)
    return [
      { text: 'coil', x: x1 + 8 * u, y: -13 * u },
      { text: 'moving magnet', x: slug + (SLUG / 2) * u, y: -5 * u, rides: 'driven' },
      { text: 'coil', x: x2 - 8 * u, y: -13 * u },
    ]
  },
}
