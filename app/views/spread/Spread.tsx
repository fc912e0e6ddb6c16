/** Of many parts that vary as they do on the line: how many hold, what the others fail, which part is worst. */
import { useEffect, useState } from 'react'
import { create } from 'zustand'
import { grouped, type JobId, progressText, type SpreadStudy, studyWords } from '../../../sim/index.ts'
import { editMany } from '../../parameters/refusal.ts'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import { Histogram } from '../../read/spread/Histogram.tsx'
import { gripAlike, useAnswers } from '../../read/spread/useAnswers.ts'
import { quantityUnit } from '../../read/units.ts'
import { back, lend, useLent, useNominal } from '../../store/lent.ts'
import { useScenario } from '../../store/scenario.ts'
import { allOf, doneOf, useSpread } from '../../store/spread.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Segments } from '../../ui/Choice.tsx'
import { NumberField } from '../../ui/NumberField.tsx'
import { readyCrew } from '../../worker/crew.ts'
import { BestForce } from './BestForce.tsx'
import { Drivers } from './Drivers.tsx'
import { Figures } from './Figures.tsx'
import { GripMap } from './map/GripMap.tsx'
import { Parts } from './Parts.tsx'
import { Rare } from './Rare.tsx'
import { Shares } from './Shares.tsx'
import { Tighter } from './Tighter.tsx'
import { Varies } from './Varies.tsx'
import './spread.css'

const PLACES = [
  { value: 'parts', label: 'Many parts' },
  { value: 'map', label: 'A map' },
] as const

/** Which of the two is open; it stays so while other views are. */
const usePlace = create<{ place: (typeof PLACES)[number]['value'] }>()(() => ({ place: 'parts' }))

export function Spread() {
  const study = useSpread((state) => state.study)
  const place = usePlace((state) => state.place)
  const job = useScenario(({ scenario }) => scenario.job)
  useEffect(readyCrew, [])
  return (
    <div className="spread">
      <WindowLine />
      <div className="spread-columns">
        <section className="spread-varies" aria-label="What varies">
          <h1>What differs from part to part?</h1>
          <Varies />
        </section>
        <section className="spread-answer" aria-label="What becomes of the parts">
          <Segments
            label="What is asked"
            bare
            options={PLACES}
            value={place}
            onChoose={(next) => usePlace.setState({ place: next })}
          />
          <OnLoan />
          {place === 'map' ? <GripMap /> : <Study job={job} study={study} />}
        </section>
      </div>
    </div>
  )
}

const Study = ({ job, study }: { job: JobId; study: SpreadStudy | null }) => (
  <>
    <Commands />
    {study ? <Answer /> : <Nothing job={job} />}
  </>
)

const Nothing = ({ job }: { job: JobId }) => (
  <p className="spread-nothing">
    One part of exactly the stated size proves nothing about a thousand. Say what varies, then {studyWords(job).act} as
    many parts as you like: each draws its own values and its own noise.
  </p>
)

/** Most parts of one study in the page. */
const MOST = 1e6

function Commands() {
  const scenario = useNominal()
  const { status, study, message, run, goOn, pause, clear } = useSpread()
  const [grips, setGrips] = useState(study?.grips ?? 1000)
  const units = useView((state) => state.units)
  const { act, acted } = studyWords(scenario.job)
  const begin = act.charAt(0).toUpperCase() + act.slice(1)
  const nothing = scenario.spread.varies.length === 0
  const stale = study !== null && !gripAlike(study.scenario, scenario)
  return (
    <div className="spread-commands">
      <NumberField
        label="Parts"
        unit={quantityUnit('number', units)}
        value={grips}
        min={20}
        max={MOST}
        integer
        note={`How many parts are drawn and ${acted} by every strategy, in batches of 20.`}
        onEdit={setGrips}
      />
      <div className="spread-buttons">
        {status === 'running' ? (
          <Button onClick={pause}>Pause</Button>
        ) : (
          <Button disabled={nothing} onClick={() => run(scenario, grips, scenario.run.seed)}>
            {study ? `${begin} them anew` : `${begin} them`}
          </Button>
        )}
        {status === 'paused' && <Button onClick={() => goOn()}>Go on</Button>}
        {status === 'done' && !stale && (
          <Button disabled={study !== null && study.grips + grips > MOST} onClick={() => goOn(grips)}>
            {grouped(grips)} more
          </Button>
        )}
        {study && status !== 'running' && (
          <Button quiet onClick={clear}>
            Clear
          </Button>
        )}
      </div>
      <Progress />
      {nothing && <p className="spread-hint">Nothing varies yet.</p>}
      {stale && (
        <p className="spread-hint">The answer below is that of the scenario as it was when the parts were {acted}.</p>
      )}
      {status === 'failed' && <p role="alert">The study could not go on: {message}</p>}
    </div>
  )
}

/** A part of the study stands on the bench: whose values count here is for the person to say. */
function OnLoan() {
  const bench = useScenario(({ scenario }) => scenario)
  const lent = useLent((state) => state.lent)
  const edits = back(bench, lent)
  if (!lent || edits.length === 0) return null
  return (
    <div className="spread-loan">
      <p>{lent.name} is on the bench. Here the study’s own values count, not those of that part.</p>
      <div className="spread-buttons">
        <Button onClick={() => editMany('study', edits)}>Put the study’s values back on the bench</Button>
        <Button onClick={() => lend(null)}>Let that part’s values count</Button>
      </div>
    </div>
  )
}

function Progress() {
  const state = useSpread()
  if (state.status !== 'running' && state.status !== 'paused') return null
  const [done, all] = [doneOf(state), allOf(state)]
  const since = (performance.now() - state.since) / 1000
  const left = all - state.before
  const share = left > 0 ? (done - state.before) / left : 1
  return (
    <p className="spread-progress">
      <progress
        max={all}
        value={done}
        aria-label={`Parts ${state.study ? studyWords(state.study.scenario.job).acted : ''}`}
      />{' '}
      {state.status === 'running' ? progressText(share, since) : 'paused'}
    </p>
  )
}

function Answer() {
  const found = useAnswers()
  if (!found) return null
  const { study, told, answers } = found
  if (answers.length === 0)
    return <p className="spread-nothing">The first parts are being {studyWords(study.scenario.job).acted} …</p>
  return (
    <>
      <Shares job={study.scenario.job} answers={answers} />
      <Histogram study={study} answers={answers} />
      <Parts study={study} told={told} answers={answers} />
      <Drivers study={study} />
      <Tighter study={study} />
      <BestForce study={study} />
      <Rare study={study} />
      <Figures job={study.scenario.job} answers={answers} />
    </>
  )
}
