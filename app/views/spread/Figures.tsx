/** How every figure is spread over the parts. */
import { useState } from 'react'
import {
  JOBS,
  type JobId,
  metricText,
  NO_FIGURE,
  type SpreadAnswer,
  STRATEGIES,
  textIn,
  wordingOf,
} from '../../../sim/index.ts'
import { useView } from '../../store/view.ts'

const COLUMNS = ['0.01', '0.5', '0.99'] as const

export function Figures({ job, answers }: { job: JobId; answers: SpreadAnswer[] }) {
  const [open, setOpen] = useState(false)
  return (
    <details onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>All figures: 1 %, half and 99 % of the parts lie below</summary>
      {open && <Table job={job} answers={answers} />}
    </details>
  )
}

function Table({ job, answers }: { job: JobId; answers: SpreadAnswer[] }) {
  const units = useView((state) => state.units)
  const metrics = JOBS[job].figures.filter(({ id }) => id !== 'stepError')
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="figures-scroll" tabIndex={0} aria-label="Figures of all parts">
        <table className="spread-table">
          <thead>
            <tr>
              <th scope="col">Figure</th>
              {answers.map(({ strategy }) => (
                <th key={strategy} scope="colgroup" colSpan={COLUMNS.length}>
                  {STRATEGIES.find(({ id }) => id === strategy)!.label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {metrics.map((metric) => (
              <tr key={metric.id}>
                <th scope="row" title={textIn(metric.note, wordingOf(units))}>
                  {metric.label} <span className="unit">{metricText(metric, null, units).symbol}</span>
                </th>
                {answers.flatMap(({ strategy, figures }) =>
                  COLUMNS.map((p) => {
                    const value = figures[metric.id]!.quantiles[p]
                    return (
                      <td key={`${strategy} ${p}`}>
                        {value === null ? NO_FIGURE : metricText(metric, value, units).text}
                      </td>
                    )
                  }),
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  )
}
