/** A law drawn small: how often which value. */
import { densityOf, type lawOf, quantileOf, type ShownUnit } from '../../../sim/index.ts'
import { formatPlain, withUnit } from '../../ui/format.ts'

const POINTS = 60
const [WIDTH, HEIGHT] = [96, 26]

interface SketchProps {
  law: ReturnType<typeof lawOf>
  value: number
  unit: ShownUnit
}

export function Sketch({ law, value, unit }: SketchProps) {
  const [low, high] = [quantileOf(law, value, 0.005), quantileOf(law, value, 0.995)]
  const text = (at: number) => formatPlain(unit.toShown(at), 4)
  const label =
    low === high ? `always ${text(low)}` : `99 of 100 from ${text(low)} to ${withUnit(text(high), unit.symbol)}`
  return (
    <span className="law-sketch">
      <svg viewBox={`0 -2 ${WIDTH} ${HEIGHT + 4}`} aria-hidden="true">
        <path d={low < high ? curve(law, value, low, high) : `M${WIDTH / 2} 0V${HEIGHT}`} />
        <path className="law-base" d={`M0 ${HEIGHT}H${WIDTH}`} />
      </svg>
      <span className="unit">{label}</span>
    </span>
  )
}

function curve(law: SketchProps['law'], value: number, low: number, high: number): string {
  const from = low - 0.1 * (high - low)
  const step = (1.2 * (high - low)) / POINTS
  const heights = Array.from({ length: POINTS + 1 }, (_, n) => densityOf(law, value, from + n * step))
  const most = Math.max(...heights.filter(Number.isFinite), 1e-300)
  return heights
    .map((height, n) => {
      const y = HEIGHT * (1 - Math.min(1, height / most))
      return `${n === 0 ? 'M' : 'L'}${((n * WIDTH) / POINTS).toFixed(1)} ${y.toFixed(1)}`
    })
    .join('')
}
