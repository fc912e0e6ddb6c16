import type { Scenario } from '../../../sim/index.ts'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import type { UnitSystem } from '../../read/units.ts'
import { armItems, axisItems, type Item, partItems } from './job.ts'

/** Notes longer than this [characters] stand on a page of their own. */
export const SHORT_NOTES = 420

/** What is gripped, by what, and what the arm does with it; then the force window. */
export function Job({ scenario, units }: { scenario: Scenario; units: UnitSystem }) {
  const { notes } = scenario
  return (
    <>
      {notes !== '' && (
        <p className="report-notes">
          {notes.length <= SHORT_NOTES ? notes : 'The notes to this scenario stand at the end.'}
        </p>
      )}
      <div className="report-job">
        <Items title="Part and pads" items={partItems(scenario, units)} />
        <Items title="Axis" items={axisItems(scenario, units)} />
        <Items title="Arm" items={armItems(scenario, units)} lines />
      </div>
      <WindowLine />
    </>
  )
}

/** In running text, or each on a line of its own. */
function Items({ title, items, lines = false }: { title: string; items: Item[]; lines?: boolean }) {
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <ul data-lines={lines}>
        {items.map(({ label, value }) => (
          <li key={`${label} ${value}`}>
            {label} <b>{value}</b>
          </li>
        ))}
      </ul>
    </section>
  )
}
