/** The press in section: ram with its punch, the bushing on its way, the wall around the bore with its shoulder; forces as arrows to scale. */
import { useId } from 'react'
import { pressIn, type Scenario } from '../../../sim/index.ts'
import { Defs } from '../Defs.tsx'
import { PaintContext, paintOf } from '../paint.ts'
import '../grip/picture.css'
import './press.css'

export interface PressFrame {
  /** Travel of the ram [m], depth of the bushing [m], force of the ram and of the shoulder [N]. */
  travel: number
  depth: number
  force: number
  shoulder: number
}

interface Props {
  scenario: Scenario
  frame: PressFrame
  width: number
  height: number
  /** Force for which an arrow is as long as it may be [N]. */
  mostForce: number
  label: string
}

/** Room above the bore for ram and bushing before they touch, and below it, in lengths of the joint. */
const ABOVE = 2.2
const BELOW = 0.45

export function Press({ scenario, frame, width, height, mostForce, label }: Props) {
  const picture = useId().replace(/\W/g, '')
  const { bushing, bore, ram } = pressIn(scenario)
  const reach = Math.max(bushing.length, bore.shoulder?.depth ?? bushing.length)
  const scale = Math.min(height / ((ABOVE + 1 + BELOW) * reach), (0.86 * width) / (1.5 * bore.outerDiameter))
  const mouth = ABOVE * reach * scale
  const middle = width / 2
  const of = (length: number) => length * scale
  const [outer, joint, inner] = [bore.outerDiameter / 2, bushing.diameter / 2, bushing.innerDiameter / 2].map(of) as [
    number,
    number,
    number,
  ]
  // Before the touch the bushing hangs on the ram; never higher than there is room for.
  const before = Math.max(frame.travel - ram.gap, -0.5 * reach)
  const tip = mouth + of(frame.depth > 0 || before >= 0 ? frame.depth : before)
  const top = tip - of(bushing.length)
  const floor = mouth + of(reach * (1 + BELOW / 2))
  const paint = paintOf(picture)
  return (
    <PaintContext value={paint}>
      <svg
        className="picture press"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={label}
      >
        <Defs picture={picture} line={1} />
        <g transform={`translate(${middle} 0)`}>
          {[-1, 1].map((side) => (
            <path
              key={side}
              className="pic-wide"
              fill={paint.body}
              d={`M${side * joint} ${mouth}H${side * outer}V${floor}H${side * inner * 0.9}V${mouth + of(bore.shoulder?.depth ?? 10 * reach) < floor ? mouth + of(bore.shoulder?.depth ?? 0) : floor}H${side * joint}Z`}
            />
          ))}
          <g transform={`rotate(${(bushing.tilt * 180) / Math.PI} 0 ${tip})`}>
            {[-1, 1].map((side) => (
              <Ring
                key={side}
                side={side}
                {...{ inner, joint, top, tip }}
                cone={of(bushing.chamfer.length)}
                fill={paint.part}
              />
            ))}
            <rect
              className="pic-wide"
              fill={paint.moving}
              x={-joint * 1.25}
              width={joint * 2.5}
              y={top - of(reach) * 0.35}
              height={of(reach) * 0.35}
            />
            <rect
              className="pic-wide"
              fill={paint.iron}
              x={-joint * 0.7}
              width={joint * 1.4}
              y={-4}
              height={Math.max(0, top - of(reach) * 0.35 + 4)}
            />
          </g>
          <path className="pic-centre" d={`M0 4V${height - 4}`} />
          {frame.depth > 0 && (
            <path className="press-engaged" d={`M${-joint} ${mouth}V${tip}M${joint} ${mouth}V${tip}`} />
          )}
          <Arrow
            at={top - of(reach) * 0.2}
            x={joint * 1.25 + 16}
            length={arrowOf(frame.force, mostForce, height)}
            down
          />
          {frame.shoulder > 0 && (
            <Arrow at={tip} x={joint + 9} length={arrowOf(frame.shoulder, mostForce, height)} down={false} />
          )}
        </g>
      </svg>
    </PaintContext>
  )
}

const arrowOf = (force: number, most: number, height: number) => (most > 0 ? (0.28 * height * force) / most : 0)

interface RingProps {
  side: number
  inner: number
  joint: number
  top: number
  tip: number
  cone: number
  fill: string
}

/** One cut side of the bushing, with its chamfer. */
function Ring({ side, inner, joint, top, tip, cone, fill }: RingProps) {
  const lead = Math.min(cone, (tip - top) / 3)
  const in_ = Math.max(inner, joint * 0.02)
  return (
    <path
      className="pic-wide"
      fill={fill}
      d={`M${side * in_} ${top}H${side * joint}V${tip - lead}L${side * joint * 0.94} ${tip}H${side * in_}Z`}
    />
  )
}

/** A force: it ends where it acts. */
function Arrow({ at, x, length, down }: { at: number; x: number; length: number; down: boolean }) {
  if (length < 1) return null
  const way = down ? 1 : -1
  return (
    <path
      className="press-force"
      d={`M${x} ${at - way * length}V${at}M${x - 4} ${at - way * 7}L${x} ${at}L${x + 4} ${at - way * 7}`}
    />
  )
}
