/** A plot over a logarithmic axis: uPlot with the names, colours and figures of the charts over time, and points of its own. */
import uPlot from 'uplot'
import { cssColour, onThemeChange } from '../theme.ts'
import { columns, limits } from './data.ts'
import { Labels } from './labels.ts'
import { clipped, FONT, write } from './paint.ts'
import { type ChartContent, GUTTERS, type TimeMap } from './types.ts'

export interface ChartPoint {
  x: number
  y: number
  /** Written beside it; '' for none. */
  label: string
}

export interface LogContent extends ChartContent {
  points: ChartPoint[]
  /** Heights of thin lines across the plot. */
  levels: number[]
  /** Shown heights end here, whatever the lines do. */
  floor: number
  xUnit: string
}

/** The axis as a lens that is even in decades. */
export const DECADES: TimeMap = { toDisplay: Math.log10, toTime: (display) => 10 ** display }

const EMPTY = [new Float64Array(0), new Float64Array(0)]
const RADIUS = 4

export class LogPlot {
  readonly #plot: uPlot
  readonly #labels: Labels
  readonly #ends: (() => void)[] = []
  #content: LogContent
  #cursor: number | null = null
  #frame = 0

  /** `steps`: distances that the figures of the vertical axis may have; uPlot's own if left out. */
  constructor(host: HTMLElement, content: LogContent, height: number, syncKey: string, steps?: number[]) {
    this.#content = content
    this.#plot = new uPlot(this.#options(host.clientWidth, height, syncKey, steps), [null, EMPTY] as never, host)
    this.#labels = new Labels(this.#plot)
    const resized = new ResizeObserver(() => {
      if (host.clientWidth > 0 && host.clientWidth !== this.#plot.width)
        this.#plot.setSize({ width: host.clientWidth, height })
    })
    resized.observe(host)
    this.#ends.push(
      () => resized.disconnect(),
      onThemeChange(this.#schedule),
      () => this.#plot.destroy(),
    )
    document.fonts.ready.then(this.#schedule)
    this.#schedule()
  }

  set content(content: LogContent) {
    this.#content = content
    this.#schedule()
  }

  set cursor(x: number | null) {
    this.#cursor = x
    this.#read()
  }

  /** Value of the axis at a horizontal place of the window, within the shown range. */
  valueAt(clientX: number): number {
    const { left, width } = this.#plot.over.getBoundingClientRect()
    const [from, to] = this.#content.xRange
    const inside = Math.min(width, Math.max(0, clientX - left))
    return Math.min(to, Math.max(from, DECADES.toTime(this.#plot.posToVal(inside, 'x'))))
  }

  destroy() {
    cancelAnimationFrame(this.#frame)
    this.#frame = -1
    for (const end of this.#ends) end()
  }

  readonly #schedule = () => {
    if (this.#frame === 0) this.#frame = requestAnimationFrame(this.#apply)
  }

  readonly #apply = () => {
    this.#frame = 0
    const { series } = this.#content
    const plot = this.#plot
    while (plot.series.length <= series.length) plot.addSeries(this.#line(plot.series.length), plot.series.length)
    const data: unknown[] = [null]
    for (let index = 1; index < plot.series.length; index++) {
      const source = series[index - 1]
      const line = plot.series[index]!
      line.show = source !== undefined
      line.width = source?.width ?? 1.5
      line.dash = source?.dash ?? []
      data.push(source ? columns(this.#content, source) : EMPTY)
    }
    plot.setData(data as never)
  }

  readonly #read = () => {
    const { left } = this.#plot.cursor
    const hovered = left !== undefined && left >= 0 ? DECADES.toTime(this.#plot.posToVal(left, 'x')) : null
    this.#labels.read(this.#content, this.#cursor, hovered ?? this.#cursor)
  }

  #line(index: number): uPlot.Series {
    return {
      facets: [
        { scale: 'x', auto: true, sorted: 1 },
        { scale: 'y', auto: true },
      ],
      paths: uPlot.paths.linear!(),
      points: { show: false },
      stroke: () => cssColour(this.#content.series[index - 1]?.color ?? 'var(--ink)'),
    } as uPlot.Series
  }

  #options(width: number, height: number, syncKey: string, steps?: number[]): uPlot.Options {
    const ink = () => cssColour('var(--ink-2)')
    const rule = () => cssColour('var(--rule)')
    const common = { stroke: ink, font: FONT, grid: { stroke: rule, width: 1 }, border: { show: false } }
    return {
      mode: 2,
      width,
      height,
      padding: [8, GUTTERS.right, 0, 0],
      legend: { show: false },
      cursor: {
        x: true,
        y: false,
        points: { show: false },
        drag: { x: false, y: false },
        sync: { key: syncKey, scales: ['x', null] },
      },
      scales: {
        x: { time: false, range: () => this.#content.xRange.map(DECADES.toDisplay) as [number, number] },
        y: {
          range: (_, low, high) => limits(Math.max(low ?? 0, this.#content.floor), high, this.#content.levels),
        },
      },
      series: [{}, this.#line(1)],
      axes: [
        {
          ...common,
          scale: 'x',
          size: () => (this.#content.timeAxis ? 26 : 6),
          gap: 2,
          ticks: { stroke: rule, width: 1, size: 4 },
          splits: () => decadeSplits(this.#content.xRange).map(DECADES.toDisplay),
          values: (plot, places) => this.#axisTexts(places, plot.bbox.width / uPlot.pxRatio),
        },
        {
          ...common,
          scale: 'y',
          size: GUTTERS.left,
          gap: 6,
          space: 26,
          ...(steps ? { incrs: steps } : {}),
          ticks: { show: false },
          values: (_, values) => values.map((value) => String(Number(value.toPrecision(6))).replace('-', '\u2212')),
        },
      ],
      hooks: {
        drawAxes: [(plot) => paintLevels(plot, this.#content)],
        draw: [
          (plot) => {
            paintPoints(plot, this.#content)
            this.#labels.place(this.#content)
            this.#read()
          },
        ],
        setCursor: [this.#read],
      },
    }
  }

  /** Figures at whole decades, the last with the unit. */
  #axisTexts(places: number[], width: number): string[] {
    const { xRange, xUnit, timeAxis } = this.#content
    const [from, to] = xRange.map(DECADES.toDisplay) as [number, number]
    const crowded = width / (to - from) < 34
    const whole = places.map((place) => Math.abs(place - Math.round(place)) < 1e-9)
    const last = whole.lastIndexOf(true)
    return places.map((place, index) => {
      if (!timeAxis || !whole[index] || (crowded && index !== last && Math.round(place) % 2 !== 0)) return ''
      return `${decadeText(Math.round(place))}${index === last ? ` ${xUnit}` : ''}`
    })
  }
}

/** 1, 2, … 9 of every decade that the range touches. */
export function decadeSplits([from, to]: [number, number]): number[] {
  const splits: number[] = []
  for (let power = Math.floor(Math.log10(from)); power <= Math.log10(to); power++)
    for (let digit = 1; digit < 10; digit++) {
      const value = digit * 10 ** power
      if (value >= from && value <= to) splits.push(value)
    }
  return splits
}

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹'

function decadeText(power: number): string {
  if (power >= -2 && power <= 3) return String(10 ** power)
  return `10${power < 0 ? '⁻' : ''}${[...String(Math.abs(power))].map((digit) => RAISED[Number(digit)]).join('')}`
}

function paintLevels(plot: uPlot, { levels }: LogContent) {
  const { ctx, bbox } = plot
  clipped(plot, () => {
    ctx.strokeStyle = cssColour('var(--edge)')
    ctx.lineWidth = uPlot.pxRatio
    for (const level of levels) {
      const y = Math.round(plot.valToPos(level, 'y', true)) + 0.5
      ctx.beginPath()
      ctx.moveTo(bbox.left, y)
      ctx.lineTo(bbox.left + bbox.width, y)
      ctx.stroke()
    }
  })
}

function paintPoints(plot: uPlot, { points }: LogContent) {
  const { ctx, bbox } = plot
  const ratio = uPlot.pxRatio
  const ink = cssColour('var(--ink)')
  clipped(plot, () => {
    for (const { x, y, label } of points) {
      const left = plot.valToPos(DECADES.toDisplay(x), 'x', true)
      const top = plot.valToPos(y, 'y', true)
      ctx.beginPath()
      ctx.arc(left, top, RADIUS * ratio, 0, 2 * Math.PI)
      ctx.fillStyle = cssColour('var(--surface)')
      ctx.fill()
      ctx.lineWidth = 1.5 * ratio
      ctx.strokeStyle = ink
      ctx.stroke()
      if (label === '') continue
      ctx.font = FONT.replace('12px', `${12 * ratio}px`)
      const width = ctx.measureText(label).width
      const after = left + 8 * ratio
      const room = after + width < bbox.left + bbox.width
      write(plot, label, room ? after : left - width - 8 * ratio, top - 9 * ratio, ink, '--surface')
    }
  })
}
