import { useId } from 'react'
import { forceWindow, type Scenario } from '../../../sim/index.ts'
import { PANELS } from '../../read/traces/panels.ts'
import { marksOf, summaryOf } from '../../read/traces/series.ts'
import { quantityUnit, type UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { roundTimes, timeTexts } from '../../ui/chart/ticks.ts'
import { PLAIN_TIME } from '../../ui/chart/types.ts'
import { formatFigure, formatPlain, withUnit } from '../../ui/format.ts'
import { BOX, forceTicks, outline, type Place, placeIn, ringsOf } from './trace.ts'

interface Props {
  scenario: Scenario
  run: RunView | undefined
  /** The same on the axis beside. */
  beside?: RunView | undefined
  /** Force at the upper edge [N]. */
  top: number
  units: UnitSystem
}

const PANEL = PANELS.find(({ channel }) => channel === 'force')!
const RIGHT = BOX.width - BOX.right
const BOTTOM = BOX.height - BOX.bottom

/** Grip force over time with the force window, drawn to be printed. */
export function ForceTrace({ scenario, run, beside, top, units }: Props) {
  const unit = quantityUnit('force', units)
  const { duration } = scenario.run
  const place = placeIn(duration, top)
  const times = roundTimes(0, duration, PLAIN_TIME, RIGHT - BOX.left, 50)
  const texts = timeTexts(times)
  const traces = run?.traces
  return (
    <svg
      className="report-trace"
      viewBox={`0 0 ${BOX.width} ${BOX.height}`}
      role="img"
      aria-label={run ? summaryOf(PANEL, keyed(run), unit, keyed(beside)) : 'Grip force over time: not run yet.'}
    >
      <Window scenario={scenario} y={place.y} top={top} units={units} />
      {forceTicks(top, unit).map((force) => (
        <text key={force} className="tick end" x={BOX.left - 4} y={place.y(force) + 4}>
          {formatPlain(unit.toShown(force), 3)}
        </text>
      ))}
      {times.map((time, index) => (
        <g key={time}>
          <path className="axis" d={`M${place.x(time)} ${BOTTOM}v3`} />
          <text
            className={index === times.length - 1 ? 'tick end' : 'tick middle'}
            x={index === times.length - 1 ? Math.min(RIGHT, place.x(time) + 12) : place.x(time)}
            y={BOX.height - 2}
          >
            {texts[index]}
            {index === times.length - 1 && ' s'}
          </text>
        </g>
      ))}
      <path className="axis" d={`M${BOX.left} ${BOX.top}V${BOTTOM}H${RIGHT}`} />
      <text className="tick" x={2} y={9}>
        {unit.symbol}
      </text>
      {run && <Marks scenario={scenario} run={run} x={place.x} />}
      {run && traces && <path className="line" d={outline(place, traces.time, traces.force, run.rows)} />}
      {beside && <Beside run={beside} place={place} />}
    </svg>
  )
}

const keyed = (run: RunView | undefined) => (run ? { [run.strategy]: run } : {})

/** The axis beside: a thinner line with rings along it. */
function Beside({ run: { traces, rows }, place }: { run: RunView; place: Place }) {
  if (!traces) return null
  return (
    <>
      <path className="line-beside" d={outline(place, traces.time, traces.force, rows)} />
      {ringsOf(place, traces.time, traces.force, rows).map(({ x, y }) => (
        <circle key={x} className="line-ring" cx={x} cy={y} r="2.4" />
      ))}
    </>
  )
}

/** Hatched where the part drops and where it breaks; blank between. */
function Window({ scenario, y, top, units }: Omit<Props, 'run' | 'beside'> & { y(force: number): number }) {
  const hatch = useId()
  const { least, most } = forceWindow(scenario)
  const unit = quantityUnit('force', units)
  const words = (force: number) => withUnit(formatFigure(unit.toShown(force)), unit.symbol)
  const wide = RIGHT - BOX.left
  const empty = least !== null && most !== null && least >= most
  return (
    <>
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="hatch" d="M0 0V5" />
        </pattern>
      </defs>
      {least !== null && (
        <>
          <rect x={BOX.left} y={y(least)} width={wide} height={BOTTOM - y(least)} fill={`url(#${hatch})`} />
          <path className="edge" d={`M${BOX.left} ${y(least)}H${RIGHT}`} />
          <text className="end" x={RIGHT - 2} y={Math.min(BOTTOM - 3, y(least) + 11)}>
            drops below {words(least)}
          </text>
        </>
      )}
      {most !== null && most < top && (
        <>
          <rect x={BOX.left} y={BOX.top} width={wide} height={y(most) - BOX.top} fill={`url(#${hatch})`} />
          <path className="edge" d={`M${BOX.left} ${y(most)}H${RIGHT}`} />
        </>
      )}
      {most !== null && (
        <text className="end" x={RIGHT - 2} y={most < top ? Math.max(BOX.top + 9, y(most) - 3) : BOX.top + 9}>
          {empty ? 'no window: ' : ''}
          {most < top ? 'damaged above' : 'damaged above, off this scale,'} {words(most)}
        </text>
      )}
    </>
  )
}

function Marks({ scenario, run, x }: { scenario: Scenario; run: RunView; x(time: number): number }) {
  const marks = marksOf(scenario, { [run.strategy]: run }).filter(({ time }) => time <= scenario.run.duration)
  return marks.map(({ time, label }) => (
    <g key={`${time} ${label}`}>
      <path className="mark" d={`M${x(time)} ${BOX.top}V${BOTTOM}`} />
      <text className={x(time) > RIGHT - 30 ? 'tick end' : 'tick middle'} x={x(time)} y={BOX.top - 4}>
        {label}
      </text>
    </g>
  ))
}
