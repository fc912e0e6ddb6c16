import type { Scenario } from '../../../sim/index.ts'
import type { UnitSystem } from '../../read/units.ts'
import { assumed } from './assumed.ts'

export function Assumed({ scenario, units }: { scenario: Scenario; units: UnitSystem }) {
  return (
    <section aria-labelledby="report-assumed">
      <h2 id="report-assumed">Assumed</h2>
      <ul className="report-list">
        {assumed(scenario, units).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  )
}
