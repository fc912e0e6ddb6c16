import { assumedOf, type Scenario } from '../../../sim/index.ts'
import { textAt } from '../../read/scenario/textAt.ts'
import type { UnitSystem } from '../../read/units.ts'

export function Assumed({ scenario, units }: { scenario: Scenario; units: UnitSystem }) {
  return (
    <section aria-labelledby="report-assumed">
      <h2 id="report-assumed">Assumed</h2>
      <ul className="report-list">
        {assumedOf(scenario, (path) => textAt(scenario, path, units)).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  )
}
