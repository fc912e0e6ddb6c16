/** The effort of all strategies against the window, over time or over what the job is told by: large, with nothing but what a customer asks. */
import { memo, useId, useMemo } from 'react'
import { type Scenario, shownAs } from '../../../sim/index.ts'
import { limitWords } from '../../read/effort/effort.ts'
import { acrossUnit, type Over } from '../../read/effort/over.ts'
import { lineStyleOf } from '../../read/stage/moments.ts'
import { stretchCurve } from '../../read/stage/TimeBar.tsx'
import { effortUnit, type UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { roundTimes, timeTexts } from '../../ui/chart/ticks.ts'
import type { TimeLens } from '../../ui/timeLens.ts'
import { Hatch } from './Hatch.tsx'
import { type Room, roomOf, type Story, type StoryMark, storyOf } from './story.ts'

interface EffortStoryProps {
  runs: RunView[]
  scenario: Scenario
  axis: TimeLens
  /** How the play is slowed, if there is one. */
  lens?: TimeLens
  /** What it is drawn over; left out: over time. */
  over?: Over | null
  units: UnitSystem
  width: number
  height: number
  /** Size of its type [px]. */
  text: number
  /** Up to where the lines are drawn strongly [s]; null: all the way, without a cursor. */
  time: number | null
}

export const EffortStory = memo(function EffortStory(props: EffortStoryProps) {
  const { runs, scenario, axis, lens, over = null, units, width, height, text, time } = props
  const past = useId()
  const unit = useMemo(() => effortUnit(scenario, units), [scenario, units])
  const way = useMemo(() => over && { over, unit: acrossUnit(over, units) }, [over, units])
  const room = useMemo(() => roomOf({ width, height }, text), [width, height, text])
  const story = useMemo(
    () => storyOf({ runs, scenario, axis, unit, room, text, over: way }),
    [runs, scenario, axis, unit, room, text, way],
  )
  const now = time === null ? room.width : axis.toDisplay(time) * room.width
  return (
    <svg width={width} height={height} className="story" fontSize={text} aria-hidden="true">
      <g transform={`translate(${room.left} ${room.top})`}>
        <Ground {...{ scenario, axis, lens, over, story, room, text, units }} />
        <clipPath id={past}>
          <rect x={-text} y={-text} width={now + text} height={room.height + 2 * text} />
        </clipPath>
        {time !== null && <Lines story={story} text={text} faint />}
        <g clipPath={`url(#${past})`}>
          <Lines story={story} text={text} />
        </g>
        {story.marks.map((mark) => (
          <Fate key={mark.id} mark={mark} room={room} text={text} />
        ))}
        <Names story={story} x={room.width + 0.5 * text} />
        {time !== null && <path d={`M${now.toFixed(2)} 0V${room.height}`} className="story-now" />}
      </g>
    </svg>
  )
})

interface GroundProps extends Pick<EffortStoryProps, 'scenario' | 'axis' | 'lens' | 'over' | 'text' | 'units'> {
  story: Story
  room: Room
}

/** Window, axes, what happens meanwhile, and where the play is slowed. */
const Ground = memo(function Ground({ scenario, axis, lens, over, story, room, text, units }: GroundProps) {
  const { width, height } = room
  const across = useMemo(
    () => (over ? story.across : timesOf(scenario, axis, width, text)),
    [over, story, scenario, axis, width, text],
  )
  const symbol = over ? acrossUnit(over, units).symbol : 's'
  const stretch = useMemo(
    () => lens && stretchCurve(lens, axis, width, height + 0.9 * text, 0.8 * text),
    [lens, axis, width, height, text],
  )
  return (
    <g>
      <WindowBand {...{ scenario, over, story, room, text, units }} />
      {story.figures.map(({ y, text: figure }) => (
        <text key={figure} x={-0.4 * text} y={y + 0.33 * text} textAnchor="end" className="story-note">
          {figure}
        </text>
      ))}
      <path d={`M0 0V${height}H${width}`} className="story-axis" />
      {stretch && (
        <path d={`M0 ${height + 0.9 * text}${stretch}L${width} ${height + 0.9 * text}Z`} className="story-stretch" />
      )}
      {!over && <Events scenario={scenario} axis={axis} room={room} text={text} />}
      {across.map(({ x, text: figure }, i) => (
        <text
          key={figure}
          x={x}
          y={height + 2.05 * text}
          textAnchor={i === 0 ? 'start' : 'middle'}
          className="story-note"
        >
          {figure}
          {i === across.length - 1 && ` ${symbol}`}
        </text>
      ))}
    </g>
  )
})

function timesOf(scenario: Scenario, axis: TimeLens, width: number, text: number): Story['across'] {
  const times = roundTimes(0, scenario.run.duration, axis, width, 3.6 * text)
  const texts = timeTexts(times)
  return times.map((time, i) => ({ x: axis.toDisplay(time) * width, text: texts[i]! }))
}

const pathOf = (points: Story['least']) => points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')

/** The window: a pale band between hatched edges, each with what lies beyond it. */
function WindowBand({
  scenario,
  over,
  story: { least, most },
  room: { width, height },
  text,
  units,
}: Omit<GroundProps, 'axis' | 'lens'>) {
  const words = over ? { least: over.below, most: over.above } : limitWords(scenario, units)
  const hatch = useId()
  return (
    <>
      <Hatch id={hatch} text={text} />
      {!isEmpty(least, most) && <path d={bandOf(least, most, width, height)} className="story-band" />}
      <Edge points={most} words={words.most} up {...{ hatch, text, width }} />
      <Edge points={least} words={words.least} up={false} {...{ hatch, text, width }} />
    </>
  )
}

/** There is no edge, or what is too little at either end is too much there. */
function isEmpty(least: Story['least'], most: Story['most']): boolean {
  if (least.length === 0 || most.length === 0) return least.length === most.length
  return most[0]!.y >= least[0]!.y || most.at(-1)!.y >= least.at(-1)!.y
}

/** Between the edges, or from the one there is to the end of the plot. */
function bandOf(least: Story['least'], most: Story['most'], width: number, height: number): string {
  const from = Math.max(0, least[0]?.x ?? 0, most[0]?.x ?? 0)
  const to = least.at(-1)?.x ?? most.at(-1)?.x ?? width
  const lower =
    least.length > 0
      ? least
      : [
          { x: from, y: height },
          { x: to, y: height },
        ]
  const upper =
    most.length > 0
      ? most.map(({ x, y }) => ({ x: Math.max(from, x), y }))
      : [
          { x: from, y: 0 },
          { x: to, y: 0 },
        ]
  return `M${pathOf(lower)}L${pathOf(upper.toReversed())}Z`
}

interface EdgeProps {
  points: Story['least']
  words: string | null
  /** What lies beyond it is above. */
  up: boolean
  hatch: string
  text: number
  /** Of the plot. */
  width: number
}

function Edge({ points, words, up, hatch, text, width }: EdgeProps) {
  if (points.length === 0) return null
  const strip = (up ? -0.5 : 0.5) * text
  const beyond = points.map(({ x, y }) => ({ x, y: y + strip })).toReversed()
  return (
    <>
      <path d={`M${pathOf(points)}L${pathOf(beyond)}Z`} fill={`url(#${hatch})`} />
      <path d={`M${pathOf(points)}`} className="story-edge" />
      {words && <Beyond {...{ points, words, up, text, width }} />}
    </>
  )
}

/** What lies beyond an edge, clear of it: at its end, or at its beginning where that is late, as lines end in its window there. */
function Beyond({ points, words, up, text, width }: Omit<EdgeProps, 'hatch' | 'words'> & { words: string }) {
  const [first, last] = [points[0]!, points.at(-1)!]
  const late = first.x > 0.5 * width
  const x = late ? first.x + 0.4 * text : last.x - 0.4 * text
  const long = LETTER * text * words.length
  const ends = [late ? first.x : last.x, late ? x + long : x - long].map((at) => heightAt(points, at))
  const y = up ? Math.min(...ends) - 0.4 * text : Math.max(...ends) + 1.15 * text
  return (
    <text x={x} y={y} textAnchor={late ? 'start' : 'end'} className="story-note">
      {words}
    </text>
  )
}

/** Width of a letter, about, in lines of type. */
const LETTER = 0.45

/** Where an edge lies at a place; before and behind it as at its ends. */
function heightAt(points: Story['least'], x: number): number {
  const after = points.findIndex((point) => point.x >= x)
  if (after < 0) return points.at(-1)!.y
  const [from, to] = [points[Math.max(0, after - 1)]!, points[after]!]
  return to.x > from.x ? from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x) : to.y
}

