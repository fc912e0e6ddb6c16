import { useMemo } from 'react'
import { useResults } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { buildLens, flatLens, type TimeLens } from '../../../ui/timeLens.ts'
import { PANELS, type Panel } from './panels.ts'
import { TraceChart } from './TraceChart.tsx'
import './traces.css'

/** The traces of all strategies on one time axis: the chosen channels, force first. */
export function Traces({ narrow }: { narrow: boolean }) {
  const charts = useView((state) => state.charts)
  const lens = useSharedLens()
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

/** The lens of the time bar: stretched around first contact and arm moves, or time as it is. */
function useSharedLens(): TimeLens {
  const scenario = useScenario((state) => state.scenario)
  const runs = useResults((state) => state.runs)
  const { lens: on, shown } = useView()
  // As text, so that runs which touch at the same times keep the same lens.
  const contacts = shown.flatMap((id) => runs[id]?.result?.metrics.contactTime ?? []).join()
  return useMemo(() => {
    const { duration } = scenario.run
    const times = contacts === '' ? [] : contacts.split(',').map(Number)
    const moves = scenario.arm.moves.map(({ start, duration }) => ({ start, end: start + duration }))
    return on ? buildLens({ duration, contacts: times, moves }) : flatLens(duration)
  }, [on, contacts, scenario.run, scenario.arm])
}

function ChartChooser() {
  const charts = useView((state) => state.charts)
  const { set } = useView.getState()
  return (
    <fieldset className="chart-chooser">
      <legend>Traces shown</legend>
      {PANELS.map(({ channel, label }) => (
        <label key={channel}>
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
