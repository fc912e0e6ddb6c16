/** How a chart over time looks: round times, bands and marks, and where a lens bends the axis. */
import type uPlot from 'uplot'
import { limits } from './data.ts'
import { extremes, paintBands, paintBends, paintEdges, paintMarks, paintRanges } from './paint.ts'
import type { Look } from './plot.ts'
import { paintSigns } from './signs.ts'
import { roundTimes, timeTexts } from './ticks.ts'
import type { ChartContent } from './types.ts'

const TICK_SPACE = 48

export const TIME_LOOK: Look<ChartContent> = {
  line: 1.75,
  places({ xRange, lens }, width) {
    return roundTimes(xRange[0], xRange[1], lens, width, TICK_SPACE).map(lens.toDisplay)
  },
  texts({ lens }, places) {
    const texts = timeTexts(places.map(lens.toTime))
    return texts.map((text, index) => (index === texts.length - 1 ? `${text} s` : text))
  },
  limits({ bands, ranges, unit, calm }, low, high) {
    const ends = ranges.flatMap(extremes).map(unit.toShown)
    const all = (given: number | null) => [...(given === null ? [] : [given]), ...ends]
    const edges = bands.flatMap((band) => [band.from, band.to]).filter((edge) => edge !== null)
    const [least, most] = [Math.min(...all(low)), Math.max(...all(high))]
    return limits(least, most, edges.map(unit.toShown), unit.toShown(calm) - unit.toShown(0))
  },
  under(plot, content) {
    paintBands(plot, content)
    paintRanges(plot, content)
  },
  behind(plot: uPlot, content) {
    paintEdges(plot, content)
    paintBends(plot, content)
    paintMarks(plot, content)
  },
  over: paintSigns,
}
