import { useShownRuns } from '../../../read/result/useShownRuns.ts'
import { useLens } from '../../../read/stage/useLens.ts'
import { PANELS, type Panel } from '../../../read/traces/panels.ts'
import { useView } from '../../../store/view.ts'
import { TraceChart } from './TraceChart.tsx'
import './traces.css'

/** The traces of all strategies on one time axis: the chosen channels, force first. */
export function Traces({ narrow }: { narrow: boolean }) {
  const charts = useView((state) => state.charts)
  const { lens } = useLens(useShownRuns())
  const panels = PANELS.filter((panel) => charts.includes(panel.channel))
  const [first, ...rest] = panels
  const chart = (panel: Panel, last: boolean) => (
    <TraceChart key={panel.channel} panel={panel} lens={lens} timeAxis={last} tall={panel.channel === 'force'} />
  )
  if (!narrow || !first)
    return (
      <section className="traces" aria-label="Traces">
        {panels.map((panel, index) => chart(panel, index === panels.length - 1))}
        <ChartChooser />
      </section>
    )
  return (
    <section className="traces" aria-label="Traces">
      {chart(first, true)}
      <details>
        <summary>More traces</summary>
        {rest.map((panel, index) => chart(panel, index === rest.length - 1))}
        <ChartChooser />
      </details>
    </section>
  )
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
