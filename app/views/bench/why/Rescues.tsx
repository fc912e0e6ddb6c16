import { type Edit, type Rescue, sortRescues } from '../../../../sim/index.ts'
import { VERDICT_WORDS } from '../../../read/result/words.ts'
import { settingLabel, settingText } from '../../../read/scenario/setting.ts'
import type { Rested } from '../../../read/study/useRested.ts'
import type { StudyState } from '../../../read/study/useStudy.ts'
import type { UnitSystem } from '../../../read/units.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { formatFigure } from '../../../ui/format.ts'

interface Props {
  rested: Rested
  search: StudyState<'rescue'>
  onAgain(): void
  onTry(edits: Edit[]): void
}

/** The least change of each parameter that turns the verdict, by how little that is; each can be put on the bench. */
export function Rescues({ rested, search, onAgain, onTry }: Props) {
  const { items, status, message, stop } = search
  const units = useView((state) => state.units)
  const found = sortRescues(items.map(({ rescue }) => rescue))
  const turning = found.filter(({ value }) => value !== null)
  const rest = found.filter(({ value }) => value === null)
  const held = rested.verdict === 'held'
  const last = items.at(-1)
  return (
    <section className="rescues" aria-label={held ? 'How far it may drift' : 'What would save it'}>
      <h3>{held ? 'How far it may drift' : 'What would save it'}</h3>
      <p className="why-small">
        {held
          ? 'The nearest value of each parameter, changed alone, at which the part is no longer held.'
          : 'The least change of each parameter, changed alone, with which the part is held.'}
      </p>
      <div className="rescue-state">
        <p role="status" aria-live={status === 'running' ? 'off' : 'polite'}>
          {status === 'running' && `Searching … ${last?.done ?? 0} of ${last?.of ?? '…'}`}
          {status === 'stopped' && `Search cancelled after ${last?.done ?? 0} of ${last?.of ?? '…'}.`}
          {status === 'failed' && `The search could not be finished: ${message}`}
          {status === 'done' &&
            turning.length === 0 &&
            (held ? 'Nothing within the range loses it.' : 'No single change saves it.')}
        </p>
        {status === 'running' && <Button onClick={stop}>Cancel</Button>}
        {(status === 'stopped' || status === 'failed') && <Button onClick={onAgain}>Search again</Button>}
      </div>
      <ul>
        {turning.map((rescue) => (
          <Found key={rescue.path} rescue={rescue} rested={rested} units={units} onTry={onTry} />
        ))}
      </ul>
      {rest.length > 0 && (
        <details className="why-small">
          <summary>
            {held ? 'No loss' : 'No help'} from {rest.length} others, as far as they were tried
          </summary>
          <ul>
            {rest.map(({ path, tried }) => {
              const text = (value: number) => settingText(rested.scenario, path, value, units)
              return (
                <li key={path}>
                  {settingLabel(rested.scenario.actuator.kind, path)}: {text(tried[0])} to {text(tried[1])}
                </li>
              )
            })}
          </ul>
        </details>
      )}
    </section>
  )
}

interface FoundProps {
  rescue: Rescue
  rested: Rested
  units: UnitSystem
  onTry(edits: Edit[]): void
}

function Found({ rescue, rested: { scenario }, units, onTry }: FoundProps) {
  const { path, from, value, change, becomes, along } = rescue
  const label = settingLabel(scenario.actuator.kind, path)
  const say = (at: string, figure: unknown) => settingText(scenario, at, figure, units)
  return (
    <li>
      <span className="rescue-label">{label}</span>
      <span className="rescue-value">
        {say(path, from)} → <strong>{say(path, value)}</strong>
        {change !== null && <span className="change">{percent(change)}</span>}
        {becomes !== 'held' && becomes && <span className="change">{VERDICT_WORDS[becomes].toLowerCase()}</span>}
      </span>
      <Button onClick={() => onTry([{ path, value }, ...along])}>
        Try it
        <span className="sr-only">
          : {label} {say(path, value)}
        </span>
      </Button>
      {along.length > 0 && (
        <span className="why-small rescue-along">
          with{' '}
          {along
            .map((edit) => `${settingLabel(scenario.actuator.kind, edit.path)} ${say(edit.path, edit.value)}`)
            .join(', ')}
        </span>
      )}
    </li>
  )
}

const percent = (change: number) => `${change > 0 ? '+' : ''}${formatFigure(100 * change, 2)} %`
