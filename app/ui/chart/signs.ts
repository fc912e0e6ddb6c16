/** Signs along lines where they lie on each other, or all along, so that each can be followed: line by line, a shape at every so many pixels. */
import uPlot from 'uplot'
import { cssColour } from '../theme.ts'
import { timeOf, valueAt } from './data.ts'
import { clipped } from './paint.ts'
import type { ChartContent, Sign } from './types.ts'

/** Distance of two signs of a line, how near lines coincide, and half the size of a sign [px]. */
const APART = 88
const NEAR = 4
const SIZE = 4

export function paintSigns(plot: uPlot, content: ChartContent) {
  const lines = content.series.filter(({ sign, faint, values }) => sign && !faint && values)
  if (lines.length < 2 && !lines[0]?.signed) return
  const { ctx, bbox } = plot
  const ratio = uPlot.pxRatio
  clipped(plot, () => {
    ctx.lineWidth = 1.25 * ratio
    ctx.setLineDash([])
    ctx.fillStyle = cssColour('var(--surface)')
    for (const [index, line] of lines.entries()) {
      ctx.strokeStyle = cssColour(line.color)
      const first = APART * ratio * ((index + 0.5) / lines.length)
      for (let x = bbox.left + first; x < bbox.left + bbox.width; x += APART * ratio) {
        const heights = heightsAt(plot, content, lines, x)
        const own = heights[index]
        if (own == null) continue
        const near =
          line.signed || heights.some((each, n) => n !== index && each != null && Math.abs(each - own) < NEAR * ratio)
        if (near) stamp(ctx, line.sign!, x, own, SIZE * ratio)
      }
    }
  })
}

function heightsAt(plot: uPlot, content: ChartContent, lines: ChartContent['series'], x: number) {
  const at = content.lens.toTime(plot.posToVal(x / uPlot.pxRatio - plot.bbox.left / uPlot.pxRatio, 'x'))
  return lines.map((line) => {
    const value = valueAt(timeOf(content, line), line.values, at)
    return value === null ? null : plot.valToPos(content.unit.toShown(value), 'y', true)
  })
}

function stamp(pen: CanvasRenderingContext2D, sign: Sign, x: number, y: number, size: number) {
  pen.beginPath()
  if (sign === 'circle') pen.arc(x, y, size, 0, 2 * Math.PI)
  else for (const [dx, dy] of OUTLINES[sign]) pen.lineTo(x + size * dx, y + size * dy)
  pen.closePath()
  pen.fill()
  pen.stroke()
}

/** Corners of a sign of half size 1. */
const OUTLINES: Record<Exclude<Sign, 'circle'>, [number, number][]> = {
  square: [
    [-0.9, -0.9],
    [0.9, -0.9],
    [0.9, 0.9],
    [-0.9, 0.9],
  ],
  triangle: [
    [0, -1.15],
    [1.1, 0.85],
    [-1.1, 0.85],
  ],
  diamond: [
    [0, -1.25],
    [1.25, 0],
    [0, 1.25],
    [-1.25, 0],
  ],
  pentagon: [
    [0, -1.2],
    [1.14, -0.37],
    [0.7, 0.97],
    [-0.7, 0.97],
    [-1.14, -0.37],
  ],
  nabla: [
    [0, 1.15],
    [-1.1, -0.85],
    [1.1, -0.85],
  ],
}
