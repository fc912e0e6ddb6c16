/** A jaw coupling between motor shaft and screw: two hubs and an elastomer star; its clamping screws show the turning. */
import { usePaint } from '../paint.ts'
import { box, Named } from './marks.tsx'
import { markHeight } from './turning.tsx'

interface CouplingProps {
  x: number
  width: number
  r: number
  angle: number
}

export function Coupling({ x, width, r, angle }: CouplingProps) {
  const paint = usePaint()
  const hub = width * 0.4
  const marks = [angle, angle + Math.PI].map((at) => markHeight(at, r * 0.86)).filter((y) => y !== null)
  return (
    <Named name="coupling">
      <rect {...box(x, -r, x + hub, r)} className="pic-edge pic-tone-steel" />
      <rect {...box(x + width - hub, -r, x + width, r)} className="pic-edge pic-tone-steel" />
      <rect {...box(x + hub, -r * 0.92, x + width - hub, r * 0.92)} fill={paint.rubber} className="pic-edge" />
      {marks.map((y) => (
        <g key={y}>
          <ellipse
            cx={x + hub / 2}
            cy={y}
            rx={hub * 0.24}
            ry={shown(y, r) * hub * 0.24}
            className="pic-thin pic-south"
          />
          <ellipse
            cx={x + width - hub / 2}
            cy={y}
            rx={hub * 0.24}
            ry={shown(y, r) * hub * 0.24}
            className="pic-thin pic-south"
          />
        </g>
      ))}
    </Named>
  )
}

/** How much of a round mark is seen at this height of a cylinder. */
const shown = (y: number, r: number) => Math.sqrt(Math.max(0.05, 1 - (y / r) ** 2))
