import { usePaint } from '../paint.ts'
import type { Sizes } from './sizes.ts'

interface Props {
  sizes: Sizes
  /** Height of the closure that the chuck holds. */
  lid: number
  angle: number
}

/** The chuck around the closure, with its pads, and the spindle that turns it and follows the thread down. */
export function Head({ sizes, lid, angle }: Props) {
  const paint = usePaint()
  const { radius, lidRadius, chuckRadius, liner, plate, skirt } = sizes
  const top = lid - liner - plate - 0.06 * radius
  const crown = top - 0.24 * radius
  const end = lid - liner + 0.55 * skirt
  const pad = 0.07 * radius
  const shaft = 0.34 * radius
  return (
    <>
      <path
        className="pic-wide"
        fill={paint.housing}
        d={`M0 ${crown}H${-chuckRadius}V${end}H${-lidRadius - pad}V${top}H0Z`}
      />
      <rect
        className="pic-edge"
        fill={paint.rubber}
        x={-lidRadius - pad}
        width={pad}
        y={top + 2}
        height={end - top - 2}
      />
      <path className="pic-wide pic-tone-steel" d={`M0 ${crown}H${chuckRadius}V${end}H${lidRadius}V${end - 3}H0Z`} />
      <Marks radius={chuckRadius} from={crown + 4} to={end - 4} angle={angle} />
      <path className="pic-wide" fill={paint.iron} d={`M0 -4H${-shaft}V${crown}H0Z`} />
      <path className="pic-wide pic-tone-steel" d={`M0 -4H${shaft}V${crown}H0Z`} />
      <Marks radius={shaft} from={-4} to={crown - 3} angle={angle} />
    </>
  )
}

/** Four lines along the axis; one is marked. */
function Marks({ radius, from, to, angle }: { radius: number; from: number; to: number; angle: number }) {
  return (
    <>
      {[0, 1, 2, 3].map((n) => {
        const at = (n * Math.PI) / 2 - angle
        const turn = at - 2 * Math.PI * Math.round(at / (2 * Math.PI))
        if (turn < 0.02 || turn > Math.PI / 2 - 0.02) return null
        const x = (radius * Math.sin(turn)).toFixed(2)
        return <path key={n} className={n === 0 ? 'cap-mark' : 'pic-thin pic-line'} d={`M${x} ${from}V${to}`} />
      })}
    </>
  )
}
