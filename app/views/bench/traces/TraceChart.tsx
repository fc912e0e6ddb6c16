import { memo, useMemo } from 'react'
import type { Panel } from '../../../read/traces/panels.ts'
import { marksOf, seriesOf, summaryOf, windowBand } from '../../../read/traces/series.ts'
import { quantityUnit } from '../../../read/units.ts'
import { type Runs, useResults } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Chart, type ChartBand, type ChartMark } from '../../../ui/Chart.tsx'
import type { TimeLens } from '../../../ui/timeLens.ts'
import { useBefore } from '../useBefore.ts'
import { rangesOf, useBands } from './band.ts'
import { chartHeight } from './height.ts'

interface Props {
  panel: Panel
  lens: TimeLens
  timeAxis: boolean
  tall: boolean
}

const NO_TIME = new Float64Array(0)
const NO_BANDS: ChartBand[] = []
const NO_MARKS: ChartMark[] = []

/** One channel of all strategies; it follows runs and cursor by itself. */
export const TraceChart = memo(function TraceChart({ panel, lens, timeAxis, tall }: Props) {
  const scenario = useResults(drawnScenario)
  const runs = useResults((state) => state.runs)
  const beside = useResults((state) => state.beside)
  const before = useBefore()
  const units = useView((state) => state.units)
  const shown = useView((state) => state.shown)
  const time = useView((state) => state.time)
  const unit = useMemo(() => quantityUnit(panel.quantity, units), [panel, units])
  const series = useMemo(() => seriesOf(panel, runs, before, shown, beside), [panel, runs, before, shown, beside])
  const bands = useMemo(() => (panel.channel === 'force' ? windowBand(scenario) : NO_BANDS), [panel, scenario])
  const drawn = useBands((state) => state.bands)
  const ranges = useMemo(() => rangesOf(panel.channel, drawn, shown), [panel, drawn, shown])
  const marks = useMemo(() => (tall ? marksOf(scenario, runs, beside) : NO_MARKS), [tall, scenario, runs, beside])
  const summary = useMemo(() => summaryOf(panel, runs, unit, beside), [panel, runs, unit, beside])
  // The last row lies just before the end of the run.
  const last = Math.max(0, ...shown.flatMap((id) => [runs[id], beside[id]].map((run) => run?.traces?.time.at(-1) ?? 0)))
  const range = useMemo<[number, number]>(() => [0, scenario.run.duration], [scenario.run.duration])
  return (
    <Chart
      series={series}
      time={NO_TIME}
      xRange={range}
      yLabel={panel.label}
      unit={unit}
      height={chartHeight(tall, timeAxis)}
      cursorTime={Math.min(time, last)}
      onCursor={(at) => useView.getState().set({ time: at, playing: false })}
      syncKey="bench"
      bands={bands}
      ranges={ranges}
      marks={marks}
      lens={lens}
      timeAxis={timeAxis}
      summary={summary}
    />
  )
})

/** The scenario of what is drawn: a change is drawn once, together with its runs. */
const drawnScenario = ({ runs }: { runs: Runs }) => Object.values(runs)[0]?.scenario ?? useScenario.getState().scenario
