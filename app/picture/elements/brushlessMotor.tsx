/** A brushless motor in section: magnets on the rotor, windings in the stator, an encoder disc at the rear. */
import type { Label } from '../families/drawing.ts'
import { usePaint } from '../paint.ts'
import { box, Named } from './marks.tsx'
import { MotorCase, motorSize, Shaft, Stator } from './motorCase.tsx'
import { Strips } from './turning.tsx'

/** Length of motor and encoder together [units]. */
export const BRUSHLESS = 63
const ENCODER = 9
const POLES = 6

interface BrushlessProps {
  u: number
  /** Rear end of the encoder, front face of the motor [px]. */
  left: number
  right: number
}

function sizes({ u, left, right }: BrushlessProps) {
  const size = motorSize(left + ENCODER * u, right, u)
  return { size, core: { x1: size.left + 14 * u, x2: size.right - 14 * u } }
}

export function BrushlessCase(props: BrushlessProps) {
  const { u, left } = props
  const paint = usePaint()
  const { size } = sizes(props)
  return (
    <g>
      <MotorCase size={size}>{null}</MotorCase>
      <Named name="encoder cover">
        <path
          d={`M${size.left} ${-15 * u}H${left}V${15 * u}H${size.left}V${13 * u}H${left + 2 * u}V${-13 * u}H${size.left}Z`}
          fill={paint.housing}
          className="pic-edge"
        />
      </Named>
    </g>
  )
}

/** `shaftEnd`: where the shaft ends [px]; `angle` of the rotor [rad]; `current` −1 to 1. */
export function BrushlessRotor(props: BrushlessProps & { shaftEnd: number; angle: number; current: number }) {
  const { u, left, shaftEnd, angle, current } = props
  const { size, core } = sizes(props)
  const r = 9.4 * u
  const [x1, x2] = [core.x1 - 1.5 * u, core.x2 + 1.5 * u]
  return (
    <g>
      <Stator
        x1={core.x1}
        x2={core.x2}
        inner={10.6 * u}
        outer={size.outer - size.wall}
        turns={5 * u}
        current={current}
      />
      <Named name="rotor with magnets">
        <Shaft size={size} from={left + 3 * u} to={shaftEnd} />
        <Strips
          x={x1}
          width={x2 - x1}
          r={r}
          count={POLES}
          angle={angle}
          className={(i) => `pic-thin ${i % 2 === 0 ? 'pic-north' : 'pic-south'}`}
        />
        <rect {...box(x1, -r, x2, r)} className="pic-edge pic-line" />
      </Named>
      <Named name="encoder disc">
        <rect {...box(left + 4.2 * u, -11 * u, left + 5.6 * u, 11 * u)} className="pic-edge pic-tone-bright" />
        <rect {...box(left + 3 * u, 7 * u, left + 7 * u, 12.4 * u)} className="pic-thin pic-tone-rubber" />
      </Named>
    </g>
  )
}

export function brushlessLabels(props: BrushlessProps): Label[] {
  const { u, left } = props
  const { size, core } = sizes(props)
  const middle = (core.x1 + core.x2) / 2
  return [
    { text: 'encoder', x: left + 5 * u, y: -8 * u },
    { text: 'winding', x: core.x1 - 2 * u, y: -14 * u },
    { text: 'stator', x: middle, y: -15 * u },
    { text: 'rotor', x: (middle + size.right) / 2 - 4 * u, y: -5 * u },
  ]
}
