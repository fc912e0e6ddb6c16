import type { Scenario } from '../../../sim/index.ts'
import { addressOf } from '../../store/address.ts'
import { formatPlain } from '../../ui/format.ts'
import { VERSION } from '../../version.ts'
import type { Column } from './columns.ts'

export function Cautions() {
  return (
    <section aria-labelledby="report-cautions">
      <h2 id="report-cautions">Cautions</h2>
      <p>
        Grippers pinch and crush, may start unexpectedly, and may drop the part or keep hold of it when power fails.
        These figures come from a simulation: no measurement, no safety function, no proof. Enter settings at reduced
        force and speed first, with hands out of reach. The risk assessment of the machine, the standards in force and
        licensed practice decide; where they say something else, they are right.
      </p>
    </section>
  )
}

/** What it takes to come to the same figures. */
export function Reproduce({ scenario, columns }: { scenario: Scenario; columns: Column[] }) {
  const results = columns.flatMap(({ label, run }) => (run?.result ? [{ label, result: run.result }] : []))
  const step = results[0]?.result.step
  return (
    <section aria-labelledby="report-reproduce">
      <h2 id="report-reproduce">To reproduce</h2>
      <p>
        Open the link below, or save the scenario and give it to <code>jawbench grip</code>. Where the fingerprints of
        the traces are the same, so is every figure, to the last digit.
      </p>
      <dl className="report-prints">
        <Print name="Jawbench" value={`${VERSION}, format ${scenario.version}`} />
        {step !== undefined && <Print name="Step" value={`${formatPlain(step * 1e6, 3)} µs`} />}
        <Print name="Seed of the noise" value={String(scenario.run.seed)} />
        {results.map(({ label, result }) => (
          <Print key={label} name={label} value={result.hash} />
        ))}
      </dl>
    </section>
  )
}

function Print({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  )
}

/** The link to the scenario, and blanks for those who sign. The date is theirs: the same scenario prints the same page. */
export function Foot({ scenario }: { scenario: Scenario }) {
  const link = addressOf(scenario)
  return (
    <footer>
      <p className="report-link">
        <a href={link}>{link}</a>
      </p>
      <dl className="report-sign">
        {['For', 'Prepared by', 'Checked by', 'Date'].map((blank) => (
          <div key={blank}>
            <dt>{blank}</dt>
            <dd />
          </div>
        ))}
      </dl>
    </footer>
  )
}
