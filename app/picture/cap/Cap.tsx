/**
 * A closure on its jar under the head: cut open left of the axis, from outside right of it, so that thread and liner are seen as well as how
 * far everything has turned. The closure goes down by its lead; torque and preload are arrows to scale.
 */
import { useId } from 'react'
import { capIn, type Scenario } from '../../../sim/index.ts'
import { Defs } from '../Defs.tsx'
import { PaintContext, paintOf } from '../paint.ts'
import { Head } from './Head.tsx'
import { Lid } from './Lid.tsx'
import { Neck } from './Neck.tsx'
import { sizesOf } from './sizes.ts'
import '../grip/picture.css'
import './cap.css'

export interface CapFrame {
  /** Angle of the head and of the closure [rad], torque of the chuck [N·m], preload of the liner [N]. */
  travel: number
  angle: number
  torque: number
  preload: number
  /** The thread has ridden over. */
  stripped: boolean
}

interface Props {
  scenario: Scenario
  frame: CapFrame
  width: number
  height: number
  /** Torque and preload for which an arrow is as long as it may be [N·m], [N]. */
  mostTorque: number
  mostPreload: number
  label: string
}

/** Tilt at which a closure is drawn that was started askew [°]. */
const ASKEW = 2.5

export function Cap({ scenario, frame, width, height, mostTorque, mostPreload, label }: Props) {
  const picture = useId().replace(/\W/g, '')
  const paint = paintOf(picture)
  const { closure, chuck } = capIn(scenario)
  const sizes = sizesOf(scenario, width, height)
  const turns = Math.max(0, frame.angle - chuck.startAngle)
  // Past the liner the closure goes on down by what it squeezes out of it.
  const above = sizes.perRadian * (closure.engagement - turns)
  const lid = sizes.rim - Math.max(-0.6 * sizes.liner, above)
  const askew = closure.misstart !== null && turns > 0 ? ASKEW : 0
  return (
    <PaintContext value={paint}>
      <svg
        className="picture cap"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={label}
      >
        <Defs picture={picture} line={1} />
        <g transform={`translate(${width / 2} 0)`}>
          <Neck sizes={sizes} bottom={height} />
          <g transform={`rotate(${askew} 0 ${lid})`}>
            <Lid {...{ sizes, lid }} angle={frame.angle} stripped={frame.stripped} />
          </g>
          <Head {...{ sizes, lid }} angle={frame.travel} />
          <path className="pic-centre" d={`M0 3V${height - 3}`} />
          <Turning y={sizes.turning} radius={0.55 * sizes.radius} share={shareOf(frame.torque, mostTorque)} />
          <Pressing sizes={sizes} share={shareOf(frame.preload, mostPreload)} />
        </g>
      </svg>
    </PaintContext>
  )
}

const shareOf = (value: number, most: number) => (most > 0 ? Math.min(1, Math.max(0, value / most)) : 0)

/** The torque: an arc about the axis, clockwise as seen from a little above, as long as the torque is large. */
function Turning({ y, radius, share }: { y: number; radius: number; share: number }) {
  const reach = share * 1.5 * Math.PI
  if (reach < 0.08) return null
  const at = (angle: number) => [radius * Math.sin(angle), y + 0.3 * radius * Math.cos(angle)] as const
  const from = 0.75 * Math.PI
  const steps = 24
  const points = Array.from({ length: steps + 1 }, (_, n) => at(from - (reach * n) / steps))
  const [x, tip] = at(from - reach)
  const [bx, by] = at(from - reach + 0.12)
  const turn = (Math.atan2(tip - by, x - bx) * 180) / Math.PI
  return (
    <g className="cap-force">
      <polyline points={points.map(([px, py]) => `${px.toFixed(1)},${py.toFixed(1)}`).join(' ')} />
      <path d="M-7 -4L0 0L-7 4" transform={`translate(${x} ${tip}) rotate(${turn})`} />
    </g>
  )
}

/** The preload: two arrows onto the rim, within the neck, where nothing else is drawn. */
function Pressing({ sizes: { bore, rim, radius }, share }: { sizes: ReturnType<typeof sizesOf>; share: number }) {
  const length = share * 0.55 * radius
  if (length < 2) return null
  const x = -bore + 7
  return (
    <g className="cap-force">
      <path d={`M${x} ${rim + length + 6}V${rim + 6}M${x - 4} ${rim + 13}L${x} ${rim + 6}L${x + 4} ${rim + 13}`} />
    </g>
  )
}
