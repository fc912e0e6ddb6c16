/** A ball bearing in section: rings hatched, balls round, above and below the axis. */
import { usePaint } from '../paint.ts'
import { box } from './marks.tsx'

interface BearingProps {
  /** Left face, width, and radii of bore and seat [px]. */
  x: number
  width: number
  bore: number
  outer: number
}

export function Bearing({ x, width, bore, outer }: BearingProps) {
  return (
    <g>
      <Half x={x} width={width} bore={-bore} outer={-outer} />
      <Half x={x} width={width} bore={bore} outer={outer} />
    </g>
  )
}

function Half({ x, width, bore, outer }: BearingProps) {
  const paint = usePaint()
  const ring = (outer - bore) * 0.3
  const ball = Math.min(Math.abs(outer - bore) * 0.29, width * 0.36)
  const middle = (bore + outer) / 2
  return (
    <>
      <rect {...box(x, bore, x + width, outer)} className="pic-thin pic-tone-empty" />
      <rect {...box(x, outer - ring, x + width, outer)} fill={paint.iron} className="pic-edge" />
      <rect {...box(x, bore, x + width, bore + ring)} fill={paint.iron} className="pic-edge" />
      <circle cx={x + width / 2} cy={middle} r={ball} className="pic-edge pic-tone-bright" />
    </>
  )
}
