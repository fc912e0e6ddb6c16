/** One uPlot instance that lives as long as its chart: new content only sets data, at most once a frame. */
import uPlot from 'uplot'
import { cssColour, onThemeChange } from '../theme.ts'
import { columns, limits } from './data.ts'
import { Labels } from './labels.ts'
import { FONT, paintBands, paintEdges, paintMarks } from './paint.ts'
import { roundTimes, timeTexts } from './ticks.ts'
import { type ChartContent, GUTTERS } from './types.ts'

const EMPTY = [new Float64Array(0), new Float64Array(0)]
const TICK_SPACE = 48

export class ChartPlot {
  readonly #plot: uPlot
  readonly #labels: Labels
  readonly #ends: (() => void)[] = []
  #content: ChartContent
  #cursor: number | null = null
  #frame = 0

  constructor(host: HTMLElement, content: ChartContent, height: number, syncKey: string) {
    this.#content = content
    this.#plot = new uPlot(this.#options(host.clientWidth, height, syncKey), [null, EMPTY] as never, host)
    this.#labels = new Labels(this.#plot)
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

  set content(content: ChartContent) {
    this.#content = content
    this.#apply()
  }

  /** Time of the cursor [s]; null: none. */
  set cursor(time: number | null) {
    this.#cursor = time
    this.#read()
  }

  resize(width: number, height: number) {
    this.#plot.setSize({ width, height })
  }

  /** Time at a horizontal place of the window [s], within the shown range. */
  timeAt(clientX: number): number {
    const { left, width } = this.#plot.over.getBoundingClientRect()
    const [from, to] = this.#content.xRange
    const inside = Math.min(width, Math.max(0, clientX - left))
    return Math.min(to, Math.max(from, this.#content.lens.toTime(this.#plot.posToVal(inside, 'x'))))
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
    cancelAnimationFrame(this.#frame)
    this.#frame = 0
    const { series } = this.#content
    const plot = this.#plot
    while (plot.series.length <= series.length) plot.addSeries(this.#line(plot.series.length), plot.series.length)
    const data: unknown[] = [null]
    for (let index = 1; index < plot.series.length; index++) {
      const source = series[index - 1]
      const line = plot.series[index]!
      line.show = source !== undefined
      line.width = source?.faint ? 1 : (source?.width ?? 1.75)
      line.dash = source?.dash ?? []
      line.alpha = source?.faint ? 0.45 : 1
      data.push(source ? columns(this.#content, source) : EMPTY)
    }
    plot.setData(data as never)
  }

  readonly #read = () => {
    const { left } = this.#plot.cursor
    const hovered = left !== undefined && left >= 0 ? this.#content.lens.toTime(this.#plot.posToVal(left, 'x')) : null
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

  #options(width: number, height: number, syncKey: string): uPlot.Options {
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
        x: { time: false, range: () => this.#content.xRange.map(this.#content.lens.toDisplay) as [number, number] },
        y: { range: (_, low, high) => limits(low, high, this.#edges()) },
      },
      series: [{}, this.#line(1)],
      axes: [
        {
          ...common,
          scale: 'x',
          size: () => (this.#content.timeAxis ? 26 : 6),
          gap: 2,
          ticks: { stroke: rule, width: 1, size: 4 },
          splits: (plot) => this.#times(plot.bbox.width / uPlot.pxRatio).map(this.#content.lens.toDisplay),
          values: (_, places) => {
            if (!this.#content.timeAxis) return places.map(() => null)
            const texts = timeTexts(places.map(this.#content.lens.toTime))
            return texts.map((text, index) => (index === texts.length - 1 ? `${text} s` : text))
          },
        },
        {
          ...common,
          scale: 'y',
          size: GUTTERS.left,
          gap: 6,
          space: 26,
          ticks: { show: false },
          values: (_, values) => values.map((value) => String(Number(value.toPrecision(6))).replace('-', '\u2212')),
        },
      ],
      hooks: {
        drawClear: [(plot) => paintBands(plot, this.#content)],
        drawAxes: [(plot) => paintEdges(plot, this.#content), (plot) => paintMarks(plot, this.#content)],
        draw: [
          () => {
            this.#labels.place(this.#content)
            this.#read()
          },
        ],
        setCursor: [this.#read],
      },
    }
  }

  #times(width: number): number[] {
    const [from, to] = this.#content.xRange
    return roundTimes(from, to, this.#content.lens, width, TICK_SPACE)
  }

  #edges(): number[] {
    const edges = this.#content.bands.flatMap((band) => [band.from, band.to])
    return edges.filter((edge) => edge !== null).map(this.#content.unit.toShown)
  }
}
