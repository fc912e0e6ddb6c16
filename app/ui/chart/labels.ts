/** Names at the ends of the lines, each with its value at the cursor, and the cursor's own line. */
import type uPlot from 'uplot'
import { formatFigure, withUnit } from '../format.ts'
import { timeOf, valueAt } from './data.ts'
import type { ChartContent, ChartSeries, Sign } from './types.ts'

const LINE = 15

interface Label {
  element: HTMLDivElement
  name: HTMLSpanElement
  value: HTMLSpanElement
}

export class Labels {
  readonly #plot: uPlot
  readonly #line = cursorLine('')
  readonly #second = cursorLine('chart-mark')
  readonly #labels: Label[] = []

  constructor(plot: uPlot) {
    this.#plot = plot
    plot.over.append(this.#line, this.#second)
  }

  /** Puts names beside the ends of their lines, pushed apart where they would touch. */
  place(content: ChartContent) {
    const named = content.series.filter(isNamed)
    while (this.#labels.length < named.length) this.#labels.push(this.#create())
    for (const [index, { element }] of this.#labels.entries())
      if (element.hidden !== index >= named.length) element.hidden = index >= named.length
    const height = this.#plot.bbox.height / devicePixelRatio
    const tall = named.length * 2 * LINE <= height
    const size = tall ? 2 * LINE : LINE
    const ends = named.map((series) => this.#endOf(content, series) - size / 2)
    for (const [index, y] of apart(ends, size, -LINE / 2, height + LINE / 2).entries()) {
      const { element, name, value } = this.#labels[index]!
      const series = named[index]!
      style(element, 'transform', `translateY(${Math.round(y)}px)`)
      write(name, series.sign ? `${SIGNS[series.sign]} ${series.label}` : series.label)
      style(name, 'color', textColour(series.color))
      if (value.hidden === tall) value.hidden = !tall
    }
  }

  /** Moves the cursors' lines and writes the values at `read`, which may be another place: that of the pointer. */
  read(content: ChartContent, cursor: number | null, mark: number | null, read: number | null) {
    this.#stand(this.#line, content, cursor)
    this.#stand(this.#second, content, mark)
    const named = content.series.filter(isNamed)
    for (const [index, series] of named.entries()) {
      const label = this.#labels[index]
      if (label)
        write(
          label.value,
          read === null ? '' : valueText(content, series, read) + differenceText(content, series, read, mark),
        )
    }
  }

  #stand(line: HTMLElement, content: ChartContent, at: number | null) {
    const x = at === null ? Number.NaN : this.#plot.valToPos(content.lens.toDisplay(at), 'x')
    const visible = x >= -1 && x <= this.#plot.bbox.width / devicePixelRatio + 1
    if (line.hidden === visible) line.hidden = !visible
    if (visible) style(line, 'transform', `translateX(${x.toFixed(1)}px)`)
  }

  #endOf(content: ChartContent, series: ChartSeries): number {
    const time = timeOf(content, series)
    const last = Math.min(time.length, series.values?.length ?? 0) - 1
    const value = last < 0 ? 0 : (valueAt(time, series.values, Math.min(time[last]!, content.xRange[1])) ?? 0)
    return this.#plot.valToPos(content.unit.toShown(value), 'y')
  }

  #create(): Label {
    const element = document.createElement('div')
    const name = document.createElement('span')
    const value = document.createElement('span')
    element.className = 'chart-label'
    value.className = 'chart-value'
    element.append(name, value)
    this.#plot.over.append(element)
    return { element, name, value }
  }
}

function cursorLine(name: string): HTMLDivElement {
  const line = document.createElement('div')
  line.className = `chart-cursor ${name}`
  return line
}

/** Moves places apart until each has `size` to itself, in their order, within `top` and `bottom` as far as there is room. */
export function apart(places: number[], size: number, top: number, bottom: number): number[] {
  const order = places.map((_, index) => index).sort((a, b) => places[a]! - places[b]!)
  const moved = [...places]
  let free = top
  for (const index of order) {
    moved[index] = Math.max(moved[index]!, free)
    free = moved[index]! + size
  }
  let floor = bottom - size
  for (const index of order.reverse()) {
    moved[index] = Math.min(moved[index]!, floor)
    floor = moved[index]! - size
  }
  return moved
}

/** The signs of lines as characters. */
export const SIGNS: Record<Sign, string> = {
  circle: '○',
  square: '□',
  triangle: '△',
  diamond: '◇',
  pentagon: '⬠',
  nabla: '▽',
}

/** The same text written again would ask for a new layout. */
function write(element: HTMLElement, text: string) {
  if (element.textContent !== text) element.textContent = text
}

/** The same style set again would ask for a new look at it; the browser tells it otherwise than it was set. */
const styles = new WeakMap<HTMLElement, string>()

function style(element: HTMLElement, property: 'transform' | 'color', value: string) {
  const said = `${property} ${value}`
  if (styles.get(element) === said) return
  styles.set(element, said)
  element.style[property] = value
}

const isNamed = (series: ChartSeries) => series.label !== '' && !series.faint

/** Words need more contrast than lines: the variables of the strategies have a twin for text. */
const textColour = (color: string) => color.replace(/^var\((--(?:strategy-[\w-]+|damage))\)$/, 'var($1-text)')

/** What lies between a time and the second cursor; nothing without one. */
function differenceText(content: ChartContent, series: ChartSeries, at: number, mark: number | null): string {
  if (mark === null) return ''
  const [first, second] = [at, mark].map((each) => valueAt(timeOf(content, series), series.values, each))
  if (first == null || second == null) return ''
  const difference = content.unit.toShown(second) - content.unit.toShown(first)
  return ` Δ\u202f${difference > 0 ? '+' : ''}${formatFigure(difference)}`
}

const NOTHING = 1e-6

/** Largest size that any series of a chart comes to, worked out once. */
const largest = new WeakMap<ChartContent, number>()

function largestOf(content: ChartContent): number {
  let size = largest.get(content)
  if (size === undefined) {
    size = content.calm
    for (const { values } of content.series)
      for (const value of values ?? []) if (Math.abs(value) > size) size = Math.abs(value)
    largest.set(content, size)
  }
  return size
}

/** The value of a series at a time, with its unit. */
export function valueText(content: ChartContent, series: ChartSeries, at: number): string {
  const found = valueAt(timeOf(content, series), series.values, at)
  // What is nothing against all that is drawn reads 0.
  const value = found !== null && Math.abs(found) < NOTHING * largestOf(content) ? 0 : found
  return withUnit(formatFigure(value === null ? null : content.unit.toShown(value)), content.unit.symbol)
}
