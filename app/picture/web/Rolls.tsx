/** Rolls of a web, cut across: solid ones, idlers on their bearings, and the one that is driven, with the layers that it has wound. */
import { usePaint } from '../paint.ts'
import type { Disc } from './belt.ts'

const degrees = (angle: number) => ((angle * 180) / Math.PI) % 360

interface Turning {
  disc: Disc
  /** Clockwise as drawn [rad]. */
  angle: number
}

/** A roll that is cut, with its shaft and a keyway that shows how it turns. */
export function SolidRoll({ disc: { x, y, r }, angle, fill }: Turning & { fill: string }) {
  const paint = usePaint()
  const shaft = 0.36 * r
  return (
    <g transform={`translate(${x} ${y}) rotate(${degrees(angle)})`}>
      <circle className="pic-wide" fill={fill} r={r} />
      <circle className="pic-wide" fill={paint.iron} r={shaft} />
      <rect className="pic-edge pic-tone-empty" x={-0.13 * r} y={-shaft - 0.1 * r} width={0.26 * r} height={0.22 * r} />
    </g>
  )
}

/** An idler: a thin shell on spokes, with its bearing. */
export function Idler({ disc: { x, y, r }, angle }: Turning) {
  const paint = usePaint()
  return (
    <g transform={`translate(${x} ${y}) rotate(${degrees(angle)})`}>
      <circle className="pic-wide" fill={paint.moving} r={r} />
      <circle className="pic-edge pic-tone-empty" r={0.72 * r} />
      {[0, 60, 120].map((spoke) => (
        <path key={spoke} className="pic-edge" d={`M${-0.72 * r} 0H${0.72 * r}`} transform={`rotate(${spoke})`} />
      ))}
      <circle className="pic-wide pic-tone-steel" r={0.26 * r} />
    </g>
  )
}

interface DrivenProps extends Turning {
  disc: Disc & { core: number }
  winds: boolean
  /** By how much it is drawn out of round [px], its high spot where the keyway is. */
  runout: number
}

const LAYERS = 7

/** The driven roll: core and shaft, and on one that winds the web in layers. */
export function DrivenRoll({ disc: { x, y, r, core }, angle, winds, runout }: DrivenProps) {
  const paint = usePaint()
  const layers = Array.from({ length: LAYERS }, (_, n) => core + ((r - core) * (n + 1)) / (LAYERS + 1))
  const shaft = 0.5 * core
  return (
    <g transform={`translate(${x} ${y}) rotate(${degrees(angle)})`}>
      <circle className="pic-wide" fill={winds ? paint.part : paint.moving} r={r} cy={-runout} />
      {winds && r - core > LAYERS && layers.map((each) => <circle key={each} className="pic-thin pic-line" r={each} />)}
      <circle className="pic-wide" fill={winds ? paint.moving : paint.nut} r={core} />
      <circle className="pic-wide" fill={paint.iron} r={shaft} />
      <rect
        className="pic-edge pic-tone-empty"
        x={-0.18 * shaft}
        y={-1.3 * shaft}
        width={0.36 * shaft}
        height={0.5 * shaft}
      />
    </g>
  )
}
