import { useMemo } from 'react'
import type { Channel, StrategyId } from '../../../sim/index.ts'
import { SPAN, useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Chart, type ChartSeries } from '../../ui/Chart.tsx'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { type Quantity, quantityUnit } from '../../ui/units.ts'
import { LINE_STYLES } from '../bench/stage/moments.ts'
import { windowBand } from '../bench/traces/series.ts'

interface Line {
  channel: Channel
  label: string
  /** Drawn in ink beside the line that matters. */
  aside?: boolean
}

interface Panel {
  label: string
  quantity: Quantity
  height: number
  lines: Line[]
}

const PANELS: Panel[] = [
  {
    label: 'Grip force',
    quantity: 'force',
    height: 190,
    lines: [
      { channel: 'farForce', label: 'far contact', aside: true },
      { channel: 'force', label: 'driven contact' },
    ],
  },
  {
    label: 'Current',
    quantity: 'current',
    height: 110,
    lines: [
      { channel: 'command', label: 'wanted', aside: true },
      { channel: 'current', label: 'current' },
    ],
  },
  {
    label: 'Jaw speed',
    quantity: 'speed',
    height: 130,
    lines: [
      { channel: 'wantedSpeed', label: 'wanted', aside: true },
      { channel: 'speed', label: 'speed' },
    ],
  },
]

/** Traces that roll while the plant runs; once it is paused a cursor reads them. */
export function LiveTraces({ narrow }: { narrow: boolean }) {
  const [force, ...rest] = PANELS
  const others = rest.map((panel) => <RollingChart key={panel.label} panel={panel} />)
  return (
    <section className="live-traces" aria-label="Traces">
      <RollingChart panel={force!} />
      {narrow ? (
        <details>
          <summary>More traces</summary>
          {others}
        </details>
      ) : (
        others
      )}
    </section>
  )
}

const NOTHING = new Float64Array(0)

function RollingChart({ panel }: { panel: Panel }) {
  const { now, strategy, speed, cursor } = useLive()
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const unit = useMemo(() => quantityUnit(panel.quantity, units), [panel, units])
  const bands = useMemo(() => (panel.quantity === 'force' ? windowBand(scenario) : []), [panel, scenario])
  const span = SPAN * speed
  const end = Math.max(span, now?.state.time ?? 0)
  const series = useMemo(
    () => panel.lines.map((line) => lineOf(line, strategy, now?.traces[line.channel] ?? null)),
    [panel, strategy, now],
  )
  return (
    <Chart
      series={series}
      time={now?.traces.time ?? NOTHING}
      xRange={[end - span, end]}
      yLabel={panel.label}
      unit={unit}
      height={panel.height}
      cursorTime={cursor ?? now?.state.time ?? null}
      onCursor={(at) => useLive.setState({ cursor: at, running: false })}
      syncKey="live"
      bands={bands}
      summary={`${panel.label} over the last ${withUnit(formatFigure(span, 1), 's')} of simulated time. Moving the cursor pauses the plant.`}
    />
  )
}

function lineOf({ label, aside = false }: Line, strategy: StrategyId, values: Float64Array | null): ChartSeries {
  if (aside) return { label, values, color: 'var(--ink-2)', width: 1 }
  const dash = LINE_STYLES[strategy]?.split(' ').map(Number) ?? []
  return { label, values, color: `var(--strategy-${strategy})`, dash }
}
