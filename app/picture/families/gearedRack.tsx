/** Brushless motor with a low-ratio bevel gear and racks: the gear's shaft carries the pinion that moves the racks. */
import { memo } from 'react'
import type { Scenario } from '../../../sim/index.ts'
import { BRUSHLESS, BrushlessCase, BrushlessRotor, brushlessLabels } from '../elements/brushlessMotor.tsx'
import { gearPath, teethOf } from '../elements/gear.ts'
import { box, CentreLine, Named } from '../elements/marks.tsx'
import { type RackLayout, Racks, slotOf } from '../elements/racks.tsx'
import { Marks } from '../elements/turning.tsx'
import { baseLength, type Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import type { DrawingProps, FamilyDrawing, Motion } from './drawing.ts'

/** Radius of the crown gear, length of the bevel pinion before it, and what is left to the walls [units]. */
const CROWN = 15
const BEVEL = 7
const ROOM = 4
const BOX = ROOM + BEVEL + 2 * CROWN + ROOM

/** Pinion radius [units]: true, as far as it fits inside the crown gear and can still be seen. */
function pinionUnits(scenario: Scenario): number {
  const { actuator } = scenario
  const radius = actuator.kind === 'rack' ? (100 * actuator.transmission.pinionRadius) / baseLength(scenario) : 6
  return Math.min(9, Math.max(4, radius))
}

function layoutOf({ plan, scenario }: DrawingProps): RackLayout {
  const { u, driveRight } = plan
  return { x: driveRight - (ROOM + CROWN) * u, teeth: teethOf(pinionUnits(scenario) * u, 3.2 * u) }
}

const motor = ({ u, driveLeft, driveRight }: Plan) => ({ u, left: driveLeft, right: driveRight - BOX * u })

/** Radius of the bevel pinion: the crown's over the ratio [units]. */
const bevelUnits = ({ actuator }: Scenario) =>
  Math.min(10, Math.max(3.4, actuator.kind === 'rack' ? CROWN / actuator.transmission.gearRatio : 5))

function Fixed(props: DrawingProps) {
  const { plan } = props
  const { u, driveRight, wallLeft } = plan
  const paint = usePaint()
  const { x, teeth } = layoutOf(props)
  const left = driveRight - BOX * u
  const wall = 2.6 * u
  const slot = (side: 1 | -1) => slotOf(plan, { x, teeth }, side)
  return (
    <g>
      <BrushlessCase {...motor(plan)} />
      <Named name="gear case">
        <path
          d={`M${left} ${-22 * u}H${driveRight}V${-22 * u + wall}H${left}ZM${left} ${22 * u}H${driveRight}V${22 * u - wall}H${left}Z`}
          fill={paint.housing}
          className="pic-wide"
        />
        <rect {...box(left, -22 * u + wall, driveRight, 22 * u - wall)} className="pic-tone-empty" />
        {([-1, 1] as const).map((side) => (
          <rect
            key={side}
            x={driveRight}
            width={wallLeft - driveRight}
            {...slot(side)}
            className="pic-edge pic-tone-empty"
          />
        ))}
      </Named>
      <CentreLine x1={plan.driveLeft} y1={0} x2={driveRight} y2={0} />
    </g>
  )
}

function Moving(props: DrawingProps & { motion: Motion }) {
  const { plan, scenario, motion } = props
  const { u, driveRight } = plan
  const layout = layoutOf(props)
  const left = driveRight - BOX * u
  const bevel = bevelUnits(scenario) * u
  const end = layout.x - CROWN * u
  return (
    <g>
      <BrushlessRotor {...motor(plan)} shaftEnd={left + ROOM * u} angle={motion.rotor} current={motion.current} />
      <Named name="crown gear" transform={`translate(${layout.x} 0)`}>
        <g transform={`rotate(${((motion.output * 180) / Math.PI).toFixed(2)})`}>
          <Crown r={CROWN * u} hub={layout.teeth.r + 3.4 * u} u={u} />
        </g>
      </Named>
      <Named name="bevel pinion">
        <path
          d={`M${left + ROOM * u} ${-bevel}L${end + 1.6 * u} ${-bevel * 0.8}V${bevel * 0.8}L${left + ROOM * u} ${bevel}Z`}
          className="pic-edge pic-tone-steel"
        />
        <Marks
          x={left + ROOM * u}
          width={end + 1.6 * u - left - ROOM * u}
          r={bevel * 0.86}
          count={16}
          angle={motion.rotor}
        />
      </Named>
      <Racks plan={plan} layout={layout} motion={motion} angle={motion.output} />
    </g>
  )
}

/** The crown gear seen along its axis: a toothed rim and a web with holes. */
const Crown = memo(function Crown({ r, hub, u }: { r: number; hub: number; u: number }) {
  const holes = (r * 0.8 + hub) / 2
  return (
    <>
      <path d={gearPath(teethOf(r, 2.6 * u))} className="pic-edge pic-tone-moving" />
      <circle r={r * 0.84} className="pic-thin pic-tone-body" />
      {hub < r * 0.66 &&
        Array.from({ length: 6 }, (_, i) => (
          <circle
            key={i * 60}
            cx={holes * Math.cos((i * Math.PI) / 3)}
            cy={holes * Math.sin((i * Math.PI) / 3)}
            r={Math.min(2 * u, (r * 0.8 - hub) * 0.4)}
            className="pic-thin pic-tone-empty"
          />
        ))}
      <circle r={Math.min(hub, r * 0.7)} className="pic-thin pic-line" />
    </>
  )
})

export const gearedRack: FamilyDrawing = {
  length: () => BRUSHLESS + BOX,
  slots: (props) => ({ driven: props.plan.mirrored ? slotOf(props.plan, layoutOf(props), 1) : undefined }),
  Fixed,
  Moving,
  labels: (props) => {
    const { plan } = props
    const { u, driveRight } = plan
    const { x, teeth } = layoutOf(props)
    return [
      ...brushlessLabels(motor(plan)),
      { text: 'bevel pinion', x: driveRight - (BOX - ROOM - 3) * u, y: -2 * u },
      { text: 'crown gear', x: x - 9 * u, y: -9.6 * u },
      { text: 'pinion', x, y: -teeth.r * 0.5 },
      { text: 'rack', x: driveRight + 4 * u, y: -teeth.r - 2 * u },
    ]
  },
}
