/** The panel on the left: every key of the scenario, in the order of the power's way. */
import { memo, useMemo } from 'react'
import { create } from 'zustand'
import { type ActuatorKind, type JobId, readPath, STRATEGIES } from '../../sim/index.ts'
import { differences, type Field, fieldAt } from '../read/scenario/walk.ts'
import { useScenario } from '../store/scenario.ts'
import { useView } from '../store/view.ts'
import { type Note, NoteContext } from '../ui/note.ts'
import { ActuatorChoice } from './ActuatorChoice.tsx'
import { Fields } from './Fields.tsx'
import { Fold } from './Fold.tsx'
import { Requirements, requirementsLine } from './Requirements.tsx'
import { lineOf, type Section, sectionsOf } from './sections.ts'
import { WantedForce } from './WantedForce.tsx'
import './parameters.css'

const useNote = create<{ note: Note | null }>()(() => ({ note: null }))
const showNote = (note: Note | null) => useNote.setState({ note })

export function Parameters() {
  const kind = useScenario((state) => state.scenario.actuator.kind)
  const job = useScenario((state) => state.scenario.job)
  const sections = useMemo(() => sectionsOf(kind, job), [kind, job])
  return (
    <NoteContext value={showNote}>
      <section className="parameters" aria-label="Parameters">
        {sections.map((section) => (
          <SectionView key={section.id} section={section} kind={kind} job={job} />
        ))}
        <NoteLine />
      </section>
    </NoteContext>
  )
}

interface SectionProps {
  section: Section
  kind: ActuatorKind
  job: JobId
}

const SectionView = memo(function SectionView({ section, kind, job }: SectionProps) {
  const system = useView((state) => state.units)
  const required = section.id === 'requirements'
  const line = useScenario(({ scenario, base }) => {
    const changed = section.paths.reduce(
      (sum, path) => sum + differences(readPath(scenario, path), readPath(base, path)),
      0,
    )
    const line = required ? requirementsLine(scenario, system) : lineOf(section, scenario, system)
    return `${line}${changed > 0 ? ` · ${changed} changed` : ''}`
  })
  const strategies = section.paths.includes('strategies')
  const fields = useMemo(
    () => section.paths.flatMap((path) => content(kind, path, section.paths.length > 1, job)),
    [section, kind, job],
  )
  return (
    <>
      {section.id === 'transmission' && <ActuatorChoice />}
      <Fold id={section.id} title={section.title} line={line} level="section">
        {strategies && job === 'grip' && <WantedForce />}
        {required ? <Requirements /> : <Fields fields={fields} />}
      </Fold>
    </>
  )
})

/** What a section shows for one of its paths: the fields of a group, or the group itself if it shares the section. */
function content(kind: ActuatorKind, path: string, shared: boolean, job: JobId): Field[] {
  const field = fieldAt(kind, path, job)
  if (!field) return []
  if (field.kind !== 'group') return [field]
  if (path === 'strategies')
    return field.fields.filter((group) => STRATEGIES.some(({ setting }) => setting.path.startsWith(`${group.path}.`)))
  return shared ? [field] : field.fields
}

/** What the field that is pointed at or focused does. Screen readers get the same from the field itself. */
function NoteLine() {
  const note = useNote((state) => state.note)
  return (
    <div className="note-line" aria-hidden="true">
      {note ? (
        <>
          <strong>{note.title}.</strong> {note.text} {note.range && <span className="note-range">{note.range}</span>}
        </>
      ) : (
        <span className="note-range">
          Point at a field, or move to it with Tab, to read what it does. Drag its scale, use the arrow keys or type;
          another unit may stand behind the figure, as in 11 cm or 4.5 in.
        </span>
      )}
    </div>
  )
}
