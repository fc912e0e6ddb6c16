/** Flat linear motor, coils moving: a forcer with its coils and cable runs over a fixed magnet track. */
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

/** Lengths [units]: cap, forcer, room before the end wall. */
const END = 5
const FORCER = 36
const FRONT = 4
/** Levels [units]: bar, coils with teeth, magnets. */
const BAR = { y: -9, r: 2.4 } as const
const COILS = { iron: -11.4, top: -6.6, bottom: 4 } as const
const MAGNETS = { back: 18.4, seat: 13, face: 5.6 } as const
const POLE = 9.5
const COUNT = 6

const levels = ({ u, driveLeft, driveRight }: Plan) => ({ x1: driveLeft + END * u, x2: driveRight - FRONT * u })

function Fixed({ plan }: DrawingProps) {
  const paint = usePaint()
  const { u, driveLeft, driveRight } = plan
  return (
    <g>
      <LinearCase plan={plan} />
      <SlideRail plan={plan} />
      <WallBush plan={plan} y={BAR.y * u} r={BAR.r * u} />
      <Named name="magnet track">
        <MagnetTrack
          plan={plan}
          x1={driveLeft + 3.5 * u}
          x2={driveRight - u}
          {...MAGNETS}
          pole={POLE * u}
          iron={paint.iron}
        />
      </Named>
    </g>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const paint = usePaint()
  const { u } = plan
  const { x1 } = levels(plan)
  const travel = innerTravel(plan, motion)
  const end = x1 + FORCER * u
  return (
    <g>
      <PushBar plan={plan} motion={motion} x={end - 6 * u} y={BAR.y * u} r={BAR.r * u} />
      <Cable plan={plan} x={x1 + travel} />
      <g transform={`translate(${travel.toFixed(2)} 0)`}>
        <Slide plan={plan} x1={x1 + 4 * u} x2={end - 4 * u} bottom={COILS.iron * u} />
        <Named name="forcer: iron with teeth and coils">
          <rect {...box(x1, COILS.iron * u, end, COILS.bottom * u)} fill={paint.sheets} className="pic-edge" />
          <CoilRow
            x={x1}
            y={COILS.top * u}
            width={FORCER * u}
            height={(COILS.bottom - COILS.top - 1.4) * u}
            count={COUNT}
            gap={0.3}
            current={motion.current}
            travel={travel}
            pole={POLE * u}
          />
        </Named>
      </g>
      <JawCoupling {...props} />
    </g>
  )
}

/** The cable that follows the coils, in a loop behind them. */
function Cable({ plan, x }: { plan: Plan; x: number }) {
  const { u, driveLeft } = plan
  const fixed = driveLeft + 2.6 * u
  const reach = Math.max(0.6 * u, (x - fixed) / 2)
  const [low, high] = [1.6 * u, -4.4 * u]
  const r = (low - high) / 2
  const turn = fixed + reach
  return (
    <g>
      <title>moving cable</title>
      <path d={`M${fixed} ${low}H${turn}A${r} ${r} 0 0 0 ${turn} ${high}H${x}`} className="pic-cable" />
    </g>
  )
}

export const linearCoils: FamilyDrawing = {
  length: (scenario) => END + FORCER + strokeOf(scenario) + FRONT,
  slots: ({ plan }) => couplingSlots(plan),
  Fixed,
  Moving,
  labels: ({ plan }) => {
    const { u } = plan
    const { x1, x2 } = levels(plan)
    return [
      { text: 'slide', x: x1 + 8 * u, y: -13.5 * u, rides: 'driven' },
      { text: 'moving coils', x: x1 + 0.5 * FORCER * u, y: -2 * u, rides: 'driven' },
      { text: 'magnet track', x: x2 - 5 * u, y: 9 * u },
    ]
  },
}
