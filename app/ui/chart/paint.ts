/** What uPlot does not draw by itself: the window's band with its hatched edges, and marks in time. */
import uPlot from 'uplot'
import { formatPlain, withUnit } from '../format.ts'
import { cssColour } from '../theme.ts'
import type { ChartBand, ChartContent } from './types.ts'

export const FONT = '12px "Source Sans 3 Variable", "Source Sans 3", sans-serif'

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
      ctx.font = fontAt(ratio)
      const width = ctx.measureText(mark.label).width
      const left = Math.min(x + 4 * ratio, bbox.left + bbox.width - width - 2 * ratio)
      if (left < free) continue
      free = left + width + 8 * ratio
      write(plot, mark.label, left, bbox.top + 8 * ratio, colour, '--surface')
    }
  })
}

const heightOf = (plot: uPlot, content: ChartContent, value: number) =>
  plot.valToPos(content.unit.toShown(value), 'y', true)

const fontAt = (ratio: number) => FONT.replace('12px', `${12 * ratio}px`)

/** Text with a halo of the ground it stands on, so that it stays legible over lines. */
export function write(plot: uPlot, text: string, x: number, y: number, colour: string, ground: string) {
  const { ctx } = plot
  ctx.font = fontAt(uPlot.pxRatio)
  ctx.textAlign = 'left'
  ctx.textBaseline = 'middle'
  ctx.lineJoin = 'round'
  ctx.lineWidth = 4 * uPlot.pxRatio
  ctx.strokeStyle = cssColour(`var(${ground})`)
  ctx.strokeText(text, x, y)
  ctx.fillStyle = colour
  ctx.fillText(text, x, y)
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
