/** Small marks that every drawing uses: centre lines, boxes, bolts. */
import type { ReactNode } from 'react'

/** A named group: the name shows where the pointer rests. */
export function Named({ name, children, ...rest }: { name: string; children: ReactNode; transform?: string }) {
  return (
    <g {...rest}>
      <title>{name}</title>
      {children}
    </g>
  )
}

/** Chain-thin centre line, running out over both ends. */
export function CentreLine({
  x1,
  y1,
  x2,
  y2,
  over = 5,
}: {
  x1: number
  y1: number
  x2: number
  y2: number
  over?: number
}) {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1
  const dx = ((x2 - x1) / length) * over
  const dy = ((y2 - y1) / length) * over
  return <line x1={x1 - dx} y1={y1 - dy} x2={x2 + dx} y2={y2 + dy} className="pic-centre" />
}

/** Rectangle by its corners; the order of the corners does not matter. */
export function box(x1: number, y1: number, x2: number, y2: number) {
  return { x: Math.min(x1, x2), y: Math.min(y1, y2), width: Math.abs(x2 - x1), height: Math.abs(y2 - y1) }
}

/** The same rectangle above and below the axis. */
export function Pair({ x1, x2, inner, outer, fill, className = 'pic-edge' }: PairProps) {
  return (
    <>
      <rect {...box(x1, -outer, x2, -inner)} fill={fill} className={className} />
      <rect {...box(x1, inner, x2, outer)} fill={fill} className={className} />
    </>
  )
}

interface PairProps {
  x1: number
  x2: number
  /** Distances from the axis. */
  inner: number
  outer: number
  fill: string
  className?: string
}

/** A socket-head screw in section: head and shank, the axis vertical, head at the top (`down` turns it). */
export function Bolt({
  x,
  y,
  size,
  length,
  down = false,
}: {
  x: number
  y: number
  size: number
  length: number
  down?: boolean
}) {
  const s = down ? -1 : 1
  const head = size * 1.6
  return (
    <g>
      <rect {...box(x - head / 2, y, x + head / 2, y + s * size)} className="pic-thin pic-tone-steel" />
      <path
        d={`M${x - size / 2} ${y + s * size}V${y + s * (size + length)}H${x + size / 2}V${y + s * size}`}
        className="pic-thin pic-line"
      />
      <line x1={x} y1={y - s * 3} x2={x} y2={y + s * (size + length + 3)} className="pic-centre" />
    </g>
  )
}
