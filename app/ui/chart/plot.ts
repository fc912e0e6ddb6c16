/** One uPlot instance that lives as long as its chart: new content only sets data, at most once a frame. */
import uPlot from 'uplot'
import { canBeFine } from '../fine.ts'
import { cssColour, onThemeChange } from '../theme.ts'
import { columns } from './data.ts'
import { Labels } from './labels.ts'
import { type ChartContent, GUTTERS } from './types.ts'
import { FONT, keepWords } from './words.ts'

const EMPTY = [new Float64Array(0), new Float64Array(0)]

/** What one kind of chart has of its own: axes, and what is painted under and over the curves. */
export interface Look<C extends ChartContent> {
  /** Width of a line that says nothing of it [px]. */
  line: number
  /** Distances that the figures of the vertical axis may have; uPlot's own if left out. */
  steps?: number[]
  /** Places of the axis' figures, even in px, on an axis of a width [px], and the figures. */
  places(content: C, width: number): number[]
  texts(content: C, places: number[], width: number): string[]
  /** Limits of the vertical axis for data between `low` and `high`. */
  limits(content: C, low: number | null, high: number | null): [number, number]
  under?(plot: uPlot, content: C): void
  behind?(plot: uPlot, content: C): void
  over?(plot: uPlot, content: C): void
}

export class Plot<C extends ChartContent> {
  readonly #plot: uPlot
  readonly #labels: Labels
  readonly #look: Look<C>
  readonly #ends: (() => void)[] = []
  #content: C
  #drawn: C | null = null
  #cursor: number | null = null
  #mark: number | null = null
  #frame = 0
  /** Pixels of the canvas for each that the screen asks for. */
  #fineness = 1

