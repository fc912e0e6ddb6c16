/** Brush motor with a screw: magnets in the case, a wound armature with its commutator, brushes on springs. */
import { Magnet } from '../elements/magnetic.tsx'
import { box, Named } from '../elements/marks.tsx'
import { MotorCase, motorSize, Shaft } from '../elements/motorCase.tsx'
import { LANTERN, ScrewSeats, ScrewTrain, screwLabels } from '../elements/screwLine.tsx'
import { Strips } from '../elements/turning.tsx'
import type { Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import type { DrawingProps, FamilyDrawing, Motion } from './drawing.ts'

const LENGTH = 58
const SLOTS = 14
const BARS = 14
/** Radii [units]. */
const ARMATURE = 10.4
const COMMUTATOR = 6
const MAGNET = { inner: 11.4, outer: 19.4 } as const
const BRUSH = { width: 4.6, height: 5.4 } as const

function sizes({ u, driveRight, driveLeft }: Plan) {
  const size = motorSize(driveLeft, driveRight - LANTERN * u, u)
  const core = { x1: size.left + 24 * u, x2: size.right - 13.5 * u }
  return { size, core, commutator: { x1: size.left + 9.5 * u, x2: size.left + 18 * u } }
}

function Fixed(props: DrawingProps) {
  const { u } = props.plan
  const { size, core, commutator } = sizes(props.plan)
  const from = core.x1 - 2 * u
  const width = core.x2 - core.x1 + 4 * u
  const height = (MAGNET.outer - MAGNET.inner) * u
  const x = (commutator.x1 + commutator.x2) / 2
  return (
    <g>
      <MotorCase size={size}>
        <Named name="magnets of the stator">
          <Magnet x={from} y={-MAGNET.outer * u} width={width} height={height} north />
          <Magnet x={from} y={MAGNET.inner * u} width={width} height={height} north={false} />
        </Named>
        <Named name="brushes on springs">
          <Brush x={x} u={u} side={-1} />
          <Brush x={x} u={u} side={1} />
        </Named>
      </MotorCase>
      <ScrewSeats {...props} />
    </g>
  )
}

/** A brush in its guide, pressed on the commutator by a coil spring. */
function Brush({ x, u, side }: { x: number; u: number; side: 1 | -1 }) {
  const paint = usePaint()
  const s = side * u
  const half = (BRUSH.width / 2) * u
  const top = COMMUTATOR + BRUSH.height
  const turns = Array.from(
    { length: 6 },
    (_, i) => `L${x + (i % 2 === 0 ? -0.7 : 0.7) * half} ${s * (top + 0.5 + i)}`,
  ).join('')
  return (
    <>
      <rect
        {...box(x - half - 1.2 * u, s * (COMMUTATOR + 1.6), x - half, s * 19.4)}
        fill={paint.rubber}
        className="pic-thin"
      />
      <rect
        {...box(x + half, s * (COMMUTATOR + 1.6), x + half + 1.2 * u, s * 19.4)}
        fill={paint.rubber}
        className="pic-thin"
      />
      <rect {...box(x - half, s * COMMUTATOR, x + half, s * top)} fill={paint.iron} className="pic-edge" />
      <path d={`M${x} ${s * top}${turns}L${x} ${s * 19.4}`} className="pic-edge pic-line" />
    </>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const { u, driveRight } = plan
  const paint = usePaint()
  const { size, core, commutator } = sizes(plan)
  const r = ARMATURE * u
  const ends = [core.x1 - 5 * u, core.x2]
  return (
    <g>
      <Named name="armature">
        <Shaft size={size} from={size.left + 2 * u} to={driveRight - 12 * u} />
        {ends.map((x) => (
          <g key={x}>
            <rect x={x} y={-0.86 * r} width={5 * u} height={1.72 * r} rx={2.2 * u} className="pic-edge pic-tone-coil" />
            <rect
              x={x}
              y={-0.86 * r}
              width={5 * u}
              height={1.72 * r}
              rx={2.2 * u}
              fill={motion.current >= 0 ? paint.toward : paint.away}
              opacity={0.3 + 0.7 * Math.abs(motion.current)}
            />
          </g>
        ))}
        <rect {...box(core.x1, -r, core.x2, r)} fill={paint.sheets} className="pic-edge" />
        <Strips
          x={core.x1}
          width={core.x2 - core.x1}
          r={r}
          count={2 * SLOTS}
          angle={motion.rotor}
          className={(i) => (i % 2 === 0 ? 'pic-none' : 'pic-slot')}
        />
        <rect {...box(core.x1, -r, core.x2, r)} className="pic-edge pic-line" />
      </Named>
      <Named name="commutator">
        <Strips
          x={commutator.x1}
          width={commutator.x2 - commutator.x1}
          r={COMMUTATOR * u}
          count={BARS}
          angle={motion.rotor}
          className={() => 'pic-thin pic-tone-bright'}
        />
        <rect {...box(commutator.x1, -COMMUTATOR * u, commutator.x2, COMMUTATOR * u)} className="pic-edge pic-line" />
      </Named>
      <ScrewTrain {...props} />
    </g>
  )
}

export const brushScrew: FamilyDrawing = {
  length: () => LANTERN + LENGTH,
  Fixed,
  Moving,
  labels: (props) => {
    const { u } = props.plan
    const { core, commutator } = sizes(props.plan)
    const middle = (core.x1 + core.x2) / 2
    return [
      { text: 'brush', x: (commutator.x1 + commutator.x2) / 2, y: -9 * u },
      { text: 'commutator', x: commutator.x2 - 2 * u, y: -3 * u },
      { text: 'magnet', x: middle - 3 * u, y: -16 * u },
      { text: 'armature', x: middle + 6 * u, y: -5 * u },
      ...screwLabels(props),
    ]
  },
}
