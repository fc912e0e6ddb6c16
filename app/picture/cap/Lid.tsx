import { usePaint } from '../paint.ts'
import type { Sizes } from './sizes.ts'
import { flanks } from './thread.ts'

interface Props {
  sizes: Sizes
  /** Height of the liner's underside, or of the rim where that is pressed. */
  lid: number
  angle: number
  stripped: boolean
}

/** Ribs around the skirt. */
const RIBS = 24

/** The closure: its half with thread and liner cut, the other one with ribs that turn. */
export function Lid({ sizes, lid, angle, stripped }: Props) {
  const paint = usePaint()
  const { radius, tooth, pitch, lidRadius, liner, plate, skirt } = sizes
  const root = radius + tooth * 0.65
  const inside = lid - Math.max(0.4 * liner, liner - Math.max(0, lid - sizes.rim))
  const top = inside - plate
  const end = top + plate + skirt
  const from = inside + 0.2 * radius
  const count = Math.max(1, Math.floor((skirt - 0.24 * radius) / pitch))
  // Seen from inside: the flanks point to the axis.
  const inner = flanks(from, count, pitch, root, -tooth, -1)
  return (
    <>
      <path
        className="pic-wide"
        fill={paint.moving}
        d={`M0 ${top}H${-lidRadius + 3}Q${-lidRadius} ${top} ${-lidRadius} ${top + 4}V${end}H${-root}V${end}${upwards(inner, root, inside)}H0Z`}
      />
      <rect
        className="pic-edge"
        fill={paint.rubber}
        x={-root}
        width={root}
        y={inside}
        height={Math.max(1, lid - inside)}
      />
      <path
        className="pic-wide pic-tone-moving"
        d={`M0 ${top}H${lidRadius - 3}Q${lidRadius} ${top} ${lidRadius} ${top + 4}V${end}H0Z`}
      />
      <Ribs radius={lidRadius} from={top + 0.16 * radius} to={end - 3} angle={angle} />
      {stripped && (
        <path
          className="pic-damage"
          d={`M${-root - 3} ${from}l6 ${pitch * 0.4}l-6 ${pitch * 0.4}M${-root - 3} ${from + pitch}l6 ${pitch * 0.4}l-6 ${pitch * 0.4}`}
        />
      )}
    </>
  )
}

/** The inner contour with its thread, from the skirt's end up to the liner. */
function upwards(down: string, root: number, inside: number): string {
  const points = [...down.matchAll(/(?:V([-\d.]+))|(?:L([-\d.]+) ([-\d.]+))/g)]
  let x = -root
  const places = points.map(([, v, lx, ly]) => {
    if (v !== undefined) return { x, y: Number(v) }
    x = Number(lx)
    return { x, y: Number(ly) }
  })
  return `${places
    .reverse()
    .map((place) => `L${place.x} ${place.y}`)
    .join('')}L${-root} ${inside}`
}

/** Ribs of the half in view, closer together towards its edge; one of them is marked, so that turns can be counted. Turned on clockwise from above, so the near side goes left. */
function Ribs({ radius, from, to, angle }: { radius: number; from: number; to: number; angle: number }) {
  const step = (2 * Math.PI) / RIBS
  const shown = Array.from({ length: RIBS }, (_, n) => ({ n, at: wrapped(n * step - angle) })).filter(
    ({ at }) => at > 0.02 && at < Math.PI / 2 - 0.05,
  )
  return (
    <>
      {shown.map(({ n, at }) => {
        const x = (radius * Math.sin(at)).toFixed(2)
        return <path key={n} className={n === 0 ? 'cap-mark' : 'pic-thin pic-line'} d={`M${x} ${from}V${to}`} />
      })}
    </>
  )
}

/** Into −π … π. */
const wrapped = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))
