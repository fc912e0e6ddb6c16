/** Step motor with a screw: two toothed rotor halves, a magnet between them, toothed stator poles with their coils. */
import { box, Named, Pair } from '../elements/marks.tsx'
import { MotorCase, motorSize, Shaft, Stator } from '../elements/motorCase.tsx'
import { LANTERN, ScrewSeats, ScrewTrain, screwLabels } from '../elements/screwLine.tsx'
import { Marks } from '../elements/turning.tsx'
import type { Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import type { DrawingProps, FamilyDrawing, Motion } from './drawing.ts'

const LENGTH = 50
/** Teeth of a rotor half as drawn; half a tooth between the halves. */
const TEETH = 30
/** Radii [units]. */
const ROTOR = 11
const POLE = 11.7

function sizes({ u, driveRight, driveLeft }: Plan) {
  const size = motorSize(driveLeft, driveRight - LANTERN * u, u)
  const core = { x1: size.left + 13.5 * u, x2: size.right - 13.5 * u }
  const middle = (core.x1 + core.x2) / 2
  return { size, core, magnet: { x1: middle - 2.4 * u, x2: middle + 2.4 * u } }
}

function Fixed(props: DrawingProps) {
  const { size } = sizes(props.plan)
  return (
    <g>
      <MotorCase size={size}>{null}</MotorCase>
      <ScrewSeats {...props} />
    </g>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const { u, driveRight } = plan
  const paint = usePaint()
  const { size, core, magnet } = sizes(plan)
  const r = ROTOR * u
  const halves = [
    { x1: core.x1, x2: magnet.x1, angle: motion.rotor },
    { x1: magnet.x2, x2: core.x2, angle: motion.rotor + Math.PI / TEETH },
  ]
  return (
    <g>
      <Stator
        x1={core.x1}
        x2={core.x2}
        inner={(POLE + 1.4) * u}
        outer={size.outer - size.wall}
        turns={5 * u}
        current={motion.current}
      />
      <Named name="toothed stator poles">
        <Pair x1={core.x1} x2={magnet.x1} inner={POLE * u} outer={(POLE + 1.8) * u} fill={paint.iron} />
        <Pair x1={magnet.x2} x2={core.x2} inner={POLE * u} outer={(POLE + 1.8) * u} fill={paint.iron} />
      </Named>
      <Named name="rotor with two toothed halves">
        <Shaft size={size} from={size.left + 2 * u} to={driveRight - 12 * u} />
        {halves.map(({ x1, x2, angle }) => (
          <g key={x1}>
            <rect {...box(x1, -r, x2, r)} className="pic-edge pic-tone-steel" />
            <Marks x={x1} width={x2 - x1} r={r} count={2 * TEETH} angle={angle} />
          </g>
        ))}
        <rect {...box(magnet.x1, -0.82 * r, (magnet.x1 + magnet.x2) / 2, 0.82 * r)} className="pic-edge pic-north" />
        <rect {...box((magnet.x1 + magnet.x2) / 2, -0.82 * r, magnet.x2, 0.82 * r)} className="pic-edge pic-south" />
      </Named>
      <ScrewTrain {...props} />
    </g>
  )
}

export const stepScrew: FamilyDrawing = {
  length: () => LANTERN + LENGTH,
  Fixed,
  Moving,
  labels: (props) => {
    const { u } = props.plan
    const { core, magnet } = sizes(props.plan)
    return [
      { text: 'coil', x: core.x1 - 2.5 * u, y: -16 * u },
      { text: 'stator pole', x: core.x1 + 5 * u, y: -(POLE + 0.8) * u },
      { text: 'magnet', x: magnet.x1 + u, y: -6 * u },
      { text: 'toothed rotor', x: core.x2 - 3 * u, y: -7 * u },
      ...screwLabels(props),
    ]
  },
}
