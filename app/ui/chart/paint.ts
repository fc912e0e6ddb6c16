/** What uPlot does not draw by itself: the window's band with its hatched edges, and marks in time. */
import uPlot from 'uplot'
import { formatFigure, formatPlain, withUnit } from '../format.ts'
import { cssColour } from '../theme.ts'
import { type ChartBand, type ChartContent, type ChartRange, PLAIN_TIME } from './types.ts'
import { setFont, widthOf } from './words.ts'

/** Depth of the hatched strip outside an edge, CSS px. */
const STRIP = 8

export function paintBands(plot: uPlot, content: ChartContent) {
  const { ctx, bbox } = plot
  clipped(plot, () => {
    ctx.fillStyle = cssColour('var(--band)')
    for (const band of content.bands) {
      const top = band.to === null ? bbox.top : heightOf(plot, content, band.to)
      const bottom = band.from === null ? bbox.top + bbox.height : heightOf(plot, content, band.from)
      ctx.fillRect(bbox.left, top, bbox.width, bottom - top)
    }
  })
}

export function paintEdges(plot: uPlot, content: ChartContent) {
  clipped(plot, () => {
    for (const band of content.bands) {
      if (!band.hatch) continue
      if (band.from !== null) paintEdge(plot, content, band, band.from, 1)
      if (band.to !== null) paintEdge(plot, content, band, band.to, -1)
    }
  })
}

/** Opacity of an area. */
const AREA = 0.17

export function paintRanges(plot: uPlot, content: ChartContent) {
  const { ctx } = plot
  clipped(plot, () => {
    for (const { time, low, high, color } of content.ranges) {
      const x = (at: number) => plot.valToPos(content.lens.toDisplay(time[at]!), 'x', true)
      const rows = [...time.keys()].filter((at) => Number.isFinite(low[at]! + high[at]!))
      ctx.beginPath()
      for (const at of rows) ctx.lineTo(x(at), heightOf(plot, content, high[at]!))
      for (const at of rows.reverse()) ctx.lineTo(x(at), heightOf(plot, content, low[at]!))
      ctx.globalAlpha = AREA
      ctx.fillStyle = cssColour(color)
      ctx.fill()
    }
  })
}

/** The least and the greatest of an area; none of an empty one. */
export function extremes({ low, high }: ChartRange): number[] {
  const [least, most] = [low.filter(Number.isFinite), high.filter(Number.isFinite)]
  return least.length > 0 ? [Math.min(...least), Math.max(...most)] : []
}

/** `outward`: 1 below the band, −1 above it. */
function paintEdge(plot: uPlot, content: ChartContent, band: ChartBand, value: number, outward: 1 | -1) {
  const { ctx, bbox } = plot
  const ratio = uPlot.pxRatio
  const edge = Math.round(heightOf(plot, content, value))
  const depth = STRIP * ratio
  const colour = cssColour('var(--band-edge)')

  ctx.save()
  ctx.beginPath()
  ctx.rect(bbox.left, outward > 0 ? edge : edge - depth, bbox.width, depth)
  ctx.clip()
  ctx.beginPath()
  for (let x = bbox.left - depth; x < bbox.left + bbox.width + depth; x += 6 * ratio) {
    ctx.moveTo(x, edge + outward * depth)
    ctx.lineTo(x + depth, edge + outward * depth - outward * depth)
  }
  ctx.globalAlpha = 0.55
  ctx.lineWidth = ratio
  ctx.strokeStyle = colour
  ctx.stroke()
  ctx.restore()

  ctx.beginPath()
  ctx.moveTo(bbox.left, edge)
  ctx.lineTo(bbox.left + bbox.width, edge)
  ctx.lineWidth = ratio
  ctx.strokeStyle = colour
  ctx.stroke()

  const words = outward > 0 ? (band.below ?? 'drops below') : (band.above ?? 'breaks above')
  const figure = withUnit(formatPlain(content.unit.toShown(value), 3), content.unit.symbol)
  const middle = edge + outward * (STRIP + 9) * ratio
  const inside = middle > bbox.top + 4 * ratio && middle < bbox.top + bbox.height - 4 * ratio
  const y = inside ? middle : edge - outward * 9 * ratio
  write(
    plot,
    `${words} ${figure}`,
    bbox.left + 8 * ratio,
    y,
    cssColour('var(--ink-2)'),
    inside ? '--surface' : '--band',
  )
}

