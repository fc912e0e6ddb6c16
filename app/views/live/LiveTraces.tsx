import { useCallback, useMemo } from 'react'
import { STRATEGIES, type StrategyId, type Traces } from '../../../sim/index.ts'
import { quantityUnit } from '../../read/units.ts'
import { type LiveMark, SPAN, useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Chart, type ChartContent, type ChartSeries, type Feed } from '../../ui/Chart.tsx'
import { ChartReadout, ChartTools } from '../../ui/ChartTools.tsx'
import { groupOf } from '../../ui/chart/group.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { back } from './back.ts'
import { lookOf } from './jobs.ts'
import { bandOf, type Panel, panelsOf } from './panels.ts'

/** Traces that roll while the plant runs; once it is paused, or one looks back, cursors read them. */
export function LiveTraces({ narrow }: { narrow: boolean }) {
  const job = useScenario((state) => state.scenario.job)
  const [effort, ...rest] = useMemo(() => panelsOf({ job }), [job])
  const others = rest.map((panel, index) => (
    <RollingChart key={panel.label} panel={panel} last={index === rest.length - 1} />
  ))
  return (
    <section className="live-traces" aria-label="Traces">
      <ChartTools syncKey="live" name="Traces">
        <Button
          quiet
          title="The last ten minutes can be looked through; the plant waits meanwhile."
          onClick={() => back(-1)}
        >
          Earlier
        </Button>
        <Button quiet onClick={() => back(1)}>
          Later
        </Button>
      </ChartTools>
      <RollingChart panel={effort!} last={narrow} />
      {narrow ? (
        <details>
          <summary>More traces</summary>
          {others}
        </details>
      ) : (
        others
      )}
      <ChartReadout syncKey="live" name="Traces" />
      <p className="live-note">{lookOf({ job }).behind}</p>
    </section>
  )
}

/** Room for the figures of the time axis [px]. */
const AXIS = 20

const NOTHING = new Float64Array(0)

function RollingChart({ panel, last = false }: { panel: Panel; last?: boolean }) {
  // What is read is told a few times a second; what is seen is fed at every frame.
  const read = useLive((live) => (live.running ? live.read : live.now))
  const strategy = useLive((live) => live.strategy)
  const speed = useLive((live) => live.speed)
  const cursor = useLive((live) => live.cursor)
  const oldest = useLive((live) => live.oldest)
  const happened = useLive((live) => live.marks)
  const window = groupOf('live').use((state) => state.window)
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const unit = useMemo(() => quantityUnit(panel.quantity, units), [panel, units])
  const bands = useMemo(() => (panel.main ? bandOf(scenario) : []), [panel, scenario])
  const marks = useMemo(() => (panel.main ? happened.map(markOf) : []), [panel, happened])
  const calm = useMemo(() => panel.calm(scenario, strategy), [panel, scenario, strategy])
  const traces = useMemo(() => seen(window), [window, read])
  const series = useMemo(() => linesOf(panel, strategy, traces), [panel, strategy, traces])
  // The cursor stands on what is drawn: the plant may be ahead of what was last read.
  const newest = traces?.time.at(-1) ?? null
  const span = SPAN * speed
  const range = rangeOf(newest, span)
  const bounds = useMemo<[number, number]>(() => [Math.min(oldest, range[0]), range[1]], [oldest, range[0], range[1]])
  const feed = useFeed(panel)
  return (
    <Chart
      series={series}
      time={traces?.time ?? NOTHING}
      xRange={range}
      bounds={bounds}
      yLabel={panel.label}
      unit={unit}
      height={panel.height + (last ? AXIS : 0)}
      cursorTime={cursor ?? newest}
      onCursor={(at) => useLive.setState({ cursor: at, running: false })}
      syncKey="live"
      bands={bands}
      marks={marks}
      calm={calm}
      feed={feed}
      timeAxis={last}
      summary={`${panel.label} over the last ${withUnit(formatFigure(span, 1), 's')} of simulated time; ten minutes can be looked back. Moving the cursor pauses the plant.`}
    />
  )
}

/** Draws the newest span at every piece that comes in. */
function useFeed(panel: Panel): Feed<ChartContent> {
  return useCallback(
    (draw) =>
      useLive.subscribe(({ now, strategy, speed, running }, before) => {
        if (!now || now === before.now || !running) return
        const time = now.traces.time.at(-1) ?? now.state.time
        const moving = {
          time: now.traces.time,
          series: linesOf(panel, strategy, now.traces),
          xRange: rangeOf(time, SPAN * speed),
        }
        draw(moving, time)
      }),
    [panel],
  )
}

const rangeOf = (newest: number | null, span: number): [number, number] => {
  const end = Math.max(span, newest ?? 0)
  return [end - span, end]
}

/** The traces of what is looked at. */
function seen(window: [number, number] | null): Traces | null {
  const { now, look } = useLive.getState()
  return window && look ? look(...window) : (now?.traces ?? null)
}

const markOf = ({ time, label, damage }: LiveMark) => ({ time, label, ...(damage && { color: 'var(--damage)' }) })

/** Solid lines: there is one strategy at a time, and dashes on so many points cost a frame. */
function linesOf({ channel, behind }: Panel, strategy: StrategyId, traces: Traces | null): ChartSeries[] {
  const label = STRATEGIES.find(({ id }) => id === strategy)?.label ?? ''
  const columns: Readonly<Record<string, Float64Array>> | null = traces
  const values = columns?.[channel] ?? null
  const other = columns?.[behind] ?? null
  return [
    { label: '', values: other && values && alike(other, values) ? null : other, color: 'var(--ink-2)', width: 1 },
    { label, values, color: `var(--strategy-${strategy})` },
  ]
}

/** Whether two columns are the same line: then one is enough. */
const alike = (a: Float64Array, b: Float64Array) => a.every((value, row) => value === b[row])
