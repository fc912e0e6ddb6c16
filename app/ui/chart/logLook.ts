/** How a chart over a logarithmic axis looks: whole decades, levels, points, and signs where lines coincide. */
import uPlot from 'uplot'
import { cssColour } from '../theme.ts'
import { limits } from './data.ts'
import { clipped, write } from './paint.ts'
import type { Look } from './plot.ts'
import { paintSigns } from './signs.ts'
import { roundTimes } from './ticks.ts'
import type { ChartContent, TimeMap } from './types.ts'
import { widthOf } from './words.ts'

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
  /** Another unit of the axis, and how much of the axis' own one of it is. */
  other?: { unit: string; is: number }
}

/** The axis as a lens that is even in decades. */
export const DECADES: TimeMap = { toDisplay: Math.log10, toTime: (display) => 10 ** display }

const RADIUS = 4

/** `steps`: distances that the figures of the vertical axis may have. */
export const logLook = (steps?: number[]): Look<LogContent> => ({
  line: 1.5,
  ...(steps && { steps }),
  places: ({ xRange }, width) =>
    (isNarrow(xRange) ? evenSplits(xRange, width) : decadeSplits(xRange)).map(DECADES.toDisplay),
  texts: axisTexts,
  limits: ({ floor, levels }, low, high) => limits(Math.max(low ?? 0, floor), high, levels),
  behind(plot, content) {
    paintLevels(plot, content)
    paintOther(plot, content)
  },
  over(plot, content) {
    paintSigns(plot, content)
    paintPoints(plot, content)
  },
})

/** Less than a decade is shown: round values rather than decades. */
const isNarrow = ([from, to]: [number, number]) => to < 10 * from
const SPACE = 48
const evenSplits = ([from, to]: [number, number], width: number) => roundTimes(from, to, DECADES, width, SPACE)

/** Figures at whole decades, or at every round value of less than one. The last has the unit. */
function axisTexts({ xRange, xUnit }: LogContent, places: number[], width: number): string[] {
  const [from, to] = xRange.map(DECADES.toDisplay) as [number, number]
  const narrow = isNarrow(xRange)
  const crowded = width / (to - from) < 34
  const whole = places.map((place) => narrow || Math.abs(place - Math.round(place)) < 1e-9)
  const last = whole.lastIndexOf(true)
  return places.map((place, index) => {
    if (!whole[index] || (!narrow && crowded && index !== last && Math.round(place) % 2 !== 0)) return ''
    const figure = narrow ? String(Number((10 ** place).toPrecision(6))) : decadeText(Math.round(place))
    return `${figure}${index === last ? ` ${xUnit}` : ''}`
  })
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

/** The decades of the other unit, along the foot of the chart that has the axis. */
function paintOther(plot: uPlot, { other, xRange, timeAxis }: LogContent) {
  if (!other || !timeAxis) return
  const { ctx, bbox } = plot
  const ratio = uPlot.pxRatio
  const ink = cssColour('var(--ink-2)')
  const range = xRange.map((x) => x / other.is) as [number, number]
  const values = isNarrow(range)
    ? evenSplits(range, bbox.width / ratio)
    : decadeSplits(range).filter((value) => Number.isInteger(Number(Math.log10(value).toFixed(9))))
  const foot = bbox.top + bbox.height
  for (const value of values) {
    const x = plot.valToPos(DECADES.toDisplay(value * other.is), 'x', true)
    ctx.fillStyle = ink
    ctx.fillRect(x, foot - 5 * ratio, ratio, 5 * ratio)
    const words = `${Number(value.toPrecision(6))} ${other.unit}`
    const width = widthOf(ctx, words)
    if (x + 4 * ratio + width < bbox.left + bbox.width)
      write(plot, words, x + 4 * ratio, foot - 8 * ratio, ink, '--surface')
  }
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
      const width = widthOf(ctx, label)
      const after = left + 8 * ratio
      const room = after + width < bbox.left + bbox.width
      const before = Math.max(bbox.left + 2 * ratio, left - width - 8 * ratio)
      write(plot, label, room ? after : before, top - 9 * ratio, ink, '--surface')
    }
  })
}
