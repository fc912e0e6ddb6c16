import { METRICS } from '../../../sim/index.ts'

/** How each figure of a run is computed, in the words that bench and report use. */
export function MetricNotes() {
  return (
    <table className="model-table" aria-label="How the figures are computed">
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col">How it is computed</th>
        </tr>
      </thead>
      <tbody>
        {METRICS.map(({ id, label, note }) => (
          <tr key={id}>
            <th scope="row">{label}</th>
            <td>{note}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
