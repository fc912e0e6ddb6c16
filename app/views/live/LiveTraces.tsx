import { useMemo } from 'react'
import { STRATEGIES, type StrategyId } from '../../../sim/index.ts'
import { windowBand } from '../../read/traces/series.ts'
import { quantityUnit } from '../../read/units.ts'
import { SPAN, useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Chart, type ChartSeries } from '../../ui/Chart.tsx'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { PANELS, type Panel } from './panels.ts'

/** Traces that roll while the plant runs; once it is paused a cursor reads them. */
export function LiveTraces({ narrow }: { narrow: boolean }) {
  const [force, ...rest] = PANELS
  const others = rest.map((panel, index) => (
    <RollingChart key={panel.label} panel={panel} last={index === rest.length - 1} />
  ))
  return (
    <section className="live-traces" aria-label="Traces">
      <RollingChart panel={force!} last={narrow} />
      {narrow ? (
        <details>
          <summary>More traces</summary>
          {others}
        </details>
      ) : (
        others
      )}
      <p className="live-note">Thin lines: the far contact, and the current and speed that the drive wants.</p>
    </section>
  )
}

/** Room for the figures of the time axis [px]. */
const AXIS = 20

const NOTHING = new Float64Array(0)

function RollingChart({ panel, last = false }: { panel: Panel; last?: boolean }) {
  const { now, strategy, speed, cursor } = useLive()
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const unit = useMemo(() => quantityUnit(panel.quantity, units), [panel, units])
  const bands = useMemo(() => (panel.quantity === 'force' ? windowBand(scenario) : []), [panel, scenario])
  const span = SPAN * speed
  const series = useMemo(
    () => linesOf(strategy, now?.traces[panel.behind] ?? null, now?.traces[panel.channel] ?? null),
    [panel, strategy, now],
  )
  const newest = now?.traces.time.at(-1) ?? null
  const end = Math.max(span, newest ?? 0)
  return (
    <Chart
      series={series}
      time={now?.traces.time ?? NOTHING}
      xRange={[end - span, end]}
      yLabel={panel.label}
      unit={unit}
      height={panel.height + (last ? AXIS : 0)}
      cursorTime={cursor ?? newest}
      onCursor={(at) => useLive.setState({ cursor: at, running: false })}
      syncKey="live"
      bands={bands}
      timeAxis={last}
      summary={`${panel.label} over the last ${withUnit(formatFigure(span, 1), 's')} of simulated time. Moving the cursor pauses the plant.`}
    />
  )
}

/** Solid lines: there is one strategy at a time, and dashes on so many points cost a frame. */
function linesOf(strategy: StrategyId, behind: Float64Array | null, values: Float64Array | null): ChartSeries[] {
  const label = STRATEGIES.find(({ id }) => id === strategy)?.label ?? ''
  return [
    { label: '', values: behind && values && alike(behind, values) ? null : behind, color: 'var(--ink-2)', width: 1 },
    { label, values, color: `var(--strategy-${strategy})` },
  ]
}

/** Whether two columns are the same line: then one is enough. */
const alike = (a: Float64Array, b: Float64Array) => a.every((value, row) => value === b[row])
