import { METRICS, type Scenario } from '../../../sim/index.ts'
import type { UnitSystem } from '../../read/units.ts'
import { SHORT_NOTES } from './Job.tsx'
import { SettingTable } from './Settings.tsx'
import { allParameters } from './settings.ts'

interface Props {
  scenario: Scenario
  base: Scenario
  units: UnitSystem
  parameters: boolean
}

/** Pages after the first: long notes, every parameter, and how each figure is computed. */
export function Appendix({ scenario, base, units, parameters }: Props) {
  return (
    <div className="report-appendix">
      {scenario.notes.length > SHORT_NOTES && (
        <section aria-labelledby="report-notes">
          <h2 id="report-notes">Notes</h2>
          <p className="report-notes">{scenario.notes}</p>
        </section>
      )}
      {parameters && (
        <>
          <section aria-labelledby="report-parameters">
            <h2 id="report-parameters">Every parameter</h2>
            <div className="report-parameters">
              {allParameters(scenario, base, units).map((group) => (
                <SettingTable key={group.title} groups={[group]} />
              ))}
            </div>
          </section>
          <section aria-labelledby="report-computed">
            <h2 id="report-computed">How each figure is computed</h2>
            <dl className="report-computed">
              {METRICS.map(({ id, label, note }) => (
                <div key={id}>
                  <dt>{label}</dt>
                  <dd>{note}</dd>
                </div>
              ))}
            </dl>
          </section>
        </>
      )}
    </div>
  )
}
