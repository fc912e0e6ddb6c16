import { useMemo } from 'react'
import { bestOf, JOBS, jobOf, jobWords, REACH, strategiesOn } from '../../../../sim/index.ts'
import { quantityUnit } from '../../../read/units.ts'
import { useScenario } from '../../../store/scenario.ts'
import { Button } from '../../../ui/Button.tsx'
import { Choice } from '../../../ui/Choice.tsx'
import { NumberField } from '../../../ui/NumberField.tsx'
import { named } from '../scales.ts'
import { Picked } from './Picked.tsx'
import { choices, goalsOf, isPlaced, misses, nearest } from './points.ts'
import { pick, type Search, setOptions, shownPick, startTune, stopTune, useTune } from './state.ts'
import { TradeOff } from './TradeOff.tsx'
import './tune.css'

/** Search over gains for the best grip that keeps its margins at every working point and holds the three parts. */
export function Tune() {
  const search = useTune((state) => state.search)
  const scenario = useScenario((state) => state.scenario)
  const words = jobWords(scenario)
  const takes = jobOf(scenario).tune.takes(scenario)
  return (
    <section className="loops-tune" aria-label="Robust tune">
      <h2>Robust tune</h2>
      <p className="loops-small">
        Searches all gains, zero included, for the best {words.study.run} that keeps these margins at all working points
        and is {words.study.done} on the softest, the nominal and the stiffest {words.loops.gives}
        {takes &&
          `, with at least ${Math.round(100 * REACH)} % of the least ${words.study.effort} that the setting means`}
        . Figures are the worst of the three.
      </p>
      <Options />
      <Command />
      {search && <Found search={search} />}
    </section>
  )
}

const DEGREES = named('°')
const BARE = named('')
function Options() {
  const options = useTune((state) => state.options)
  const { job } = useScenario((state) => state.scenario)
  const kinds = strategiesOn(JOBS[job]).map(({ id, label }) => ({ value: id, label }))
  return (
    <div className="loops-scales">
      <Choice
        label="Strategy"
        options={kinds}
        value={options.strategy}
        onChoose={(strategy) => setOptions({ strategy })}
      />
      <Choice
        label="Objective"
        options={goalsOf(job)}
        value={options.objective}
        onChoose={(objective) => setOptions({ objective })}
      />
      <NumberField
        label="Least phase margin"
        unit={DEGREES}
        value={options.phaseMargin}
        min={5}
        max={90}
        note="At any working point."
        onEdit={(phaseMargin) => setOptions({ phaseMargin })}
      />
      <NumberField
        label="Highest peak sensitivity"
        unit={BARE}
        value={options.peakSensitivity}
        min={1.05}
        max={5}
        note="At any working point; smaller is safer."
        onEdit={(peakSensitivity) => setOptions({ peakSensitivity })}
      />
      <NumberField
        label="Stiffness spread"
        unit={quantityUnit('ratio', 'si')}
        value={options.spread}
        min={0}
        max={0.9}
        note="By how much the softest and the stiffest differ from the nominal one."
        onEdit={(spread) => setOptions({ spread })}
      />
    </div>
  )
}

function Command() {
  const scenario = useScenario((state) => state.scenario)
  const search = useTune((state) => state.search)
  const done = search?.candidates.length ?? 0
  const running = search?.status === 'running'
  const alike = useTune(({ options }) => options.objective === 'share') && scenario.spread.varies.length === 0
  return (
    <div className="tune-command">
      <Button disabled={alike && !running} onClick={() => (running ? stopTune() : startTune(scenario))}>
        {running ? 'Stop' : 'Search'}
      </Button>
      {alike && !running && <p>Nothing varies from part to part yet: say what does in the view of many parts.</p>}
      {running && (
        <>
          <progress aria-label="Search" value={done} max={search.of || 1} />
          <span>
            {done} of {search.of || '…'}
          </span>
        </>
      )}
      <p role="status">{search ? outcome(search) : ''}</p>
    </div>
  )
}

/** How the search ended, and what it found; '' while it runs. */
function outcome({ status, message, candidates, of }: Search): string {
  if (status === 'running') return ''
  if (status === 'failed') return `The search failed: ${message}`
  const sound = candidates.filter((candidate) => candidate.sound).length
  const tried =
    status === 'stopped' ? `Stopped after ${candidates.length} of ${of || '…'}.` : `${candidates.length} tried.`
  return `${tried} ${sound === 0 ? 'None is sound.' : `${sound} ${sound === 1 ? 'is' : 'are'} sound.`}`
}

function Found({ search }: { search: Search }) {
  const { candidates, present, options, status } = search
  const picked = useTune(shownPick)
  const best = useMemo(() => bestOf(candidates, options.objective), [candidates, options])
  const shown = useMemo(() => choices(candidates, options.objective), [candidates, options])
  const missed = useMemo(() => misses(candidates), [candidates])
  return (
    <>
      {isPlaced(picked) && shown.length > 0 && (
        <>
          <TradeOff
            job={search.scenario.job}
            candidates={candidates}
            choices={shown}
            best={best}
            present={present}
            picked={shown.includes(picked) ? picked : shown[0]!}
            onPick={pick}
          />
          <Picked search={search} picked={picked} best={picked === best} />
        </>
      )}
      {status !== 'running' && missed.length > 0 && <Missed missed={missed} search={search} />}
    </>
  )
}

function Missed({ missed, search }: { missed: { miss: string; count: number }[]; search: Search }) {
  const { candidates } = search
  const none = candidates.every(({ sound }) => !sound)
  return (
    <p className={none ? '' : 'loops-small'}>
      Not sound: {missed.map(({ miss, count }) => `${miss} (${count})`).join(', ')}.{' '}
      {none && nearest(candidates, missed[0]!.miss)}
      {none && ' Ask for less margin or spread, another strategy, or a gentler approach.'}
    </p>
  )
}
