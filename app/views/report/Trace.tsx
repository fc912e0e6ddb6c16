import { useId } from 'react'
import { jobOf, type Scenario, shownAs } from '../../../sim/index.ts'
import { effortsOf } from '../../read/effort/effort.ts'
import { acrossUnit, type Over } from '../../read/effort/over.ts'
import { marksOf } from '../../read/traces/series.ts'
import { effortUnit, type UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { formatFigure, formatPlain, withUnit } from '../../ui/format.ts'
import { BOX, type Ground, lineOf, outline, type Place, placeIn, ringsOf, ticksOf } from './trace.ts'

interface Props {
  scenario: Scenario
  run: RunView | undefined
  /** The same on the axis beside. */
  beside?: RunView | undefined
  ground: Ground
  /** What it is drawn over; null: over time. */
  over?: Over | null
  units: UnitSystem
}

const RIGHT = BOX.width - BOX.right
const BOTTOM = BOX.height - BOX.bottom

/** The effort over time, or over what the job is told by, with what it is held against, drawn to be printed. */
export function Trace({ scenario, run, beside, ground, over = null, units }: Props) {
  const unit = effortUnit(scenario, units)
  const place = placeIn(ground)
  return (
    <svg
      className="report-trace"
      viewBox={`0 0 ${BOX.width} ${BOX.height}`}
      role="img"
      aria-label={summaryOf(scenario, [run, beside], over, units)}
    >
      <Window ground={ground} place={place} />
      {ticksOf(ground.top, unit).map((effort) => (
        <text key={effort} className="tick end" x={BOX.left - 4} y={place.y(effort) + 4}>
          {formatPlain(unit.toShown(effort), 3)}
        </text>
      ))}
      {ground.figures.map(({ at, text }, index) => (
        <g key={at}>
          <path className="axis" d={`M${place.x(at)} ${BOTTOM}v3`} />
          <text
            className={index === ground.figures.length - 1 ? 'tick end' : 'tick middle'}
            x={index === ground.figures.length - 1 ? Math.min(RIGHT, place.x(at) + 12) : place.x(at)}
            y={BOX.height - 2}
          >
            {text}
          </text>
        </g>
      ))}
      <path className="axis" d={`M${BOX.left} ${BOX.top}V${BOTTOM}H${RIGHT}`} />
      <text className="tick" x={2} y={9}>
        {unit.symbol}
      </text>
      {run && !over && <Marks marks={marksIn(scenario, run)} x={place.x} />}
      {run && <Line run={run} over={over} place={place} />}
      {beside && <Beside run={beside} over={over} place={place} />}
    </svg>
  )
}

interface LineProps {
  run: RunView
  over: Over | null
  place: Place
}

function Line({ run, over, place }: LineProps) {
  const line = lineOf(run, over)
  return line && <path className="line" d={outline(place, line.across, line.effort, run.rows)} />
}

/** The axis beside: a thinner line with rings along it. */
function Beside({ run, over, place }: LineProps) {
  const line = lineOf(run, over)
  if (!line) return null
  return (
    <>
      <path className="line-beside" d={outline(place, line.across, line.effort, run.rows)} />
      {ringsOf(place, line.across, line.effort, run.rows).map(({ x, y }) => (
        <circle key={x} className="line-ring" cx={x} cy={y} r="2.4" />
      ))}
    </>
  )
}

/** Hatched where there is too little or too much; blank between. */
function Window({ ground: { edges, words, top, empty }, place: { x, y } }: { ground: Ground; place: Place }) {
  const hatch = useId()
  const { least, most } = edges
  const path = (points: Ground['edges']['least']) =>
    points.map(({ across, effort }) => `${x(across).toFixed(1)} ${y(effort).toFixed(1)}`).join('L')
  const beyond = (points: Ground['edges']['least'], end: number) =>
    `M${x(points[0]!.across)} ${end}L${path(points)}V${end}Z`
  const [first, last] = [least[0], least.at(-1)]
  const lowest = Math.min(...most.map(({ effort }) => effort))
  return (
    <>
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="hatch" d="M0 0V5" />
        </pattern>
      </defs>
      {first && last && (
        <>
          <path className="beyond" d={beyond(least, BOTTOM)} style={{ fill: `url(#${hatch})` }} />
          <path className="edge" d={`M${path(least)}`} />
          <text {...besideOf(least, x)} y={Math.min(BOTTOM - 3, y(last.effort) + 11)}>
            {words.least}
          </text>
        </>
      )}
      {most.length > 0 && lowest < top && (
        <>
          <path className="beyond" d={beyond(most, BOX.top)} style={{ fill: `url(#${hatch})` }} />
          <path className="edge" d={`M${path(most)}`} />
          <text {...besideOf(most, x)} y={Math.max(BOX.top + 9, y(most.at(-1)!.effort) - 3)}>
            {empty ? `${words.most}: no window` : words.most}
          </text>
        </>
      )}
    </>
  )
}

interface Mark {
  time: number
  label: string
}

/** Words of an edge stand at its end, or before its beginning where that is late, as lines end in its window there. */
function besideOf(edge: Ground['edges']['least'], x: (across: number) => number) {
  const [first, last] = [x(edge[0]!.across), x(edge.at(-1)!.across)]
  return { className: 'end', x: first > (BOX.left + RIGHT) / 2 ? first - 3 : last - 2 }
}

/** What happens meanwhile, and what went wrong. */
function marksIn(scenario: Scenario, run: RunView): Mark[] {
  const marks = marksOf(scenario, { [run.strategy]: run })
  const arms = shownAs(scenario).sheet.course.list?.path === 'arm.moves'
  const others = arms ? [] : shownAs(scenario).events(scenario)
  const wrong = run.result && jobOf(scenario).moments.wrong(run.result)
  const all = [
    ...marks,
    ...others.map(({ start, words }) => ({ time: start, label: words.split(' ').slice(-2).join(' ') })),
    ...(wrong && run.result ? [{ time: wrong.time, label: shownAs(scenario).fate(run.result) }] : []),
  ]
  const known = all.filter(({ time }) => time <= scenario.run.duration)
  return known.filter(
    (mark, n) => !known.slice(0, n).some(({ time, label }) => time === mark.time && label === mark.label),
  )
}

/** Length of a letter, about. */
const LETTER = 5.2

/** Words that would run into those before them are left out; their lines stay. */
function Marks({ marks, x }: { marks: Mark[]; x(time: number): number }) {
  const placed: { mark: Mark; at: number; shown: boolean }[] = []
  let taken = Number.NEGATIVE_INFINITY
  for (const mark of marks.toSorted((a, b) => a.time - b.time)) {
    const half = (mark.label.length * LETTER) / 2
    const at = Math.min(RIGHT - half, Math.max(BOX.left + half, x(mark.time)))
    const shown = at - half > taken
    if (shown) taken = at + half
    placed.push({ mark, at, shown })
  }
  return placed.map(({ mark: { time, label }, at, shown }) => (
    <g key={`${time} ${label}`}>
      <path className="mark" d={`M${x(time)} ${BOX.top}V${BOTTOM}`} />
      {shown && (
        <text className="tick middle" x={at} y={BOX.top - 4}>
          {label}
        </text>
      )}
    </g>
  ))
}

/** The trace in words: highest and last of each line. */
function summaryOf(scenario: Scenario, runs: (RunView | undefined)[], over: Over | null, units: UnitSystem): string {
  const { toShown, symbol } = effortUnit(scenario, units)
  const title = `${shownAs(scenario).effort} ${over ? over.title : 'over time'}`
  const said = (value: number) => withUnit(formatFigure(toShown(value)), symbol)
  const told = runs.flatMap((run) => {
    const [effort] = run ? effortsOf(run) : []
    if (!run || !effort) return []
    const own = effort.subarray(0, run.rows)
    const most = own.reduce((high, value) => Math.max(high, value), 0)
    const whose = run.axis === undefined ? '' : `On ${run.axis}: `
    return [
      `${whose}${whose ? 'up' : 'Up'} to ${said(most)}${ended(run, over, units)}, at the end ${said(own.at(-1) ?? 0)}.`,
    ]
  })
  return told.length > 0 ? `${title}. ${told.join(' ')}` : `${title}: not run yet.`
}

function ended(run: RunView, over: Over | null, units: UnitSystem): string {
  if (!over) return ''
  const { toShown, symbol } = acrossUnit(over, units)
  return `, to ${withUnit(formatFigure(toShown(over.across(run)[run.rows - 1] ?? 0)), symbol)}`
}
