import { type Scenario, shownAs } from '../../../sim/index.ts'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import type { UnitSystem } from '../../read/units.ts'
import type { Fitting } from '../../store/fitted.ts'
import type { Leaving } from './fit.ts'
import { axisItems, courseItems, type Item, notesOf, workItems } from './job.ts'

/** Characters of the notes that stay on a page that is full, and moves of the arm. */
const SHORT_NOTES = 180
const SHORT_MOVES = 3

interface Props {
  scenario: Scenario
  fitting: Fitting | null
  units: UnitSystem
  left: readonly Leaving[]
}

/** What is worked on, by what, and what happens meanwhile; then the window. */
export function Job({ scenario, fitting, units, left }: Props) {
  const own = notesOf(scenario, fitting)
  const { work, course } = shownAs(scenario).sheet
  const notes = left.includes('notes') ? shortened(own, SHORT_NOTES) : own
  return (
    <>
      {notes !== '' && <p className="report-notes">{notes}</p>}
      {!left.includes('job') && (
        <div className="report-job">
          <Items title={work.title} items={workItems(scenario, units)} />
          <Items title="Axis" items={axisItems(scenario, units)} />
          <Items
            title={course.title}
            items={courseItems(scenario, units, left.includes('moves') ? SHORT_MOVES : undefined)}
            lines
          />
        </div>
      )}
      <WindowLine />
    </>
  )
}

const shortened = (text: string, most: number) => {
  const line = text.replaceAll(/\s+/g, ' ').trim()
  return line.length <= most ? line : `${line.slice(0, most).replace(/\s\S*$/, '')} …`
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
