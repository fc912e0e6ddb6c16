/** Case of a rotary motor in section, and its shaft: end shields with bearings, a cylinder between them. */
import type { ReactNode } from 'react'
import { usePaint } from '../paint.ts'
import { Bearing } from './bearing.tsx'
import { box, Named, Pair } from './marks.tsx'

/** Lengths of a motor in px; x grows towards the screw. */
export interface MotorSize {
  left: number
  right: number
  /** Outer radius, wall, radius of shaft, and of the bearing seats. */
  outer: number
  wall: number
  shaft: number
  seat: number
  /** Thickness of the end shields. */
  shield: number
}

export function motorSize(left: number, right: number, u: number): MotorSize {
  return { left, right, outer: 22 * u, wall: 2.6 * u, shaft: 3 * u, seat: 8 * u, shield: 7.5 * u }
}

export function MotorCase({ size, children }: { size: MotorSize; children: ReactNode }) {
  const paint = usePaint()
  const { left, right, outer, wall, shaft, seat, shield } = size
  const bearing = shield * 0.72
  return (
    <g>
      <Named name="motor case">
        <rect {...box(left, -outer, right, outer)} className="pic-tone-empty" />
        <Pair
          x1={left + shield}
          x2={right - shield}
          inner={outer - wall}
          outer={outer}
          fill={paint.housing}
          className="pic-wide"
        />
        <Pair x1={left} x2={left + shield} inner={seat * 0.7} outer={outer} fill={paint.body} className="pic-wide" />
        <Pair x1={right - shield} x2={right} inner={seat * 0.7} outer={outer} fill={paint.body} className="pic-wide" />
      </Named>
      <Named name="motor bearing">
        <Bearing x={left + shield - bearing} width={bearing} bore={shaft} outer={seat} />
        <Bearing x={right - shield} width={bearing} bore={shaft} outer={seat} />
      </Named>
      {children}
    </g>
  )
}

export function Shaft({ size, to, from }: { size: MotorSize; from: number; to: number }) {
  return <rect {...box(from, -size.shaft, to, size.shaft)} className="pic-edge pic-tone-steel" />
}

/** Stator of a brushless or step motor: sheets between the end turns of the winding, above and below the rotor. */
export function Stator({ x1, x2, inner, outer, turns, current }: StatorProps) {
  const paint = usePaint()
  const level = Math.min(1, Math.abs(current))
  const height = (outer - inner) * 0.8
  const ends = [x1 - turns, x2]
  return (
    <Named name="stator and winding">
      <Pair x1={x1} x2={x2} inner={inner} outer={outer} fill={paint.sheets} />
      {ends.map((x) => (
        <g key={x}>
          <rect
            x={x}
            y={-inner - height}
            width={turns}
            height={height}
            rx={turns * 0.3}
            className="pic-edge pic-tone-coil"
          />
          <rect x={x} y={inner} width={turns} height={height} rx={turns * 0.3} className="pic-edge pic-tone-coil" />
          <g opacity={0.3 + 0.7 * level}>
            <rect
              x={x}
              y={-inner - height}
              width={turns}
              height={height}
              rx={turns * 0.3}
              fill={current >= 0 ? paint.toward : paint.away}
            />
            <rect
              x={x}
              y={inner}
              width={turns}
              height={height}
              rx={turns * 0.3}
              fill={current >= 0 ? paint.away : paint.toward}
            />
          </g>
        </g>
      ))}
    </Named>
  )
}

interface StatorProps {
  x1: number
  x2: number
  inner: number
  outer: number
  /** Length of the end turns. */
  turns: number
  current: number
}
