/** The grip force of all strategies against the window, over time: large, with nothing but what a customer asks. */
import { memo, useId, useMemo } from 'react'
import type { Scenario } from '../../../sim/index.ts'
import { lineStyleOf } from '../../read/stage/moments.ts'
import { stretchCurve } from '../../read/stage/TimeBar.tsx'
import { quantityUnit, type UnitSystem } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { roundTimes, timeTexts } from '../../ui/chart/ticks.ts'
import type { TimeLens } from '../../ui/timeLens.ts'
import { Hatch } from './Hatch.tsx'
import { limitWords } from './limitWords.ts'
import { type Room, roomOf, type Story, type StoryMark, storyOf } from './story.ts'

interface ForceStoryProps {
  runs: RunView[]
  scenario: Scenario
  axis: TimeLens
  /** How the play is slowed, if there is one. */
  lens?: TimeLens
  units: UnitSystem
  width: number
  height: number
  /** Size of its type [px]. */
  text: number
  /** Up to where the lines are drawn strongly [s]; null: all the way, without a cursor. */
  time: number | null
}

export const ForceStory = memo(function ForceStory(props: ForceStoryProps) {
  const { runs, scenario, axis, lens, units, width, height, text, time } = props
  const past = useId()
  const unit = useMemo(() => quantityUnit('force', units), [units])
  const room = useMemo(() => roomOf({ width, height }, text), [width, height, text])
  const story = useMemo(
    () => storyOf({ runs, scenario, axis, unit, room, text }),
    [runs, scenario, axis, unit, room, text],
  )
  const now = time === null ? room.width : axis.toDisplay(time) * room.width
  return (
    <svg width={width} height={height} className="story" fontSize={text} aria-hidden="true">
      <g transform={`translate(${room.left} ${room.top})`}>
        <Ground {...{ scenario, axis, lens, story, room, text, units }} />
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

interface GroundProps extends Pick<ForceStoryProps, 'scenario' | 'axis' | 'lens' | 'text' | 'units'> {
  story: Story
  room: Room
}

/** Window, axes, moves of the arm, and where the play is slowed. */
const Ground = memo(function Ground({ scenario, axis, lens, story, room, text, units }: GroundProps) {
  const { width, height } = room
  const times = useMemo(
    () => roundTimes(0, scenario.run.duration, axis, width, 3.6 * text),
    [scenario, axis, width, text],
  )
  const texts = timeTexts(times)
  const stretch = useMemo(
    () => lens && stretchCurve(lens, axis, width, height + 0.9 * text, 0.8 * text),
    [lens, axis, width, height, text],
  )
  return (
    <g>
      <WindowBand scenario={scenario} story={story} room={room} text={text} units={units} />
      {story.figures.map(({ y, text: figure }) => (
        <text key={figure} x={-0.4 * text} y={y + 0.33 * text} textAnchor="end" className="story-note">
          {figure}
        </text>
      ))}
      <path d={`M0 0V${height}H${width}`} className="story-axis" />
      {stretch && (
        <path d={`M0 ${height + 0.9 * text}${stretch}L${width} ${height + 0.9 * text}Z`} className="story-stretch" />
      )}
      <Moves scenario={scenario} axis={axis} room={room} text={text} />
      {times.map((time, i) => (
        <text
          key={time}
          x={axis.toDisplay(time) * width}
          y={height + 2.05 * text}
          textAnchor={i === 0 ? 'start' : 'middle'}
          className="story-note"
        >
          {texts[i]}
          {i === times.length - 1 && ' s'}
        </text>
      ))}
    </g>
  )
})

/** The force window: a pale band between hatched edges, each with what lies beyond it. */
function WindowBand({
  scenario,
  story: { least, most },
  room: { width, height },
  text,
  units,
}: Omit<GroundProps, 'axis' | 'lens'>) {
  const words = limitWords(scenario, units)
  const hatch = useId()
  const strip = 0.5 * text
  return (
    <>
      <Hatch id={hatch} text={text} />
      {(most ?? 0) < (least ?? height) && (least !== null || most !== null) && (
        <rect y={most ?? 0} width={width} height={(least ?? height) - (most ?? 0)} className="story-band" />
      )}
      {most !== null && (
        <>
          <rect y={most - strip} width={width} height={strip} fill={`url(#${hatch})`} />
          <path d={`M0 ${most}H${width}`} className="story-edge" />
          <text x={width - 0.4 * text} y={most - 0.4 * text} textAnchor="end" className="story-note">
            {words.most}
          </text>
        </>
      )}
      {least !== null && (
        <>
          <rect y={least} width={width} height={strip} fill={`url(#${hatch})`} />
          <path d={`M0 ${least}H${width}`} className="story-edge" />
          <text x={width - 0.4 * text} y={least + 1.15 * text} textAnchor="end" className="story-note">
            {words.least}
          </text>
        </>
      )}
    </>
  )
}

function Moves({
  scenario,
  axis,
  room: { width, height },
  text,
}: Pick<GroundProps, 'scenario' | 'axis' | 'room' | 'text'>) {
  return scenario.arm.moves.map(({ start, duration }) => {
    const x = axis.toDisplay(start) * width
    const long = axis.toDisplay(start + duration) * width - x
    return (
      <g key={start}>
        <rect x={x} y={height + 1} width={long} height={text} className="story-move" />
        {long > 5 * text && (
          <text x={x + long / 2} y={height + 0.8 * text} textAnchor="middle" className="story-inside">
            arm moves
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
