/** Heights of the charts and of the line over each [px]. */
const HEIGHTS = { tall: 220, low: 104, axis: 20 }
export const CHART_TITLE = 25

export const chartHeight = (tall: boolean, timeAxis: boolean) =>
  (tall ? HEIGHTS.tall : HEIGHTS.low) + (timeAxis ? HEIGHTS.axis : 0)
