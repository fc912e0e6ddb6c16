import {
  costWords,
  type Edit,
  JOBS,
  type Rescue,
  rescueSentence,
  rescueWords,
  sortRescues,
  studyWords,
  wordingOf,
} from '../../../../sim/index.ts'
import { verdictWord } from '../../../read/result/words.ts'
import { settingLabel, settingText } from '../../../read/scenario/setting.ts'
import type { Rested } from '../../../read/study/useRested.ts'
import type { UnitSystem } from '../../../read/units.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { formatFigure } from '../../../ui/format.ts'
import { HeldAfter, SharesAfter } from './SharesAfter.tsx'
import type { RescueSearch } from './useRescues.ts'

interface Props {
  rested: Rested
  search: RescueSearch
  onAgain(): void
  onTry(edits: Edit[]): void
}

/** A change of each parameter that saves the part, by what it costs, or that loses it; each can be put on the bench. */
export function Rescues({ rested, search, onAgain, onTry }: Props) {
  const { found: items, status, message, done, of, stop } = search
  const units = useView((state) => state.units)
  const found = sortRescues(rested.scenario.job, items)
  const turning = found.filter(({ value }) => value !== null)
  const rest = found.filter(({ value }) => value === null)
  const { job, actuator } = rested.scenario
  const held = rested.verdict === JOBS[job].well
  const { done: well } = studyWords(job)
  return (
    <section className="rescues" aria-label={held ? 'How far it may drift' : 'What would save it'}>
      <h3>{held ? 'How far it may drift' : 'What would save it'}</h3>
      <p className="why-small">
        {held
          ? `The nearest value of each parameter, changed alone, at which ${rescueWords(job).of} is no longer ${well}.`
          : 'Each parameter changed alone, by what the change costs in practice. A value lies well inside those that hold.'}
      </p>
      <div className="rescue-state">
        <p role="status" aria-live={status === 'running' ? 'off' : 'polite'}>
          {status === 'running' && `Searching … ${done} of ${of ?? '…'}`}
          {status === 'stopped' && `Search cancelled after ${done} of ${of ?? '…'}.`}
          {status === 'failed' && `The search could not be finished: ${message}`}
          {status === 'done' &&
            turning.length === 0 &&
            (held ? 'Nothing within the range loses it.' : 'No single change saves it.')}
          {held && status === 'done' && seedsText(found, well)}
        </p>
        {status === 'running' && <Button onClick={stop}>Cancel</Button>}
        {(status === 'stopped' || status === 'failed') && <Button onClick={onAgain}>Search again</Button>}
      </div>
      {status !== 'running' && turning.length > 0 && <SharesAfter rested={rested} changes={turning.map(editsOf)} />}
      <ul>
        {turning.map((rescue) => (
          <Found key={rescue.path} rescue={rescue} rested={rested} units={units} onTry={onTry} />
        ))}
      </ul>
      {rest.length > 0 && (
        <details className="why-small">
          <summary>
            {held ? 'No loss' : 'No help'} from {rest.length} others
          </summary>
          <ul>
            {rest.map((rescue) => (
              <li key={rescue.path}>
                {settingLabel(actuator.kind, rescue.path, job)}:{' '}
                {rescueSentence(rested.scenario, rescue, wordingOf(units))}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

const editsOf = ({ path, value, along }: Rescue): Edit[] => [{ path, value }, ...along]

/** How many seeds of the noise leave a held part as it is. */
function seedsText([first]: Rescue[], well: string): string {
  return first?.seeds
    ? ` With ${first.seeds.held} of ${first.seeds.of} seeds of the noise it is ${well} as it stands.`
    : ''
}

interface FoundProps {
  rescue: Rescue
  rested: Rested
  units: UnitSystem
  onTry(edits: Edit[]): void
}

function Found({ rescue, rested, units, onTry }: FoundProps) {
  const { scenario } = rested
  const { path, from, value, change, becomes, along, cost } = rescue
  const label = settingLabel(scenario.actuator.kind, path, scenario.job)
  const say = (at: string, figure: unknown) => settingText(scenario, at, figure, units)
  return (
    <li>
      <span className="rescue-label">{label}</span>
      <span className="rescue-value">
        {say(path, from)} → <strong>{say(path, value)}</strong>
        {change !== null && <span className="change">{percent(change)}</span>}
        {becomes !== JOBS[scenario.job].well && becomes && (
          <span className="change">{verdictWord(becomes).toLowerCase()}</span>
        )}
      </span>
      <Button onClick={() => onTry(editsOf(rescue))}>
        Try it
        <span className="sr-only">
          : {label} {say(path, value)}
        </span>
      </Button>
      {along.length > 0 && (
        <span className="why-small rescue-along">
          with{' '}
          {along
            .map(
              (edit) =>
                `${settingLabel(scenario.actuator.kind, edit.path, scenario.job)} ${say(edit.path, edit.value)}`,
            )
            .join(', ')}
        </span>
      )}
      <span className="why-small rescue-along">
        {becomes === JOBS[scenario.job].well && `Takes ${costWords(scenario.job, cost)}. `}
        {rescueSentence(scenario, rescue, wordingOf(units))}
      </span>
      <HeldAfter rested={rested} edits={editsOf(rescue)} />
    </li>
  )
}

const percent = (change: number) => `${change > 0 ? '+' : ''}${formatFigure(100 * change, 2)} %`
