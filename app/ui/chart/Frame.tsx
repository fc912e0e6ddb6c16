/** What charts over any axis have in common: title, plot, cursor by key, hands, and words for those who do not see it. */
import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react'
import { UnitText } from '../Symbols.tsx'
import { timeOf, valueAt } from './data.ts'
import { follow, groupOf, type Range, type Surface, within } from './group.ts'
import { valueText } from './labels.ts'
import { type Look, Plot } from './plot.ts'
import { useHands } from './reach.ts'
import type { ChartContent, ChartSeries } from './types.ts'
import '../chart.css'

export interface FrameProps<C extends ChartContent> {
  /** With all of the axis as its range. */
  content: Omit<C, 'yRange'>
  look: Look<C>
  title: string
  /** Name of the cursor. */
  name: string
  /** px, with the axis */
  height: number
  cursor: number | null
  onCursor?: ((cursor: number) => void) | undefined
  /** Charts of the same key share what is shown, the second cursor and the pointer's line. */
  syncKey: string
  axis: Surface['axis']
  /** Share of the shown range that an arrow key moves the cursor; with Shift ten times as much. */
  keyStep: number
  /** How far one can look, if not the range [values of the axis]. */
  bounds?: Range | undefined
  /** Draws what moves at every frame past the page, until it is ended; it stands still while something is looked at closer. */
  feed?: Feed<C> | undefined
  summary: string
}

/** Hands on `draw`, which takes what has changed and the cursor, and returns what ends the feeding. */
export type Feed<C extends ChartContent> = (draw: (moving: Partial<C>, cursor: number | null) => void) => () => void

export function Frame<C extends ChartContent>(props: FrameProps<C>) {
  const { title, name, height, cursor, syncKey, axis, summary } = props
  const all = props.bounds ?? props.content.xRange
  const [from, to] = all
  const group = groupOf(syncKey)
  const window = group.use((state) => state.window)
  const mark = group.use((state) => state.mark)
  const [heights, setHeights] = useState<Range | null>(null)
  const content = useMemo(
    () => ({ ...props.content, xRange: window ? within(window, all) : props.content.xRange, yRange: heights }) as C,
    [props.content, window, heights, all],
  )
  const host = useRef<HTMLDivElement>(null)
  const plot = useRef<Plot<C>>(null)
  const now = { ...props, content, all, range: props.content.xRange }
  const latest = useRef(now)
  latest.current = now
  const summaryId = useId()
  const [surface, setSurface] = useState<Surface | null>(null)
  useHands(surface)

  useEffect(() => {
    if (!host.current) return
    plot.current = new Plot(host.current, latest.current.content, props.look, height, syncKey)
    setSurface(surfaceOf(host.current, plot.current, syncKey, () => latest.current, setHeights))
    return () => plot.current?.destroy()
  }, [syncKey, props.look])
  useEffect(() => {
    if (plot.current) plot.current.content = content
  }, [content, props.look])
  useEffect(() => {
    plot.current?.setCursors(cursor, mark)
    group.use.setState({ cursor })
  }, [cursor, mark, group, props.look])
  useEffect(() => {
    if (host.current) plot.current?.resize(host.current.clientWidth, height)
  }, [height])

  useEffect(
    () =>
      props.feed?.((moving, cursor) => {
        if (!plot.current || group.use.getState().window) return
        plot.current.content = { ...latest.current.content, ...moving }
        plot.current.setCursors(cursor, group.use.getState().mark)
      }),
    [props.feed, group],
  )

  const press = (event: KeyboardEvent) => {
    const next = keyed(event, cursor ?? from, [from, to], content, props.keyStep)
    if (next === null) return
    event.preventDefault()
    props.onCursor?.(next)
    follow(group, next, content)
  }
  const at = Math.min(to, Math.max(from, cursor ?? from))
  const told = content.series.filter((line) => line.label !== '' && !line.faint)
  const values = told.map((line) => `${line.label} ${valueText(content, line, at)}`).join(', ')
  return (
    <figure className="chart">
      <figcaption className="chart-title">
        {title} {content.unit.symbol !== '' && <UnitText symbol={content.unit.symbol} />}
      </figcaption>
      <div
        ref={host}
        className="chart-plot"
        role="slider"
        tabIndex={0}
        aria-label={`${title}: ${name}`}
        aria-describedby={summaryId}
        aria-valuemin={from}
        aria-valuemax={to}
        aria-valuenow={at}
        aria-valuetext={[`${axis.figure(at)}: ${values}`, ...extent(content.xRange, window, mark, at, axis)].join('; ')}
        aria-keyshortcuts="+ - 0 m x c"
        onKeyDown={press}
      />
      <p id={summaryId} className="sr-only">
        {summary}
      </p>
    </figure>
  )
}

