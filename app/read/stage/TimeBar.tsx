/** The time bar: where the play is slowed, what happened on each lane, and the cursor to drag. */
import { type KeyboardEvent, memo, type PointerEvent, useMemo } from 'react'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { GUTTERS } from '../../ui/chart/types.ts'
import { formatFigure } from '../../ui/format.ts'
import type { TimeLens } from '../../ui/timeLens.ts'
import { dashOf, MOMENT_WORDS, type Moment, momentsOf, nameOf } from './moments.ts'
import { ticksOf } from './ticks.ts'
import { type Play, togglePlay } from './usePlay.ts'
import './stage.css'

interface TimeBarProps {
  runs: RunView[]
  /** Places on the bar. */
  axis: TimeLens
  play: Play
  duration: number
  width: number
}

/** Heights [px]: labels, curve of the stretch with the ticks, a row a strategy. */
const LABELS = 15
const CURVE = 24
const ROW = 17
/** Room left and right of the bar, as beside the charts under it, so that all cursors stand in line. */
const { left: GUTTER, right: END } = GUTTERS
/** Length of a strategy's line style. */
const STYLE = 26

export function TimeBar({ runs, axis, play, duration, width }: TimeBarProps) {
  const bar = Math.max(60, width - GUTTER - END)
  const height = LABELS + CURVE + ROW * Math.max(1, runs.length) + 6
  const { set } = useView.getState()

  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointermove' && !event.currentTarget.hasPointerCapture(event.pointerId)) return
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    const left = event.currentTarget.getBoundingClientRect().left + GUTTER
    set({ time: axis.toTime((event.clientX - left) / bar), playing: false })
  }

  return (
    <TimeSlider axis={axis} play={play} duration={duration} onDrag={drag}>
      <svg width={width} height={height} className="time-bar-drawing" aria-hidden="true">
        <g transform={`translate(${GUTTER} 0)`}>
          <Stretch lens={play.lens} axis={axis} duration={duration} bar={bar} />
          <Recorded runs={runs} axis={axis} duration={duration} bar={bar} />
          {runs.map((run, row) => (
            <MomentRow key={nameOf(run)} run={run} axis={axis} bar={bar} y={LABELS + CURVE + ROW * (row + 0.5) + 2} />
          ))}
          <Cursor axis={axis} bar={bar} height={height} />
        </g>
      </svg>
    </TimeSlider>
  )
}

interface TimeSliderProps {
  axis: TimeLens
  play: Play
  duration: number
  onDrag(event: PointerEvent<HTMLDivElement>): void
  children: React.ReactNode
}

export function TimeSlider({ axis, play, duration, onDrag, children }: TimeSliderProps) {
  const time = useView((state) => (state.playing ? null : state.time))
  return (
    <div
      className="time-bar"
      role="slider"
      tabIndex={0}
      aria-label="Time"
      aria-valuemin={0}
      aria-valuemax={duration}
      aria-valuenow={time ?? 0}
      aria-valuetext={time === null ? 'playing' : `${formatFigure(time, 4)} seconds`}
      onPointerDown={onDrag}
      onPointerMove={onDrag}
      onKeyDown={(event) => onKey(event, axis, play)}
    >
      {children}
    </div>
  )
}

/** Share of the bar that an arrow key and a page key move. */
const STEP = 1 / 400
const PAGE = 1 / 20

/** Arrow keys step, Home and End go to the ends, space plays. */
export function onKey(event: KeyboardEvent | globalThis.KeyboardEvent, axis: TimeLens, play: Play) {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const { time, set } = useView.getState()
  const size = event.shiftKey ? PAGE : STEP
  const steps: Record<string, number> = {
    ArrowLeft: -size,
    ArrowDown: -size,
    ArrowRight: size,
    ArrowUp: size,
    PageDown: -PAGE,
    PageUp: PAGE,
    Home: -1,
    End: 1,
  }
  const step = steps[event.key]
  if (event.key === ' ') {
    togglePlay(play)
  } else if (step !== undefined) {
    set({ time: axis.toTime(axis.toDisplay(time) + step), playing: false })
  } else return
  event.preventDefault()
}

interface StretchProps {
  lens: TimeLens
  axis: TimeLens
  duration: number
  bar: number
}

/** How much the play is slowed as a curve above the axis, and ticks as dense as time is on the bar. */
const Stretch = memo(function Stretch({ lens, axis, duration, bar }: StretchProps) {
  const ticks = useMemo(() => ticksOf(axis, duration, bar), [axis, duration, bar])
  const curve = useMemo(() => stretchCurve(lens, axis, bar), [lens, axis, bar])
  const foot = LABELS + CURVE
  return (
    <g>
      {curve && <path d={`M0 ${foot}${curve}L${bar} ${foot}Z`} className="time-stretch" />}
      <line x1={0} y1={foot} x2={bar} y2={foot} className="time-axis" />
      {ticks.map(({ time, x, level, label }) => (
        <g key={time}>
          <line x1={x} y1={foot} x2={x} y2={foot - (label ? 9 : Math.max(3, 7 - level))} className="time-tick" />
          {label && (
            <text x={x} y={11} textAnchor={x < 8 ? 'start' : x > bar - 14 ? 'end' : 'middle'} className="time-label">
              {label}
              {time === duration && ' s'}
            </text>
          )}
        </g>
      ))}
    </g>
  )
})

/**
 * How much the play is slowed, over the bar: the root of it, so that weak slowing shows beside strong; null without any. It
 * stands on `foot` and is at most `tall` high [px].
 */
