import { jobOf, textIn, wordingOf } from '../../../sim/index.ts'
import { Assumed } from './Assumed.tsx'
import { CauseTable } from './FigureTable.tsx'
import { FittedTo } from './FittedTo.tsx'
import type { Leaving } from './fit.ts'
import { notesOf } from './job.ts'
import { ManyParts } from './ManyParts.tsx'
import { Margins } from './Margins.tsx'
import type { Matter } from './matter.ts'
import { OverTraces } from './OverTrace.tsx'
import { Changed, SettingTable } from './Settings.tsx'
import { allParameters, changesFrom } from './settings.ts'
import { Fitted } from './TwoAxes.tsx'

/** Pages after the first: what the first had no room for, every parameter, and how each figure is computed. */
export function Appendix({ matter, left }: { matter: Matter; left: readonly Leaving[] }) {
  const { scenario, base, units, columns, beside, told, many, loops, fitting } = matter
  return (
    <div className="report-appendix">
      {left.includes('notes') && (
        <section aria-labelledby="report-notes">
          <h2 id="report-notes">Notes</h2>
          <p className="report-notes">{notesOf(scenario, fitting)}</p>
        </section>
      )}
      {beside && left.includes('fitted') && (
        <p>
          {beside.title}.
          <Fitted {...{ scenario, beside, units }} />
        </p>
      )}
      <OverTraces scenario={scenario} columns={columns} units={units} />
      {left.includes('assumed') && <Assumed scenario={scenario} units={units} />}
      {left.includes('changes') && <Changed {...changesFrom(base, scenario, [], units)} />}
      {fitting && left.includes('log') && (
        <FittedTo fitting={fitting} scenario={scenario} units={units} short={false} />
      )}
      {many && left.includes('varies') && <ManyParts many={many} columns={columns} units={units} short={false} />}
      {left.includes('causes') && <CauseTable scenario={scenario} columns={columns} told={told} units={units} />}
      {left.includes('margins') && <Margins scenario={scenario} units={units} loops={loops} />}
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
          {jobOf(scenario).figures.map(({ id, label, note }) => (
            <div key={id}>
              <dt>{label}</dt>
              <dd>{textIn(note, wordingOf(units))}</dd>
            </div>
          ))}
        </dl>
      </section>
    </div>
  )
}