/** Moves of the arm, ramps of the line: in words where there is room for them. */
function Events({
  scenario,
  axis,
  room: { width, height },
  text,
}: Pick<GroundProps, 'scenario' | 'axis' | 'room' | 'text'>) {
  return shownAs(scenario)
    .events(scenario)
    .map(({ start, end, words }) => {
      const x = axis.toDisplay(start) * width
      const long = axis.toDisplay(Math.min(end, scenario.run.duration)) * width - x
      return (
        <g key={start}>
          <rect x={x} y={height + 1} width={Math.max(0, long)} height={text} className="story-move" />
          {long > (0.45 * words.length + 0.5) * text && (
            <text x={x + long / 2} y={height + 0.8 * text} textAnchor="middle" className="story-inside">
              {words}
            </text>
          )}
        </g>
      )
    })
}

const Lines = memo(function Lines({ story, text, faint = false }: { story: Story; text: number; faint?: boolean }) {
  return story.lines.map(({ id, strategy, path, rings }) => (
    <g key={id} data-strategy={strategy} opacity={faint ? 0.25 : 1}>
      <path
        d={path}
        className="story-line"
        strokeWidth={(rings.length > 0 ? 0.1 : 0.15) * text}
        strokeDasharray={lineStyleOf(strategy)}
      />
      {rings.map(({ x, y }) => (
        <circle key={x} cx={x} cy={y} r={0.3 * text} strokeWidth={0.1 * text} className="story-sign" />
      ))}
    </g>
  ))
})

const Names = memo(function Names({ story, x }: { story: Story; x: number }) {
  return story.lines.map(({ id, strategy, label, nameY }) => (
    <text key={id} x={x} y={nameY} data-strategy={strategy} className="story-name">
      {label}
    </text>
  ))
})

/** A cross in the colour of damage, a ring for what slid or fell, and when. */
const Fate = memo(function Fate({ mark, room, text }: { mark: StoryMark; room: Room; text: number }) {
  const size = 0.5 * text
  const left = mark.x > 0.62 * room.width
  return (
    <g transform={`translate(${mark.x.toFixed(1)} ${mark.y.toFixed(1)})`} data-strategy={mark.strategy}>
      {mark.damage ? (
        <path d={`M${-size} ${-size}L${size} ${size}M${-size} ${size}L${size} ${-size}`} className="story-cross" />
      ) : (
        <circle r={size} className="story-ring" />
      )}
      <text
        x={left ? -1.6 * size : 1.6 * size}
        y={(mark.damage ? 1.05 : 0.33) * text + mark.drop}
        textAnchor={left ? 'end' : 'start'}
        className={mark.damage ? 'story-fate story-damage' : 'story-fate'}
      >
        {mark.words}
      </text>
    </g>
  )
})
