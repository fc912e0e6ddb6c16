/** Surfaces that turn about the axis, seen from the side: marks wander over them as they turn. */

/** Height on a cylinder of radius r at which a mark at this angle is seen, or null when it is on the far side. */
export const markHeight = (angle: number, r: number) => (Math.cos(angle) > 0 ? r * Math.sin(angle) : null)

interface StripsProps {
  x: number
  width: number
  r: number
  /** Strips around the whole cylinder. */
  count: number
  angle: number
  /** Class of a strip by its number. */
  className(index: number): string
}

/** The visible part of each strip of a cylinder: rotor magnets, commutator bars, teeth. */
export function Strips({ x, width, r, count, angle, className }: StripsProps) {
  const step = (2 * Math.PI) / count
  const strips = []
  for (let i = 0; i < count; i++) {
    const middle = wrap(angle + i * step)
    const from = Math.max(-Math.PI / 2, middle - step / 2)
    const to = Math.min(Math.PI / 2, middle + step / 2)
    if (to <= from) continue
    const y = r * Math.sin(from)
    strips.push(<rect key={i} x={x} y={y} width={width} height={r * Math.sin(to) - y} className={className(i)} />)
  }
  return <g>{strips}</g>
}

/** Angle between −π and π. */
export const wrap = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))

/** Lines along a turning cylinder, `count` around it. */
export function Marks({ x, width, r, count, angle }: Omit<StripsProps, 'className'>) {
  const d = []
  for (let i = 0; i < count; i++) {
    const y = markHeight(angle + (2 * Math.PI * i) / count, r)
    if (y !== null) d.push(`M${x} ${y.toFixed(2)}h${width}`)
  }
  return <path d={d.join('')} className="pic-thin pic-line" />
}
