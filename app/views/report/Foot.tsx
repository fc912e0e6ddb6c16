import { CAUTION, type Scenario, shownAs } from '../../../sim/index.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { axisName } from '../../read/scenario/putAxis.ts'
import { fileName, saveScenario } from '../../store/file.ts'
import type { RunView } from '../../store/results.ts'
import { Button } from '../../ui/Button.tsx'
import { formatPlain } from '../../ui/format.ts'
import { VERSION } from '../../version.ts'
import type { Column } from './columns.ts'
import { LEAVING, type Leaving } from './fit.ts'
import type { SecondAxis } from './matter.ts'
import { reproductionOf } from './reproduce.ts'

export function Cautions({ scenario }: { scenario: Scenario }) {
  return (
    <section aria-labelledby="report-cautions">
      <h2 id="report-cautions">Cautions</h2>
      <p>
        {shownAs(scenario).danger} {CAUTION}
      </p>
    </section>
  )
}

interface ReproduceProps {
  base: Scenario
  scenario: Scenario
  /** The axis beside, where there is one. */
  beside: SecondAxis | null
  columns: Column[]
}

/** What it takes to come to the same figures: a command, with the scenario's file where a command would be too long. */
export function Reproduce({ base, scenario, beside, columns }: ReproduceProps) {
  const of = (label: string, run: RunView | undefined) => (run?.result ? [{ label, result: run.result }] : [])
  const results = [
    ...columns.flatMap(({ label, run }) => of(label, run)),
    ...columns.flatMap((column) => of(`○ ${column.label}`, column.beside)),
  ]
  const step = results[0]?.result.step
  const reproduction = reproductionOf(base, scenario)
  return (
    <section aria-labelledby="report-reproduce">
      <h2 id="report-reproduce">To reproduce</h2>
      <p>
        <code>{reproduction.command}</code>
      </p>
      {'file' in reproduction && (
        <p>
          The scenario’s file <b>{reproduction.file}</b> belongs to this page.{' '}
          <Button className="report-save" onClick={() => saveScenario(scenario)}>
            Save it
          </Button>
        </p>
      )}
      {beside && <ReproduceBeside {...beside} />}
      <p>Where the fingerprints of the traces are the same, so is every figure, to the last digit.</p>
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

/** The scenario with the axis beside is no preset: it always has a file. */
function ReproduceBeside({ title, scenario }: SecondAxis) {
  const named = { ...scenario, name: axisName(scenario.name, title) }
  const file = `${fileName(named.name)}.json`
  return (
    <p>
      <Ring />
      <code>
        jawbench {scenario.job} {file}
      </code>{' '}
      <Button className="report-save" onClick={() => saveScenario(named)}>
        Save it
      </Button>
    </p>
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

/** What the page had no room for, and blanks for those who sign. */
export function Foot({ left, further }: { left: readonly Leaving[]; further: boolean }) {
  return (
    <footer>
      {left.length > 0 && (
        <p className="report-small">
          Left out to keep to one page: {left.map((each) => LEAVING[each]).join(', ')}.{' '}
          {further ? 'The further pages have it all.' : 'The report’s further pages would have it all.'}
        </p>
      )}
      <dl className="report-sign">
        {['For', 'Prepared by', 'Checked by', 'Signed on'].map((blank) => (
          <div key={blank}>
            <dt>{blank}</dt>
            <dd />
          </div>
        ))}
      </dl>
    </footer>
  )
}
