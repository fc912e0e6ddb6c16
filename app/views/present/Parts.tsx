/** Of many, how many come out well: a share and its limits for every strategy, over the highest efforts in the window. */
import { useEffect } from 'react'
import {
  fatesOf,
  grouped,
  holdSentence,
  JOBS,
  type JobId,
  percent,
  progressText,
  rangeText,
  type SpreadAnswer,
  shownAs,
  strategyOf,
  studyWords,
} from '../../../sim/index.ts'
import { toneOf, verdictWord } from '../../read/result/words.ts'
import { Histogram } from '../../read/spread/Histogram.tsx'
import { useAnswersAtHand } from '../../read/spread/useAnswers.ts'
import { useNominal } from '../../store/lent.ts'
import { allOf, doneOf, useSpread } from '../../store/spread.ts'
import { Button } from '../../ui/Button.tsx'

/** Runs of a study that is made here, where none is at hand. */
const PARTS = 1000

export function Parts() {
  const scenario = useNominal()
  const { study: known, run } = useSpread()
  const found = useAnswersAtHand()
  const { works } = shownAs(scenario)
  const { act } = studyWords(scenario.job)
  const study = () => run(scenario, PARTS, scenario.run.seed)
  // A study of something else is somebody's work: it is not thrown away unasked.
  useEffect(() => {
    if (!known) study()
  }, [])
  if (!found)
    return (
      <div className="parts-slide">
        <p>The study at hand is of another scenario than the one on the bench.</p>
        <Button onClick={study}>
          {act.charAt(0).toUpperCase()}
          {act.slice(1)} {grouped(PARTS)} {works} of this scenario
        </Button>
      </div>
    )
  return (
    <div className="parts-slide">
      <p className="parts-lead">
        Of {grouped(Math.max(...found.answers.map(({ grips }) => grips), 0))} {works} that differ as the file says:{' '}
        <Progress />
      </p>
      <div className="outcome-words">
        {found.answers.map((answer) => (
          <Shares key={answer.strategy} job={found.study.scenario.job} answer={answer} />
        ))}
      </div>
      {found.answers.length > 0 && <Histogram study={found.study} answers={found.answers} first />}
      <p className="parts-note">
        Simulated. The limits hold the true share in 95 of 100 studies, for {works} that differ as was assumed.
      </p>
    </div>
  )
}

function Progress() {
  const state = useSpread()
  if (state.status === 'done') return null
  if (state.status !== 'running') return <Button onClick={() => state.goOn()}>Go on</Button>
  const since = (performance.now() - state.since) / 1000
  const share = (doneOf(state) - state.before) / Math.max(1, allOf(state) - state.before)
  return <span className="unit">{progressText(share, since)}</span>
}

/** Fates told beside what comes out well. */
const TOLD = 2

function Shares({ job, answer }: { job: JobId; answer: SpreadAnswer }) {
  const { strategy, shares, fit, grips } = answer
  const { well } = JOBS[job]
  const held = shares[well]!
  const lost = fatesOf(job)
    .filter((fate) => fate !== well && fate !== 'refused')
    .flatMap((fate) => (shares[fate]?.count ? [{ fate, share: shares[fate] }] : []))
    .sort((a, b) => b.share.count - a.share.count)
    .slice(0, TOLD)
  return (
    <section className="outcome-verdict" data-strategy={strategy}>
      <h2>{strategyOf(strategy).label}</h2>
      <p className="outcome-word">{percent(held.share)}</p>
      <p>{holdSentence(job, { grips, shares })}.</p>
      {fit.count < held.count && <p data-tone="failure">{percent(fit.share)} as required</p>}
      {lost.map(({ fate, share }) => (
        <p key={fate} data-tone={toneOf(fate)}>
          {verdictWord(fate)} {percent(share.share)} <span className="unit">({rangeText(share)})</span>
        </p>
      ))}
    </section>
  )
}