/** The newest properties with what is shown of the axis; all of it, and what is shown at first, stand beside. */
type Latest<C extends ChartContent> = Omit<FrameProps<C>, 'content'> & {
  content: C
  all: Range
  range: Range
}

function surfaceOf<C extends ChartContent>(
  element: HTMLElement,
  plot: Plot<C>,
  key: string,
  latest: () => Latest<C>,
  setHeights: (heights: Range | null) => void,
): Surface {
  const group = groupOf(key)
  const lens = () => latest().content.lens
  // The group knows what is shown before the next drawing does.
  const shown = () => {
    const { window } = group.use.getState()
    return window ? within(window, latest().all) : latest().range
  }
  const even = (range: Range) => range.map((x) => lens().toDisplay(x)) as Range
  return {
    element,
    group,
    area: () => plot.area(),
    bounds: () => ({ x: even(latest().all) }),
    shown: () => ({ x: even(shown()), y: plot.heights }),
    show(view) {
      if (!view || view.y) setHeights(view?.y ?? null)
      group.use.setState({ window: view && (view.x.map((x) => lens().toTime(x)) as Range) })
    },
    pick(clientX) {
      const { left, width } = plot.area()
      const [from, to] = even(shown())
      const share = Math.min(1, Math.max(0, (clientX - left) / width))
      return lens().toTime(from + share * (to - from))
    },
    placeOf(cursor) {
      const { left, width } = plot.area()
      const [from, to] = even(shown())
      return left + ((lens().toDisplay(cursor) - from) / (to - from)) * width
    },
    cursor: () => latest().cursor,
    setCursor: (cursor) => latest().onCursor?.(cursor),
    get axis() {
      return latest().axis
    },
    read: () => readingOf(latest().title, latest().content),
  }
}

/** What is shown of the axis, and how far off the second cursor is, in words. */
function extent([from, to]: Range, window: Range | null, mark: number | null, at: number, axis: Surface['axis']) {
  const shown = window === null ? [] : [`shown from ${axis.figure(from)} to ${axis.figure(to)}`]
  return mark === null ? shown : [...shown, `to the second cursor ${axis.difference(at, mark)}`]
}

function readingOf(title: string, content: ChartContent) {
  const { unit } = content
  const at = (line: ChartSeries) => (cursor: number) => {
    const value = valueAt(timeOf(content, line), line.values, cursor)
    return value === null ? null : unit.toShown(value)
  }
  const told = content.series.filter((line) => line.label !== '' && !line.faint)
  return { title, unit: unit.symbol, lines: told.map((line) => ({ label: line.label, at: at(line) })) }
}

const STEPS: Record<string, number> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -10,
  PageUp: 10,
}

/** The value that a key asks for; steps are even on the axis as it is shown. */
export function keyed(
  event: Pick<KeyboardEvent, 'key' | 'shiftKey'>,
  now: number,
  [from, to]: Range,
  { lens, xRange }: Pick<ChartContent, 'lens' | 'xRange'>,
  size: number,
): number | null {
  if (event.key === 'Home') return from
  if (event.key === 'End') return to
  const step = STEPS[event.key]
  if (step === undefined) return null
  const span = lens.toDisplay(xRange[1]) - lens.toDisplay(xRange[0])
  const place = lens.toDisplay(now) + step * (event.shiftKey ? 10 : 1) * size * span
  const inside = Math.min(lens.toDisplay(to), Math.max(lens.toDisplay(from), place))
  return Math.min(to, Math.max(from, lens.toTime(inside)))
}