export function stretchCurve(
  lens: TimeLens,
  axis: TimeLens,
  bar: number,
  foot = LABELS + CURVE,
  tall = CURVE - 6,
): string | null {
  const samples = Math.max(1, Math.round(bar))
  const rates = Array.from({ length: samples + 1 }, (_, i) => lens.rate(axis.toTime(i / samples)))
  const most = Math.max(...rates)
  const least = Math.min(...rates)
  if (most < 1.01 * least) return null
  const height = (rate: number) => 2 + (tall - 2) * Math.sqrt((rate - least) / (most - least))
  return rates.map((rate, i) => `L${((i / samples) * bar).toFixed(1)} ${(foot - height(rate)).toFixed(1)}`).join('')
}

/** What is not simulated yet. */
function Recorded({ runs, axis, duration, bar }: Omit<TimeBarProps, 'width' | 'play'> & { bar: number }) {
  return runs.map((run, row) => {
    const { traces, rows } = run
    const end = traces && rows > 0 ? traces.time[rows - 1]! : 0
    if (end >= 0.99 * duration) return null
    const from = axis.toDisplay(end) * bar
    const y = LABELS + CURVE + ROW * row + 4
    return <rect key={nameOf(run)} x={from} y={y} width={bar - from} height={ROW - 4} className="time-missing" />
  })
}

interface MomentRowProps {
  run: RunView
  axis: TimeLens
  bar: number
  y: number
}

const LETTER = 5.9

/** Marks of one strategy, each with its word where there is room before the next. */
const MomentRow = memo(function MomentRow({ run, axis, bar, y }: MomentRowProps) {
  const { strategy, scenario } = run
  const moments = momentsOf(run).map((moment) => ({ ...moment, x: axis.toDisplay(moment.time) * bar }))
  return (
    <g data-strategy={strategy} className="time-row">
      <line x1={-STYLE - 8} y1={y} x2={-8} y2={y} strokeDasharray={dashOf(run)} className="time-style" />
      <line x1={0} y1={y} x2={bar} y2={y} className="time-lane" />
      <text x={bar + 6} y={y + 4} className="time-name">
        {nameOf(run)}
      </text>
      {scenario.arm.moves.map(({ start, duration }) => {
        const x = axis.toDisplay(start) * bar
        return (
          <rect
            key={start}
            x={x}
            y={y - 5}
            width={axis.toDisplay(start + duration) * bar - x}
            height={10}
            className="time-move"
          >
            <title>arm move</title>
          </rect>
        )
      })}
      {moments.map((moment, i) => {
        const word = MOMENT_WORDS[moment.kind]
        const room = (moments[i + 1]?.x ?? bar) - moment.x
        return (
          <g key={moment.kind} transform={`translate(${moment.x.toFixed(1)} ${y})`}>
            <title>{`${word} at ${formatFigure(moment.time, 4)} s`}</title>
            <MomentMark moment={moment} />
            {room > word.length * LETTER + 16 && (
              <text x={8} y={4} className="time-word">
                {word}
              </text>
            )}
          </g>
        )
      })}
    </g>
  )
})

/** A sign of its own for each kind of moment. */
function MomentMark({ moment: { kind } }: { moment: Moment }) {
  switch (kind) {
    case 'contact':
      return <circle r={3.6} className="time-mark-open" />
    case 'engaged':
      return <path d="M0 -4.6L4.6 0L0 4.6L-4.6 0Z" className="time-mark" />
    case 'peak':
      return <path d="M0 -4.6L4.8 4H-4.8Z" className="time-mark" />
    case 'crack':
      return <path d="M-4 -4L4 4M4 -4L-4 4" className="time-mark-damage" />
    case 'jam':
    case 'strip':
      return <path d="M-4.6 -3L0 3L4.6 -3M-4.6 1.5H4.6" className="time-mark-damage" />
    case 'tear':
      return <path d="M-5.5 0H-2L-0.5 -4M5.5 0H2L0.5 4" className="time-mark-damage" />
    case 'sag':
      return <path d="M-5 -2.5Q0 6.5 5 -2.5" className="time-mark-line" />
    case 'mark':
      return <path d="M0 -4.6L4.6 0L0 4.6L-4.6 0Z" className="time-mark-damage" />
    case 'slip':
      return <path d="M-4 -3.5L0 0.5L4 -3.5M-4 0.5L0 4.5L4 0.5" className="time-mark-line" />
    case 'loose':
      return <path d="M-5 -4V4M5 -4V4M-2 0A2 2 0 1 0 2 0A2 2 0 1 0 -2 0" className="time-mark-line" />
    case 'drop':
      return <path d="M0 -5V3M-3.6 0L0 4.6L3.6 0" className="time-mark-line" />
    case 'unstable':
      return <path d="M-5 0L-2.5 -4.5L0 4.5L2.5 -4.5L5 0" className="time-mark-line" />
  }
}

function Cursor({ axis, bar, height }: { axis: TimeLens; bar: number; height: number }) {
  const time = useView((state) => state.time)
  const x = axis.toDisplay(time) * bar
  return (
    <g transform={`translate(${x.toFixed(2)} 0)`} className="time-cursor">
      <line y1={LABELS + 2} y2={height} />
      <path d={`M-5 ${LABELS - 3}H5V${LABELS + 3}L0 ${LABELS + 9}L-5 ${LABELS + 3}Z`} />
    </g>
  )
}
