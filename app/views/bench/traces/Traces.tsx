import { Fragment, lazy, Suspense, useRef } from 'react'
import { BEYOND } from '../../../../sim/index.ts'
import { useBesideRuns, useShownRuns } from '../../../read/result/useShownRuns.ts'
import { useLens } from '../../../read/stage/useLens.ts'
import { PANELS, type Panel } from '../../../read/traces/panels.ts'
import { useResults } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import { ChartReadout, ChartTools } from '../../../ui/ChartTools.tsx'
import { PARTS, useBandStudy, useBands, useVaries } from './band.ts'
import { CHART_TITLE, chartHeight } from './height.ts'
import './traces.css'

/** The plotting library is the heaviest part of the page: it comes when there is something to plot, after the first verdicts. */
const TraceChart = lazy(async () => ({ default: (await import('./TraceChart.tsx')).TraceChart }))

/** The traces of all strategies on one time axis: the chosen channels, force first. */
export function Traces({ narrow }: { narrow: boolean }) {
  const charts = useView((state) => state.charts)
  const panels = PANELS.filter((panel) => charts.includes(panel.channel))
  const [first, ...rest] = panels
  if (!narrow || !first)
    return (
      <section className="traces" aria-label="Traces">
        {panels.length > 0 && <Tools />}
        <Charts panels={panels} />
        <BandLegend />
        <ChartReadout syncKey="bench" name="Traces" />
        <ChartChooser />
      </section>
    )
  return (
    <section className="traces" aria-label="Traces">
      <Tools />
      <Charts panels={[first]} />
      <BandLegend />
      <ChartReadout syncKey="bench" name="Traces" />
      <details>
        <summary>More traces</summary>
        <Charts panels={rest} />
        <ChartChooser />
      </details>
    </section>
  )
}

function Tools() {
  const slowed = useView((state) => state.lens)
  const bent = useView((state) => state.bent)
  return (
    <ChartTools syncKey="bench" name="Traces">
      <label className="toggle" title="Gives bar and charts the room that the play takes; slopes bend with it.">
        <input
          type="checkbox"
          checked={bent && slowed}
          disabled={!slowed}
          onChange={({ target }) => useView.getState().set({ bent: target.checked })}
        />
        Stretched axis
      </label>
      <BandSwitch />
    </ChartTools>
  )
}

function BandSwitch() {
  const wanted = useBands((state) => state.wanted)
  useBandStudy()
  if (!useVaries()) return null
  return (
    <label className="toggle" title="Where most parts lie that the file's spread draws.">
      <input
        type="checkbox"
        checked={wanted}
        onChange={({ target }) => useBands.setState({ wanted: target.checked })}
      />
      Band of {PARTS} parts
    </label>
  )
}

/** What the pale areas are, and how far they have come. */
function BandLegend() {
  const { wanted, done, message } = useBands()
  if (!useVaries() || !wanted) return null
  const inside = 100 - 2 * 100 * BEYOND
  return (
    <p className="band-legend" role="status">
      {message !== '' && `There is no band: ${message}`}
      {message === '' && done < 1 && `Gripping ${PARTS} parts by each strategy: ${Math.floor(100 * done)} % …`}
      {message === '' &&
        done === 1 &&
        `Pale: where the middle ${inside} of 100 parts lie at each instant, of ${PARTS} that the file’s spread draws. No single part runs along an edge.`}
    </p>
  )
}

/** Charts one under the other; the last carries the time axis. */
function Charts({ panels }: { panels: Panel[] }) {
  const { axis } = useLens([...useShownRuns(), ...useBesideRuns()])
  const begun = useBegun()
  return panels.map((panel, index) => {
    const timeAxis = index === panels.length - 1
    const tall = panel.channel === 'force'
    const room = <div className="chart" style={{ height: CHART_TITLE + chartHeight(tall, timeAxis) }} />
    return begun ? (
      <Suspense key={panel.channel} fallback={room}>
        <TraceChart panel={panel} lens={axis} timeAxis={timeAxis} tall={tall} />
      </Suspense>
    ) : (
      <Fragment key={panel.channel}>{room}</Fragment>
    )
  })
}

/** Whether there has been a trace to draw, or none is to come. */
function useBegun(): boolean {
  const begun = useRef(false)
  const traced = useResults(({ runs }) => Object.values(runs).some(({ traces }) => traces !== null))
  const none = useView(({ shown }) => shown.length === 0)
  begun.current ||= traced || none
  return begun.current
}

function ChartChooser() {
  const charts = useView((state) => state.charts)
  const { set } = useView.getState()
  return (
    <fieldset className="chart-chooser">
      <legend>Traces shown</legend>
      {PANELS.map(({ channel, label }) => (
        <label key={channel} className="toggle">
          <input
            type="checkbox"
            checked={charts.includes(channel)}
            onChange={({ target }) =>
              set({ charts: target.checked ? [...charts, channel] : charts.filter((each) => each !== channel) })
            }
          />
          {label}
        </label>
      ))}
    </fieldset>
  )
}