/** Where a lens stretches the axis, how much and where: a curve on its foot, and the factor in words. */
export function paintBends(plot: uPlot, { lens, xRange }: ChartContent) {
  if (lens === PLAIN_TIME) return
  const { ctx, bbox } = plot
  const [from, to] = xRange.map(lens.toDisplay) as [number, number]
  const samples = Math.max(2, Math.round(bbox.width / uPlot.pxRatio / 2))
  const times = Array.from({ length: samples + 1 }, (_, n) => lens.toTime(from + (n / samples) * (to - from)))
  const rates = times.slice(1).map((time, n) => 1 / (time - times[n]!))
  const least = Math.min(...rates)
  if (!(Math.max(...rates) > 1.01 * least)) return
  const most = Math.max(...rates)
  const foot = bbox.top + bbox.height
  const across = (n: number) => bbox.left + ((n + 0.5) / samples) * bbox.width
  ctx.save()
  ctx.beginPath()
  ctx.moveTo(bbox.left, foot)
  for (const [n, rate] of rates.entries())
    ctx.lineTo(across(n), foot - BEND * uPlot.pxRatio * Math.sqrt((rate - least) / (most - least)))
  ctx.lineTo(bbox.left + bbox.width, foot)
  ctx.fillStyle = cssColour('var(--surface-3)')
  ctx.fill()
  ctx.restore()
  let free = Number.NEGATIVE_INFINITY
  for (const { peak, end } of bendsOf(rates, least)) {
    const words = `stretched ${formatFigure(rates[peak]! / least, 2)}×`
    const width = widthOf(ctx, words)
    const x = Math.min(bbox.left + bbox.width - width - 4, Math.max(bbox.left + 4, across(peak) - width / 2))
    if (x < free || across(end) - bbox.left < width / 2) continue
    free = x + width + 8 * uPlot.pxRatio
    write(plot, words, x, foot - (BEND + 7) * uPlot.pxRatio, cssColour('var(--ink-2)'), '--surface')
  }
}

/** Height of the curve of the stretch [px]. */
const BEND = 9

/** Spans in which the axis is stretched more than twice, each with the place of its most. */
function bendsOf(rates: number[], least: number): { peak: number; end: number }[] {
  const bends: { peak: number; end: number }[] = []
  let inside = false
  for (const [n, rate] of rates.entries()) {
    const stretched = rate >= 2 * least
    if (stretched && !inside) bends.push({ peak: n, end: n })
    inside = stretched
    const bend = bends.at(-1)
    if (!stretched || !bend) continue
    bend.end = n
    if (rate > rates[bend.peak]!) bend.peak = n
  }
  return bends
}

export function paintMarks(plot: uPlot, content: ChartContent) {
  const { ctx, bbox } = plot
  const ratio = uPlot.pxRatio
  let free = Number.NEGATIVE_INFINITY
  clipped(plot, () => {
    for (const mark of [...content.marks].sort((a, b) => a.time - b.time)) {
      const x = Math.round(plot.valToPos(content.lens.toDisplay(mark.time), 'x', true)) + 0.5
      if (x < bbox.left || x > bbox.left + bbox.width) continue
      const colour = cssColour(mark.color ?? 'var(--ink-2)')
      ctx.beginPath()
      ctx.moveTo(x, bbox.top)
      ctx.lineTo(x, bbox.top + bbox.height)
      ctx.setLineDash([ratio, 3 * ratio])
      ctx.lineWidth = ratio
      ctx.strokeStyle = colour
      ctx.stroke()
      ctx.setLineDash([])
      const width = widthOf(ctx, mark.label)
      const left = Math.min(x + 4 * ratio, bbox.left + bbox.width - width - 2 * ratio)
      if (left < free) continue
      free = left + width + 8 * ratio
      write(plot, mark.label, left, bbox.top + 8 * ratio, colour, '--surface')
    }
  })
}

const heightOf = (plot: uPlot, content: ChartContent, value: number) =>
  plot.valToPos(content.unit.toShown(value), 'y', true)

/** Text with a halo of the ground it stands on, so that it stays legible over lines. */
export function write(plot: uPlot, text: string, x: number, y: number, colour: string, ground: string) {
  const { ctx } = plot
  ctx.save() // the library believes that what it has set still stands
  setFont(ctx)
  ctx.textAlign = 'left'
  ctx.textBaseline = 'middle'
  ctx.lineJoin = 'round'
  ctx.lineWidth = 4 * uPlot.pxRatio
  ctx.strokeStyle = cssColour(`var(${ground})`)
  ctx.strokeText(text, x, y)
  ctx.fillStyle = colour
  ctx.fillText(text, x, y)
  ctx.restore()
}

export function clipped(plot: uPlot, draw: () => void) {
  const { ctx, bbox } = plot
  ctx.save()
  ctx.beginPath()
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height)
  ctx.clip()
  draw()
  ctx.restore()
}
