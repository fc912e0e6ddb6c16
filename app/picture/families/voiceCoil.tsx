/** Voice coil: a coil on a bobbin moves in the gap between a ring of magnets and the core of an iron pot. */
import {
  CASE,
  couplingSlots,
  innerStroke,
  innerTravel,
  JawCoupling,
  PushBar,
  strokeOf,
  WallBush,
} from '../elements/linear.tsx'
import { Coil } from '../elements/magnetic.tsx'
import { box, CentreLine, Named, Pair } from '../elements/marks.tsx'
import type { Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import type { DrawingProps, FamilyDrawing, Motion } from './drawing.ts'

/** Lengths [units]: back of the pot, coil, disc of the bobbin, room behind and before it. */
const BACK = 6
const COIL = 19
const ROOM = 3
const DISC = 3
const MOUTH = 3
/** Radii [units]. */
const CORE = 6.4
const BOBBIN = 7.2
const WIRE = { inner: 8, outer: 12.4 } as const
const MAGNET = { inner: 13.2, outer: 18.8 } as const
const ROD = 2.6

/** Inner face of the pot's back, its mouth, left end of the coil and left face of the bobbin's disc without travel. */
function levels(plan: Plan) {
  const { u, driveLeft } = plan
  const inside = driveLeft + BACK * u
  const coil = inside + ROOM * u
  const mouth = coil + COIL * u + innerStroke(plan)
  return { inside, coil, mouth, disc: mouth + u }
}

function Fixed({ plan }: DrawingProps) {
  const paint = usePaint()
  const { u, driveLeft, driveRight } = plan
  const { inside, mouth } = levels(plan)
  const outer = CASE.outer * u
  const half = ((MAGNET.inner + MAGNET.outer) / 2) * u
  return (
    <g>
      <Named name="iron pot">
        <rect {...box(driveLeft, -outer, driveRight, outer)} className="pic-tone-empty" />
        <path
          d={
            `M${driveRight} ${-outer}H${driveLeft}V${outer}H${driveRight}V${MAGNET.outer * u}H${inside}V${CORE * u}H${mouth}` +
            `V${-CORE * u}H${inside}V${-MAGNET.outer * u}H${driveRight}Z`
          }
          fill={paint.iron}
          className="pic-wide"
        />
      </Named>
      <Named name="ring of magnets, poles inwards and outwards">
        {[-1, 1].map((side) => (
          <g key={side}>
            <rect
              {...box(inside + 1.5 * u, side * MAGNET.inner * u, mouth, side * half)}
              className="pic-edge pic-north"
            />
            <rect
              {...box(inside + 1.5 * u, side * half, mouth, side * MAGNET.outer * u)}
              className="pic-edge pic-south"
            />
            <PoleLetters
              x1={inside}
              x2={mouth}
              inner={side * ((MAGNET.inner * u + half) / 2)}
              outer={side * ((half + MAGNET.outer * u) / 2)}
              room={half - MAGNET.inner * u}
            />
          </g>
        ))}
      </Named>
      <WallBush plan={plan} r={ROD * u} />
      <CentreLine x1={driveLeft} y1={0} x2={driveRight} y2={0} />
    </g>
  )
}

/** Letters only where the magnet is thick enough for them. */
function PoleLetters({
  x1,
  x2,
  inner,
  outer,
  room,
}: {
  x1: number
  x2: number
  inner: number
  outer: number
  room: number
}) {
  if (room < 10) return null
  const x = x1 + 0.3 * (x2 - x1)
  return (
    <>
      <text x={x} y={inner} className="pic-pole pic-on-north">
        N
      </text>
      <text x={x} y={outer} className="pic-pole pic-on-south">
        S
      </text>
    </>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const { u } = plan
  const { coil, disc } = levels(plan)
  const paint = usePaint()
  const level = Math.abs(motion.current)
  const height = (WIRE.outer - WIRE.inner) * u
  return (
    <g>
      <g transform={`translate(${innerTravel(plan, motion).toFixed(2)} 0)`}>
        <Named name="bobbin">
          <Pair x1={coil} x2={disc} inner={BOBBIN * u} outer={WIRE.inner * u} fill={paint.moving} />
          <rect
            {...box(disc, -WIRE.outer * u, disc + DISC * u, WIRE.outer * u)}
            fill={paint.moving}
            className="pic-edge"
          />
        </Named>
        <Named name="coil">
          <Coil
            x={coil}
            y={-WIRE.outer * u}
            width={COIL * u}
            height={height}
            toward={motion.current >= 0}
            level={level}
          />
          <Coil
            x={coil}
            y={WIRE.inner * u}
            width={COIL * u}
            height={height}
            toward={motion.current < 0}
            level={level}
          />
        </Named>
      </g>
      <PushBar plan={plan} motion={motion} x={disc + DISC * u} r={ROD * u} />
      <JawCoupling {...props} />
    </g>
  )
}

export const voiceCoil: FamilyDrawing = {
  length: (scenario) => BACK + ROOM + COIL + 2 * strokeOf(scenario) + DISC + MOUTH,
  slots: ({ plan }) => couplingSlots(plan),
  Fixed,
  Moving,
  labels: ({ plan }) => {
    const { u, driveLeft } = plan
    const { inside, coil } = levels(plan)
    return [
      { text: 'iron pot', x: driveLeft + 3 * u, y: -12 * u },
      { text: 'magnets', x: inside + 8 * u, y: -17 * u },
      { text: 'moving coil', x: coil + 0.7 * COIL * u, y: -10 * u, rides: 'driven' },
      { text: 'core', x: inside + 4 * u, y: -3 * u },
    ]
  },
}
