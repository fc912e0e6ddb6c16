/** The line from motor shaft to nuts: coupling in its lantern, bearings, screw, nuts. Shared by all screw drives. */
import type { DrawingProps, Label, Motion } from '../families/drawing.ts'
import { JAW } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import { Bearing } from './bearing.tsx'
import { Coupling } from './coupling.tsx'
import { box, CentreLine, Named, Pair } from './marks.tsx'
import { drawnPitch, Nut, Thread } from './screw.tsx'

/** Length of the lantern between motor and end wall [units]. */
export const LANTERN = 18

/** Thread friction below which the nut runs on balls. */
const BALLS_BELOW = 0.02

export interface ScrewSize {
  /** Radius and journal radius [px], distance of the drawn thread marks [px]. */
  r: number
  journal: number
  pitch: number
  balls: boolean
}

export function screwSize({ plan, scenario }: DrawingProps): ScrewSize {
  const { actuator } = scenario
  if (actuator.kind !== 'screw') throw new TypeError(`a screw is drawn for a screw axis, not for ${actuator.kind}`)
  const { lead, pitchDiameter, threadFriction } = actuator.transmission
  const r = Math.min(7 * plan.u, Math.max(2.8 * plan.u, (pitchDiameter / 2) * plan.m))
  return { r, journal: 0.72 * r, pitch: drawnPitch(lead * plan.m), balls: threadFriction < BALLS_BELOW }
}

/** Lantern and bearings: what stands still. */
export function ScrewSeats(props: DrawingProps) {
  const { plan } = props
  const { u, driveRight, wallRight } = plan
  const paint = usePaint()
  const { journal } = screwSize(props)
  const seat = 9.5 * u
  const left = driveRight - LANTERN * u
  return (
    <g>
      <Named name="lantern">
        <rect {...box(left, -16 * u, driveRight, 16 * u)} className="pic-tone-empty" />
        <Pair x1={left} x2={driveRight} inner={13 * u} outer={16 * u} fill={paint.housing} className="pic-wide" />
      </Named>
      <Named name="screw bearing">
        <rect {...box(driveRight, -seat * 0.72, driveRight + 9 * u, seat * 0.72)} className="pic-tone-empty" />
        <Bearing x={driveRight + u} width={7 * u} bore={journal} outer={seat} />
      </Named>
      <Named name="screw bearing">
        <rect {...box(wallRight, -seat * 0.72, wallRight + 8 * u, seat * 0.72)} className="pic-tone-empty" />
        <Bearing x={wallRight + u} width={7 * u} bore={journal} outer={seat} />
      </Named>
      <CentreLine x1={plan.driveLeft} y1={0} x2={plan.right} y2={0} />
    </g>
  )
}

/** Coupling, screw and nuts. */
export function ScrewTrain(props: DrawingProps & { motion: Motion }) {
  const { plan, motion } = props
  const { u, driveRight, wallLeft, wallRight, half, mirrored } = plan
  const size = screwSize(props)
  const { r, journal, pitch, balls } = size
  const nut = {
    x1: JAW.blockFrom * u,
    x2: (JAW.blockTo - 1) * u,
    r,
    outer: Math.max(r + 3.2 * u, 9.5 * u),
    flange: Math.max(r + 5 * u, 12.5 * u),
    flangeWidth: 5 * u,
    balls,
    pitch,
  }
  const collar = 3.5 * u
  return (
    <g>
      <Coupling x={driveRight - 15 * u} width={12 * u} r={9 * u} angle={motion.output} />
      <Named name={mirrored ? 'screw, right-hand and left-hand thread' : 'screw'}>
        <rect {...box(driveRight - 3 * u, -journal, wallLeft + 2 * u, journal)} className="pic-edge pic-tone-steel" />
        <rect {...box(wallRight - 2 * u, -journal, wallRight + 8.5 * u, journal)} className="pic-edge pic-tone-steel" />
        {mirrored ? (
          <>
            <Thread x1={wallLeft + 2 * u} x2={-collar} r={r} pitch={pitch} shift={motion.motorTravel} />
            <Thread x1={collar} x2={wallRight - 2 * u} r={r} pitch={pitch} leftHand shift={-motion.motorTravel} />
            <rect {...box(-collar, -r, collar, r)} className="pic-edge pic-tone-steel" />
          </>
        ) : (
          <Thread x1={wallLeft + 2 * u} x2={wallRight - 2 * u} r={r} pitch={pitch} shift={motion.motorTravel} />
        )}
      </Named>
      <Named name="nut" transform={`translate(${-half + motion.travel} 0)`}>
        <Nut {...nut} />
      </Named>
      {mirrored && (
        <Named name="nut, left-hand" transform={`translate(${half - motion.travel} 0) scale(-1 1)`}>
          <Nut {...nut} />
        </Named>
      )}
    </g>
  )
}

export function screwLabels({ plan }: DrawingProps): Label[] {
  const { u, driveRight, half, mirrored } = plan
  const nutY = -8 * u
  const labels: Label[] = [
    { text: 'coupling', x: driveRight - 9 * u, y: -6 * u },
    { text: 'bearing', x: driveRight + 4.5 * u, y: -6.5 * u },
    { text: mirrored ? 'right-hand nut' : 'nut', x: -half + JAW.middle * u, y: nutY, rides: 'driven' },
    { text: 'screw', x: mirrored ? -5 * u : 0.2 * half, y: -2 * u },
  ]
  if (mirrored) labels.push({ text: 'left-hand nut', x: half - JAW.middle * u, y: nutY, rides: 'far' })
  return labels
}
