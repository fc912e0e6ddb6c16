/** What flat linear motors share: the slide that carries their moving half, and a plate of iron with magnets on it. */

import { memo } from 'react'
import type { Plan } from '../grip/plan.ts'
import { usePaint } from '../paint.ts'
import { MagnetRow } from './linear.tsx'
import { box, Named } from './marks.tsx'

/** Levels of the slide [units]. */
const RAIL = { top: -19.2, bottom: -15.6 } as const
export const SLIDE_TOP = -16.4

export function SlideRail({ plan }: { plan: Plan }) {
  const { u, driveLeft, driveRight } = plan
  return (
    <Named name="guide rail of the motor">
      <rect
        {...box(driveLeft + 2.6 * u, RAIL.top * u, driveRight, RAIL.bottom * u)}
        className="pic-edge pic-tone-steel"
      />
    </Named>
  )
}

/** Carriage from x1 to x2 hanging on the rail, down to level `bottom`. */
export const Slide = memo(function Slide({
  plan,
  x1,
  x2,
  bottom,
}: {
  plan: Plan
  x1: number
  x2: number
  bottom: number
}) {
  const paint = usePaint()
  const { u } = plan
  const ball = 1.25 * u
  const count = Math.max(2, Math.floor((x2 - x1 - 4 * u) / (2.4 * ball)))
  return (
    <Named name="slide">
      <rect {...box(x1, SLIDE_TOP * u, x2, bottom)} fill={paint.moving} className="pic-edge" />
      {Array.from({ length: count }, (_, i) => (
        <circle
          key={`${i / count}`}
          cx={x1 + 2 * u + ((i + 0.5) * (x2 - x1 - 4 * u)) / count}
          cy={RAIL.bottom * u}
          r={ball}
          className="pic-thin pic-tone-bright"
        />
      ))}
    </Named>
  )
})

interface TrackProps {
  plan: Plan
  x1: number
  x2: number
  /** Faces [units]: back of the iron, seat and face of the magnets. */
  back: number
  seat: number
  face: number
  pole: number
  iron: string
}

/** Magnets, poles in turn, on an iron plate. */
export const MagnetTrack = memo(function MagnetTrack({
  plan: { u },
  x1,
  x2,
  back,
  seat,
  face,
  pole,
  iron,
}: TrackProps) {
  return (
    <>
      <rect {...box(x1, back * u, x2, seat * u)} fill={iron} className="pic-edge" />
      <MagnetRow
        x={x1}
        y={Math.min(seat, face) * u}
        width={x2 - x1}
        height={Math.abs(face - seat) * u}
        count={Math.max(2, Math.round((x2 - x1) / pole))}
      />
    </>
  )
})
