import { useId } from 'react'
import type { Curves, LoopAnalysis, LoopsResult } from '../../../sim/index.ts'
import { DASHES, pointLabel, WIDTH, WORST_WIDTH } from '../../read/loops/lines.ts'
import { formatFigure } from '../../ui/format.ts'
import { useLoopsState } from './state.ts'

interface Props {
  result: LoopsResult
  analyses: LoopAnalysis[]
  worst: LoopAnalysis | null
}

/** The square about the critical point that is shown, and its size on the drawing. */
const LEFT = -2.5
const RIGHT = 1.5
const HALF = (RIGHT - LEFT) / 2
const SIZE = 320
const x = (re: number) => ((re - LEFT) / (RIGHT - LEFT)) * SIZE
const y = (im: number) => ((HALF - im) / (RIGHT - LEFT)) * SIZE
/** Beyond this a curve is far outside the square; it is bent there so that coordinates stay small. */
const FAR = 50

/** The open loop in the complex plane for positive frequencies, with unit circle, critical point and the worst case's distance from it. */
export function Nyquist({ result, analyses, worst }: Props) {
  const cursor = useLoopsState((state) => state.cursor) ?? worst?.crossover ?? null
  const clip = useId()
  const margin = worst?.margins?.modulusMargin ?? null
  const told = analyses.map((each) => `${pointLabel(result, each.workingPoint)}: ${distance(each)}`).join(' ')
  return (
    <figure className="nyquist">
      <figcaption className="chart-title">Nyquist view</figcaption>
      <svg viewBox={`-2 -2 ${SIZE + 4} ${SIZE + 4}`} role="img" aria-label={`Nyquist view. ${told}`}>
        <clipPath id={clip}>
          <rect width={SIZE} height={SIZE} />
        </clipPath>
        <rect className="frame" width={SIZE} height={SIZE} />
        <g clipPath={`url(#${clip})`}>
          <path className="axis" d={`M0,${y(0)}H${SIZE}M${x(0)},0V${SIZE}`} />
          <circle className="unit-circle" cx={x(0)} cy={y(0)} r={x(1) - x(0)} />
          {margin !== null && <circle className="modulus" cx={x(-1)} cy={y(0)} r={margin * (x(1) - x(0))} />}
          {analyses.map(
            (each) =>
              each.curves && (
                <path
                  key={each.workingPoint}
                  className="curve"
                  d={pathOf(each.curves)}
                  strokeWidth={each === worst ? WORST_WIDTH : WIDTH}
                  strokeDasharray={DASHES[each.workingPoint].join(' ')}
                />
              ),
          )}
          {cursor !== null &&
            analyses.map((each) => each.curves && <Dot key={each.workingPoint} curves={each.curves} at={cursor} />)}
          <path className="critical" d={`M${x(-1) - 6},${y(0)}h12M${x(-1)},${y(0) - 6}v12`} />
        </g>
        <text x={x(-1) + 8} y={y(0) - 8}>
          −1
        </text>
        <text x={x(0.72)} y={y(0.78)}>
          |L| = 1
        </text>
        <text x={SIZE - 6} y={y(0) + 14} textAnchor="end">
          Re
        </text>
        <text x={x(0) + 6} y={14}>
          Im
        </text>
      </svg>
      <p className="loops-small">
        Solid: nominal part; dashed: softest; dash-dotted: stiffest, with two dots after relaxing; dotted: free air;
        heavy: worst case.
        {margin !== null &&
          ` Thin circle: peak sensitivity ${formatFigure(1 / margin)} of the worst case, whose curve stays out of the radius 1/${formatFigure(1 / margin)} = ${formatFigure(margin)} about −1.`}
      </p>
    </figure>
  )
}

function distance({ stable, margins, crossover }: LoopAnalysis): string {
  if (!stable) return 'not stable.'
  if (crossover === null) return 'stays inside the unit circle.'
  return `comes within ${formatFigure(margins?.modulusMargin)} of the critical point −1.`
}

function pathOf({ re, im }: Curves): string {
  const bent = (value: number) => Math.min(FAR, Math.max(-FAR, value))
  let d = ''
  for (let i = 0; i < re.length; i++) {
    if (!Number.isFinite(re[i]!) || !Number.isFinite(im[i]!)) continue
    d += `${d === '' ? 'M' : 'L'}${x(bent(re[i]!)).toFixed(1)},${y(bent(im[i]!)).toFixed(1)}`
  }
  return d
}

/** The curve at the cursor of magnitude and phase. */
function Dot({ curves, at }: { curves: Curves; at: number }) {
  const index = curves.frequency.findIndex((frequency) => frequency >= at)
  if (index < 0 || !Number.isFinite(curves.re[index]!)) return null
  return <circle className="cursor-dot" cx={x(curves.re[index]!)} cy={y(curves.im[index]!)} r="3.5" />
}
