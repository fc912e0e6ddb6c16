/** Patterns of cut faces: hatching at 45° by ISO 128, neighbours in the other direction or narrower. */
import { memo } from 'react'
import { type Fill, fillId } from './paint.ts'

interface HatchProps {
  id: string
  spacing: number
  /** Degrees of the lines. */
  angle: 45 | -45 | 90
  tone: string
  line?: string
  crossed?: boolean
}

function Hatch({ id, spacing: s, angle, tone, line = 'pic-hatch', crossed = false }: HatchProps) {
  return (
    <pattern id={id} width={s} height={s} patternUnits="userSpaceOnUse" patternTransform={`rotate(${angle})`}>
      <rect width={s} height={s} className={tone} />
      <path d={crossed ? `M0 ${s / 2}H${s}M${s / 2} 0V${s}` : `M0 ${s / 2}H${s}`} className={line} />
    </pattern>
  )
}

/** Cut wires: a dot for current out of the paper, a cross for current into it. */
function Wires({ id, size, toward }: { id: string; size: number; toward: boolean }) {
  return (
    <pattern id={id} width={7} height={7} patternUnits="userSpaceOnUse" patternTransform={`scale(${size})`}>
      <rect width={7} height={7} className="pic-tone-coil" />
      <circle cx={3.5} cy={3.5} r={2.6} className="pic-wire" />
      {toward ? (
        <circle cx={3.5} cy={3.5} r={0.95} className="pic-wire-dot" />
      ) : (
        <path d="M1.7 1.7L5.3 5.3M5.3 1.7L1.7 5.3" className="pic-wire" />
      )}
    </pattern>
  )
}

/** Cells of a soft body. */
function Cells({ id }: { id: string }) {
  return (
    <pattern id={id} width={15} height={13} patternUnits="userSpaceOnUse">
      <rect width={15} height={13} className="pic-tone-part" />
      <g className="pic-hatch">
        <circle cx={3} cy={3} r={1.7} />
        <circle cx={10.5} cy={2.6} r={1.1} />
        <circle cx={6.8} cy={8.6} r={1.4} />
        <circle cx={13} cy={9.6} r={1.8} />
        <circle cx={1.4} cy={10} r={0.9} />
      </g>
    </pattern>
  )
}

/** `line`: width of the hatching over that of a picture of usual size. */
export const Defs = memo(function Defs({ picture, line }: { picture: string; line: number }) {
  const id = (fill: Fill) => fillId(picture, fill)
  const wide = Math.max(0.72, line)
  return (
    <defs>
      <Hatch id={id('body')} spacing={6 * wide} angle={45} tone="pic-tone-body" />
      <Hatch id={id('housing')} spacing={5 * wide} angle={-45} tone="pic-tone-body" />
      <Hatch id={id('moving')} spacing={5 * wide} angle={-45} tone="pic-tone-moving" />
      <Hatch id={id('nut')} spacing={3.4 * wide} angle={45} tone="pic-tone-nut" />
      <Hatch id={id('iron')} spacing={3.4 * wide} angle={-45} tone="pic-tone-iron" />
      <Hatch id={id('sheets')} spacing={2.6 * wide} angle={90} tone="pic-tone-iron" />
      <Hatch id={id('rubber')} spacing={3.2 * wide} angle={45} tone="pic-tone-rubber" crossed />
      <Hatch id={id('part')} spacing={4 * wide} angle={45} tone="pic-tone-part" />
      <Hatch id={id('damage')} spacing={4 * wide} angle={-45} tone="pic-none" line="pic-damage-hatch" />
      <Cells id={id('soft')} />
      <Wires id={id('toward')} size={wide} toward />
      <Wires id={id('away')} size={wide} toward={false} />
    </defs>
  )
})
