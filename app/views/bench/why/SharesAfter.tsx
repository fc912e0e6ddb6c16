/** On a press: how many parts that vary as the file says each change would hold, the same parts for all of them. */
import { useEffect } from 'react'
import {
  type AfterQuestion,
  afterSentence,
  type Edit,
  type Gained,
  grouped,
  notAfter,
  percent,
  runAfter,
  studyWords,
} from '../../../../sim/index.ts'
import type { Rested } from '../../../read/study/useRested.ts'
import { askedOf } from '../../../store/asked.ts'
import { Button } from '../../../ui/Button.tsx'
import { crew } from '../../../worker/crew.ts'

/** Parts that every change is tried on. */
const PARTS = 200

interface Question extends AfterQuestion {
  changes: Edit[][]
}

interface Progress {
  done: number
  /** By change, as JSON. */
  shares: Map<string, Gained | null>
}

const useShares = askedOf<Question, Progress>(async ({ changes, ...question }, _, tell) => {
  const told = (done: number, answers: readonly (Gained | null)[]) =>
    tell({ done, shares: new Map(answers.map((answer, at) => [JSON.stringify(changes[at]), answer])) })
  told(1, await runAfter(question, changes, crew, told))
})

interface Props {
  rested: Rested
  changes: Edit[][]
}

export function SharesAfter({ rested: { scenario, strategy }, changes }: Props) {
  const { about, asking, answers, message, ask, stop } = useShares()
  const own = about === scenario
  const running = own && asking === strategy
  const answer = own ? answers[strategy] : undefined
  useEffect(() => () => stopOf(strategy), [strategy])
  if (scenario.spread.varies.length === 0) return null
  const { act, acting, done } = studyWords(scenario.job)
  const question = { scenario, strategy, grips: PARTS, seed: scenario.run.seed, changes }
  return (
    <div className="rescue-shares">
      <p role="status">
        {running && `${capital(acting)} ${grouped(PARTS)} parts with each … ${percent(answer?.done ?? 0)} done`}
        {!running && !answer && `How many parts that vary would be ${done} with each of them?`}
        {!asking && own && message && `That could not be tried: ${message}`}
      </p>
      {running ? (
        <Button onClick={stop}>Cancel</Button>
      ) : (
        (!answer || answer.done < 1) && (
          <Button onClick={() => ask(question, strategy, scenario)}>
            {capital(act)} {grouped(PARTS)} parts
          </Button>
        )
      )}
    </div>
  )
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1)

/** Nobody looks at it any more. */
function stopOf(strategy: Rested['strategy']): void {
  const { asking, stop } = useShares.getState()
  if (asking === strategy) stop()
}

/** What came of one of the changes; nothing until it is known. */
export function HeldAfter({ rested: { scenario, strategy }, edits }: { rested: Rested; edits: Edit[] }) {
  const { about, answers } = useShares()
  const share = about === scenario ? answers[strategy]?.shares.get(JSON.stringify(edits)) : undefined
  if (share === undefined) return null
  return (
    <span className="why-small rescue-along rescue-held">
      {share ? afterSentence(scenario.job, share, PARTS) : notAfter(scenario.job)}
    </span>
  )
}
