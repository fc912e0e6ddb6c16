/** Flat linear motor, magnets moving: a magnet track on a slide runs over fixed coils on iron teeth. */
import { MagnetTrack, Slide, SlideRail } from '../elements/flat.tsx'
import {
  CoilRow,
  couplingSlots,
  innerTravel,
  JawCoupling,
  LinearCase,
  PushBar,
  strokeOf,
  WallBush,
} from '../elements/linear.tsx'
import { box, Named } from '../elements/marks.tsx'
import type { Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import type { DrawingProps, FamilyDrawing, Motion } from './drawing.ts'

/** Lengths [units]: cap, track, room before the end wall. */
const END = 5
const TRACK = 38
const FRONT = 4
/** Levels [units]: bar, magnets, coils with teeth. */
const BAR = { y: -8.6, r: 2.4 } as const
const MAGNETS = { back: -11, seat: -6.4, face: 0.6 } as const
const COILS = { top: 2, bottom: 12.5, iron: 18.4 } as const
const POLE = 9.5

function levels(plan: Plan) {
  const { u, driveLeft, driveRight } = plan
  const x1 = driveLeft + END * u
  const x2 = driveRight - FRONT * u
  return { x1, x2, count: 3 * Math.max(2, Math.round((x2 - x1) / (2 * POLE * u))) }
}

function Fixed({ plan }: DrawingProps) {
  const paint = usePaint()
  const { u } = plan
  const { x1, x2 } = levels(plan)
  return (
    <g>
      <LinearCase plan={plan} />
      <SlideRail plan={plan} />
      <WallBush plan={plan} y={BAR.y * u} r={BAR.r * u} />
      <Named name="iron with teeth">
        <rect {...box(x1, COILS.top * u, x2, COILS.iron * u)} fill={paint.sheets} className="pic-edge" />
      </Named>
    </g>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const paint = usePaint()
  const { u } = plan
  const { x1, x2, count } = levels(plan)
  const travel = innerTravel(plan, motion)
  const end = x1 + TRACK * u
  return (
    <g>
      <Named name="coils of three phases">
        <CoilRow
          x={x1}
          y={(COILS.top + 1.6) * u}
          width={x2 - x1}
          height={(COILS.bottom - COILS.top - 1.6) * u}
          count={count}
          gap={0.3}
          current={motion.current}
          travel={travel}
          pole={POLE * u}
        />
      </Named>
      <PushBar plan={plan} motion={motion} x={end - 6 * u} y={BAR.y * u} r={BAR.r * u} />
      <g transform={`translate(${travel.toFixed(2)} 0)`}>
        <Slide plan={plan} x1={x1 + 4 * u} x2={end - 4 * u} bottom={MAGNETS.back * u} />
        <Named name="magnet track">
          <MagnetTrack plan={plan} x1={x1} x2={end} {...MAGNETS} pole={POLE * u} iron={paint.iron} />
        </Named>
      </g>
      <JawCoupling {...props} />
    </g>
  )
}

export const linearMagnets: FamilyDrawing = {
  length: (scenario) => END + TRACK + strokeOf(scenario) + FRONT,
  slots: ({ plan }) => couplingSlots(plan),
  Fixed,
  Moving,
  labels: ({ plan }) => {
    const { u } = plan
    const { x1, x2 } = levels(plan)
    return [
      { text: 'slide', x: x1 + 8 * u, y: -13.5 * u, rides: 'driven' },
      { text: 'moving magnets', x: x1 + 0.55 * TRACK * u, y: -3 * u, rides: 'driven' },
      { text: 'fixed coils', x: x2 - 6 * u, y: 8 * u },
    ]
  },
}
