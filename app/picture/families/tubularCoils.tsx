/** Tubular motor, coils moving: a forcer of ring coils slides on a fixed rod filled with magnets. */
import {
  CoilRow,
  couplingSlots,
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

/** Lengths [units]: cap, forcer, room before the end wall. */
const END = 5
const FORCER = 36
const FRONT = 4
const COILS = 6
/** Radii [units], and level of the bar that pushes the jaw. */
const ROD = 5
const COIL = { inner: 6.2, outer: 12 } as const
const SHELL = 14
const BAR = { y: -11.2, r: 2 } as const
const COILS_PER_POLE = 1.5

function levels(plan: Plan) {
  const { u, driveLeft } = plan
  return { forcer: driveLeft + END * u, pole: (COILS_PER_POLE * (FORCER - 6) * u) / COILS }
}

function Fixed({ plan }: DrawingProps) {
  const { u, driveLeft, driveRight } = plan
  const { pole } = levels(plan)
  const from = driveLeft + 3.6 * u
  const to = driveRight + 3 * u
  return (
    <g>
      <LinearCase plan={plan} />
      <WallBush plan={plan} y={BAR.y * u} r={BAR.r * u} />
      <Named name="fixed rod with magnets">
        <MagnetRow
          x={from}
          y={-(ROD - 0.8) * u}
          width={driveRight - from}
          height={2 * (ROD - 0.8) * u}
          count={Math.max(4, Math.round((driveRight - from) / pole))}
        />
        <rect {...box(from, -ROD * u, driveRight, ROD * u)} className="pic-edge pic-line" />
        <rect {...box(driveLeft + 0.8 * u, -ROD * 0.7 * u, from, ROD * 0.7 * u)} className="pic-edge pic-tone-steel" />
        <rect {...box(driveRight, -ROD * 0.7 * u, to, ROD * 0.7 * u)} className="pic-edge pic-tone-steel" />
      </Named>
      <CentreLine x1={driveLeft} y1={0} x2={driveRight} y2={0} />
    </g>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const paint = usePaint()
  const { u } = plan
  const { forcer, pole } = levels(plan)
  const travel = innerTravel(plan, motion)
  const cap = 3 * u
  const height = (COIL.outer - COIL.inner) * u
  const row = {
    x: forcer + cap,
    width: (FORCER - 6) * u,
    height,
    count: COILS,
    gap: 0.14,
    current: motion.current,
    travel,
    pole,
  }
  const end = forcer + FORCER * u
  return (
    <g>
      <PushBar plan={plan} motion={motion} x={end - 4 * u} y={BAR.y * u} r={BAR.r * u} />
      <Cable plan={plan} x={forcer + 6 * u + travel} />
      <Named name="forcer with ring coils" transform={`translate(${travel.toFixed(2)} 0)`}>
        <Pair x1={forcer} x2={end} inner={COIL.inner * u} outer={SHELL * u} fill={paint.moving} className="pic-wide" />
        <CoilRow {...row} y={-COIL.outer * u} />
        <CoilRow {...row} y={COIL.inner * u} otherCut />
        <Pair x1={forcer} x2={forcer + 2 * u} inner={ROD * u + 0.5} outer={COIL.inner * u + u} fill={paint.rubber} />
        <Pair x1={end - 2 * u} x2={end} inner={ROD * u + 0.5} outer={COIL.inner * u + u} fill={paint.rubber} />
      </Named>
      <JawCoupling {...props} />
    </g>
  )
}

/** The cable that follows the coils, in a loop above them. */
function Cable({ plan, x }: { plan: Plan; x: number }) {
  const { u, driveLeft } = plan
  const fixed = driveLeft + 5 * u
  const top = -18.6 * u
  const y = -SHELL * u
  const turn = Math.max(fixed, x) + 7 * u
  return (
    <g>
      <title>moving cable</title>
      <path
        d={`M${fixed} ${top}H${turn}A${2 * u} ${2 * u} 0 0 1 ${turn} ${y - 0.6 * u}H${x}V${y}`}
        className="pic-cable"
      />
    </g>
  )
}

export const tubularCoils: FamilyDrawing = {
  length: (scenario) => END + FORCER + strokeOf(scenario) + FRONT,
  slots: ({ plan }) => couplingSlots(plan),
  Fixed,
  Moving,
  labels: ({ plan }) => {
    const { u, driveRight } = plan
    const { forcer } = levels(plan)
    return [
      { text: 'moving cable', x: forcer + 3 * u, y: -18.6 * u },
      { text: 'forcer with coils', x: forcer + (FORCER / 2) * u, y: -9 * u, rides: 'driven' },
      { text: 'fixed magnet rod', x: driveRight - 4 * u, y: -3 * u },
    ]
  },
}