  constructor(host: HTMLElement, content: C, look: Look<C>, height: number, syncKey: string) {
    this.#content = content
    this.#look = look
    this.#plot = new uPlot(this.#options(host.clientWidth, height, syncKey), [null, EMPTY] as never, host)
    this.#labels = new Labels(this.#plot)
    keepWords(this.#plot.ctx, () => this.#fineness === 1)
    canBeFine(this.#plot.ctx.canvas, (scale) => this.#fine(scale))
    const resized = new ResizeObserver(() => {
      if (host.clientWidth > 0 && host.clientWidth !== this.#plot.width)
        this.resize(host.clientWidth, this.#plot.height)
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

  set content(content: C) {
    this.#content = content
    this.#apply()
  }

  /** The cursors, values of the axis; null: none. */
  setCursors(cursor: number | null, mark: number | null) {
    this.#cursor = cursor
    this.#mark = mark
    this.#read()
  }

  resize(width: number, height: number) {
    this.#plot.setSize({ width, height })
  }

  /** Where the curves are drawn, px of the window. */
  area(): DOMRect {
    return this.#plot.over.getBoundingClientRect()
  }

  /** Shown limits of the vertical axis, in the shown unit. */
  get heights(): [number, number] {
    const { min, max } = this.#plot.scales.y!
    return [min ?? 0, max ?? 1]
  }

  destroy() {
    cancelAnimationFrame(this.#frame)
    this.#frame = -1
    for (const end of this.#ends) end()
  }

  /** A copy of the canvas with `scale` pixels for each of the page. The library knows the screen's density only: it draws into an enlarged canvas. */
  #fine(scale: number): HTMLCanvasElement {
    const { canvas } = this.#plot.ctx
    const copy = document.createElement('canvas')
    this.#fineness = Math.max(1, scale / uPlot.pxRatio)
    this.#drawNow()
    copy.width = canvas.width
    copy.height = canvas.height
    copy.getContext('2d')!.drawImage(canvas, 0, 0)
    this.#fineness = 1
    this.#drawNow()
    return copy
  }

  #drawNow() {
    const { width, height, series } = this.#plot
    // It rounds places to whole pixels of the screen, which would be steps in the picture.
    const pxRound = (place: number) => Math.round(place * this.#fineness) / this.#fineness
    for (const line of series) Object.assign(line, { pxRound })
    this.#plot.batch(() => this.#plot.setSize({ width, height }))
  }

  /** Between the setting of the canvas' size and the drawing. */
  readonly #enlarge = ({ ctx }: uPlot) => {
    if (this.#fineness === 1) return
    ctx.canvas.width = Math.round(ctx.canvas.width * this.#fineness)
    ctx.canvas.height = Math.round(ctx.canvas.height * this.#fineness)
    ctx.scale(this.#fineness, this.#fineness)
  }

  readonly #schedule = () => {
    if (this.#frame === 0) this.#frame = requestAnimationFrame(this.#apply)
  }

  readonly #apply = () => {
    cancelAnimationFrame(this.#frame)
    this.#frame = 0
    const content = this.#content
    const plot = this.#plot
    while (plot.series.length <= content.series.length)
      plot.addSeries(this.#line(plot.series.length), plot.series.length)
    const data: unknown[] = [null]
    for (let index = 1; index < plot.series.length; index++) {
      const source = content.series[index - 1]
      const line = plot.series[index]!
      line.show = source !== undefined
      line.width = source?.faint ? 1 : (source?.width ?? this.#look.line)
      line.dash = source?.dash ?? []
      line.alpha = source?.faint ? 0.45 : 1
      data.push(source ? columns(content, source) : EMPTY)
    }
    plot.setData(data as never)
    // Where the ends of the axis stay, the library keeps its figures, though a lens or a unit moves them.
    const { lens, unit, timeAxis } = this.#drawn ?? content
    if (lens !== content.lens || unit !== content.unit || timeAxis !== content.timeAxis) plot.redraw(true, true)
    this.#drawn = content
  }

  readonly #read = () => {
    const { left } = this.#plot.cursor
    const hovered = left !== undefined && left >= 0 ? this.#content.lens.toTime(this.#plot.posToVal(left, 'x')) : null
    this.#labels.read(this.#content, this.#cursor, this.#mark, hovered ?? this.#cursor)
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

  #options(width: number, height: number, syncKey: string): uPlot.Options {
    const look = this.#look
    const range = () => this.#content.xRange.map(this.#content.lens.toDisplay) as [number, number]
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
        x: { time: false, range },
        y: { range: (_, low, high) => this.#content.yRange ?? look.limits(this.#content, low, high) },
      },
      series: [{}, this.#line(1)],
      axes: this.#axes(),
      hooks: {
        setSize: [this.#enlarge],
        drawClear: [(plot) => look.under?.(plot, this.#content)],
        drawAxes: [(plot) => look.behind?.(plot, this.#content)],
        draw: [
          (plot) => {
            look.over?.(plot, this.#content)
            this.#labels.place(this.#content)
            this.#read()
          },
        ],
        setCursor: [this.#read],
      },
    }
  }

  #axes(): uPlot.Axis[] {
    const look = this.#look
    const ink = () => cssColour('var(--ink-2)')
    const rule = () => cssColour('var(--rule)')
    const common = { stroke: ink, font: FONT, grid: { stroke: rule, width: 1 }, border: { show: false } }
    const across = (plot: uPlot) => plot.bbox.width / uPlot.pxRatio
    return [
      {
        ...common,
        scale: 'x',
        size: () => (this.#content.timeAxis ? 26 : 6),
        gap: 2,
        ticks: { stroke: rule, width: 1, size: 4 },
        splits: (plot) => look.places(this.#content, across(plot)),
        values: (plot, places) =>
          this.#content.timeAxis ? look.texts(this.#content, places, across(plot)) : places.map(() => null),
      },
      {
        ...common,
        scale: 'y',
        size: GUTTERS.left,
        gap: 6,
        space: 26,
        ...(look.steps ? { incrs: look.steps } : {}),
        ticks: { show: false },
        values: (_, values) => values.map((value) => String(Number(value.toPrecision(6))).replace('-', '\u2212')),
      },
    ]
  }
}
