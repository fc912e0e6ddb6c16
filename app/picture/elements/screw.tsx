/** Screw and nut. A screw cut lengthwise is not hatched (ISO 128); its thread marks wander with the turning. */
import { memo, useId } from 'react'
import { usePaint } from '../paint.ts'
import { box } from './marks.tsx'

interface ThreadProps {
  x1: number
  x2: number
  r: number
  /** Distance between thread marks [px]. */
  pitch: number
  leftHand?: boolean
  /** Shift of the marks along the axis [px]. */
  shift: number
}

export function Thread({ x1, x2, r, pitch, leftHand = false, shift }: ThreadProps) {
  const clip = useId()
  const within = shift - pitch * Math.floor(shift / pitch)
  return (
    <g>
      <clipPath id={clip}>
        <rect x={x1} y={-r - 2} width={Math.max(0, x2 - x1)} height={2 * r + 4} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <g transform={`translate(${within.toFixed(2)} 0)`}>
          <ThreadMarks from={x1 - pitch} to={x2 + pitch} r={r} pitch={pitch} leftHand={leftHand} />
        </g>
      </g>
    </g>
  )
}

/** Crest and root of each turn, and the toothed silhouette. */
const ThreadMarks = memo(function ThreadMarks({ from, to, r, pitch, leftHand }: MarksProps) {
  const lean = (leftHand ? -1 : 1) * pitch * 0.5
  const depth = Math.min(0.24 * r, 0.35 * pitch)
  const core = r - depth
  const edge = [`M${from} ${-core}`]
  const below = [`M${from + lean} ${core}`]
  const flanks = []
  for (let x = from; x < to; x += pitch) {
    const [a, b, c, d] = [x + 0.08 * pitch, x + 0.22 * pitch, x + 0.54 * pitch, x + 0.68 * pitch] as const
    edge.push(`L${a} ${-core}L${b} ${-r}L${c} ${-r}L${d} ${-core}`)
    below.push(`L${a + lean} ${core}L${b + lean} ${r}L${c + lean} ${r}L${d + lean} ${core}`)
    flanks.push(`M${b} ${-r}L${b + lean} ${r}M${c} ${-r}L${c + lean} ${r}`)
    if (pitch > 7) flanks.push(`M${a} ${-core}L${a + lean} ${core}M${d} ${-core}L${d + lean} ${core}`)
  }
  return (
    <>
      <rect {...box(from, -core, to, core)} className="pic-tone-steel" />
      <path d={`${edge.join('')}V0H${from}Z`} className="pic-tone-steel" />
      <path d={`${below.join('')}V0H${from}Z`} className="pic-tone-steel" />
      <path d={flanks.join('')} className="pic-thin pic-line" />
      <path d={edge.join('') + below.join('')} className="pic-edge pic-line" />
    </>
  )
})

interface MarksProps {
  from: number
  to: number
  r: number
  pitch: number
  leftHand: boolean
}

interface NutProps {
  /** From the flange's outer face to the far end [px]; the flange is at x1. */
  x1: number
  x2: number
  r: number
  outer: number
  flange: number
  flangeWidth: number
  /** Balls between nut and screw, or a sliding thread. */
  balls: boolean
  pitch: number
}

/** A flanged nut in section, above and below the screw. */
export const Nut = memo(function Nut(props: NutProps) {
  return (
    <g>
      <NutHalf {...props} side={-1} />
      <NutHalf {...props} side={1} />
    </g>
  )
})

function NutHalf({ x1, x2, r, outer, flange, flangeWidth, balls, pitch, side }: NutProps & { side: 1 | -1 }) {
  const paint = usePaint()
  const inner = r + (balls ? 0.8 : -0.4)
  const s = side
  const body = `M${x1} ${s * inner}V${s * flange}H${x1 + flangeWidth}V${s * outer}H${x2}V${s * inner}Z`
  const ball = Math.max(1.5, Math.min(0.34 * pitch, 0.3 * r))
  const turns = []
  const lean = s > 0 ? 0.5 * pitch : 0
  for (let x = x1 + 0.9 * pitch; x < x2 - 0.7 * pitch; x += pitch) turns.push(x + lean)
  return (
    <>
      <path d={body} fill={paint.nut} className="pic-edge" />
      {balls &&
        turns.map((x) => <circle key={x} cx={x} cy={s * (r + 0.2)} r={ball} className="pic-edge pic-tone-bright" />)}
    </>
  )
}

/** Distance between drawn thread marks: the lead, split into starts where it is long, several turns where it is too fine to draw. */
export function drawnPitch(lead: number): number {
  if (!(lead > 0)) return 6
  if (lead > 15) return lead / Math.ceil(lead / 15)
  return lead < 5 ? lead * Math.ceil(5 / lead) : lead
}
