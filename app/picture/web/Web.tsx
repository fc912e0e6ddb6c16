/**
 * A web in section: the line's roll with the one that presses on it, gauge roll, idler, and the roll that the axis drives. Rolls are to one
 * scale and turn with the run; the span is drawn shortened, and slack hangs as deep as it would in the whole of it, as far as there is room.
 */
import { useId } from 'react'
import { type Scenario, webIn } from '../../../sim/index.ts'
import { Defs } from '../Defs.tsx'
import { PaintContext, paintOf } from '../paint.ts'
import { pathOf, sagOf, straight } from './belt.ts'
import { DrivenRoll, Idler, SolidRoll } from './Rolls.tsx'
import { sizesOf } from './sizes.ts'
import '../grip/picture.css'
import './web.css'

export interface WebFrame {
  /** Turn of the roll [rad], length that the line has handed out [m]. */
  travel: number
  way: number
  /** At the gauge roll and at the driven roll [N]; length that hangs slack and radius of the roll [m]. */
  tension: number
  rollTension: number
  slack: number
  radius: number
  torn: boolean
}

interface Props {
  scenario: Scenario
  frame: WebFrame
  width: number
  height: number
  /** Tension for which an arrow is as long as it may be [N]. */
  mostTension: number
  label: string
}

/** Between two marks on the web, and the part of it that is mark [px]. */
const PITCH = 46
const MARK = 5
/** The straight in which the web hangs, and in which it is shown torn. */
const HANGING = 1

export function Web({ scenario, frame, width, height, mostTension, label }: Props) {
  const picture = useId().replace(/\W/g, '')
  const { span, roll } = webIn(scenario)
  const sizes = sizesOf(scenario, Math.max(roll.radius, frame.radius), width, height)
  const { scale, line, nip, gauge, idler } = sizes
  const discs = [line, gauge, idler, sizes.roll]
  const paint = paintOf(picture)
  const way = frame.way * scale
  const sag = Math.min(0.34 * height, sagOf(frame.slack, span.length) * scale)
  const whole = pathOf(discs, HANGING, sag)
  const [from, to] = straight(gauge, idler)
  const [last] = straight(idler, sizes.roll)
  return (
    <PaintContext value={paint}>
      <svg
        className="picture web"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={label}
      >
        <Defs picture={picture} line={1} />
        <path className="web-band" d={`M0 ${line.y - line.r}H${line.x}`} />
        {frame.torn ? (
          <Torn from={from} to={to} discs={discs} height={height} />
        ) : (
          <path className="web-band" d={whole} />
        )}
        {!frame.torn && (
          <path
            className="web-mark"
            d={whole}
            strokeDasharray={`${MARK} ${PITCH - MARK}`}
            strokeDashoffset={(-way % PITCH).toFixed(2)}
          />
        )}
        {!frame.torn && sag < 0.5 && <Shortened x={(from.x + to.x) / 2} y={(from.y + to.y) / 2} />}
        <SolidRoll disc={nip} angle={-way / nip.r} fill={paint.rubber} />
        <SolidRoll disc={line} angle={way / line.r} fill={paint.body} />
        <Idler disc={gauge} angle={frame.torn ? 0 : way / gauge.r} />
        <Idler disc={idler} angle={frame.torn ? 0 : -way / idler.r} />
        <DrivenRoll
          disc={sizes.roll}
          angle={frame.travel}
          winds={roll.kind === 'winds'}
          runout={Math.min(0.06 * sizes.roll.r, roll.runout * scale)}
        />
        <Cell x={gauge.x} y={gauge.y + gauge.r} />
        <Pull x={gauge.x} y={gauge.y - gauge.r} length={lengthOf(frame.tension, mostTension, height)} />
        {!frame.torn && (
          <Pull
            x={(last.x + sizes.roll.x) / 2}
            y={last.y - 0.16 * height}
            length={lengthOf(frame.rollTension, mostTension, height)}
            along
          />
        )}
        <Words height={height} {...sizes} winds={roll.kind === 'winds'} />
      </svg>
    </PaintContext>
  )
}

const lengthOf = (tension: number, most: number, height: number) => (most > 0 ? (0.24 * height * tension) / most : 0)

interface TornProps {
  from: { x: number; y: number }
  to: { x: number; y: number }
  discs: Parameters<typeof pathOf>[0]
  height: number
}

/** Two ends that hang down, each with a ragged edge. */
function Torn({ from, to, discs, height }: TornProps) {
  const [line, gauge, idler, roll] = discs as [
    TornProps['discs'][0],
    TornProps['discs'][0],
    TornProps['discs'][0],
    TornProps['discs'][0],
  ]
  const drop = 0.26 * height
  const ragged = 'l2 -4l2 4l2 -4'
  return (
    <g>
      <path className="web-band" d={pathOf([line, gauge], -1, 0)} />
      <path className="web-band" d={`M${gauge.x} ${gauge.y - gauge.r}L${from.x} ${from.y}q16 4 18 ${drop}${ragged}`} />
      <path className="web-band" d={pathOf([idler, roll], -1, 0)} />
      <path className="web-band" d={`M${idler.x} ${idler.y + idler.r}L${to.x} ${to.y}q-14 4 -18 ${drop}${ragged}`} />
      <path className="web-tear" d={`M${(from.x + to.x) / 2} ${from.y - 14}l-5 9l8 4l-6 10l7 4l-5 9`} />
    </g>
  )
}

/** The break of a length that is drawn shortened, by ISO 128: two strokes across it with nothing between. */
function Shortened({ x, y }: { x: number; y: number }) {
  return (
    <g>
      <path className="web-gap" d={`M${x - 3} ${y}H${x + 3}`} />
      <path className="pic-thin pic-line" d={`M${x - 6} ${y + 7}l5 -14M${x + 1} ${y + 7}l5 -14`} />
    </g>
  )
}

/** The gauge under its roll, on firm ground. */
function Cell({ x, y }: { x: number; y: number }) {
  const paint = paintOf('')
  return (
    <g>
      <path className="pic-edge pic-tone-nut" d={`M${x - 5} ${y + 2}h10l4 12h-18z`} data-fill={paint.nut} />
      <path className="pic-wide pic-line" d={`M${x - 15} ${y + 14}h30`} />
      <path className="pic-hatch" d={[-12, -6, 0, 6, 12].map((dx) => `M${x + dx} ${y + 14}l-5 6`).join('')} />
    </g>
  )
}

/** A tension to scale: on the gauge roll as it presses, before the driven roll along the web. */
function Pull({ x, y, length, along = false }: { x: number; y: number; length: number; along?: boolean }) {
  if (length < 1) return null
  const d = along
    ? `M${x - length / 2} ${y}h${length}m-7 -4l7 4l-7 4`
    : `M${x} ${y - 5 - length}v${length}m-4 -7l4 7l4 -7`
  return <path className="web-pull" d={d} />
}

/** From the gauge roll to the driven one, where three names stand abreast [px]. */
const ABREAST = 190

interface WordsProps extends ReturnType<typeof sizesOf> {
  height: number
  winds: boolean
}

function Words({ height, line, gauge, idler, roll, winds }: WordsProps) {
  const y = height - 6
  return (
    <g className="web-words" textAnchor="middle">
      <text x={line.x} y={y}>
        line
      </text>
      <text x={gauge.x} y={y}>
        gauge roll
      </text>
      <text x={idler.x} y={roll.x - gauge.x < ABREAST ? y - 14 : y}>
        idlers
      </text>
      <text x={roll.x} y={y}>
        {winds ? 'winding roll' : 'drawing roll'}
      </text>
    </g>
  )
}
