/** Magnets and cut wires. */
import { usePaint } from '../paint.ts'

interface MagnetProps {
  x: number
  y: number
  width: number
  height: number
  north: boolean
}

/** A magnet with its pole named where there is room for the letter. */
export function Magnet({ x, y, width, height, north }: MagnetProps) {
  return (
    <>
      <rect x={x} y={y} width={width} height={height} className={`pic-edge ${north ? 'pic-north' : 'pic-south'}`} />
      {width >= 11 && height >= 11 && (
        <text x={x + width / 2} y={y + height / 2} className={`pic-pole ${north ? 'pic-on-north' : 'pic-on-south'}`}>
          {north ? 'N' : 'S'}
        </text>
      )}
    </>
  )
}

/** Cut wires of a winding; `toward` says which way the current runs in this cut, `level` 0 to 1 how much. */
export function Coil({ x, y, width, height, toward, level }: CoilProps) {
  const paint = usePaint()
  return (
    <g>
      <rect x={x} y={y} width={width} height={height} className="pic-edge pic-tone-coil" />
      <rect
        x={x}
        y={y}
        width={width}
        height={height}
        fill={toward ? paint.toward : paint.away}
        opacity={0.3 + 0.7 * level}
      />
    </g>
  )
}

interface CoilProps {
  x: number
  y: number
  width: number
  height: number
  toward: boolean
  level: number
}
