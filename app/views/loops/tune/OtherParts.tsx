/** The picked gains on parts that the search has not seen: the best of many is a little lucky on those that chose it. */
import {
  type AfterQuestion,
  type Edit,
  type Gained,
  grouped,
  notAfter,
  othersSentence,
  percent,
  runAfter,
  type TuneCandidate,
} from '../../../../sim/index.ts'
import { askedOf } from '../../../store/asked.ts'
import { Button } from '../../../ui/Button.tsx'
import { crew } from '../../../worker/crew.ts'
import type { Search } from './state.ts'

/** Parts, and a seed that is not the search's. */
const OTHERS = { grips: 400, seed: 2 }

interface Question extends AfterQuestion {
  edits: Edit[]
}

interface Progress {
  done: number
  gained: Gained | null
}

const useOthers = askedOf<Question, Progress>(async ({ edits, ...question }, _, tell) => {
  const [gained] = await runAfter(question, [edits], crew, (done) => tell({ done, gained: null }))
  tell({ done: 1, gained: gained ?? null })
})

export function OtherParts({ search, picked }: { search: Search; picked: TuneCandidate }) {
  const { about, asking, answers, message, ask, stop } = useOthers()
  const { strategy } = search.options
  const own = about === picked
  const running = own && asking !== null
  const answer = own ? answers[strategy] : undefined
  const question = { scenario: search.scenario, strategy, ...OTHERS, edits: picked.edits }
  return (
    <div className="tune-command">
      {running ? (
        <Button onClick={stop}>Stop</Button>
      ) : (
        answer?.done !== 1 && (
          <Button onClick={() => ask(question, strategy, picked)}>
            Try them on {grouped(OTHERS.grips)} other parts
          </Button>
        )
      )}
      <p role="status">
        {running && `${percent(answer?.done ?? 0)} done`}
        {!running &&
          answer?.done === 1 &&
          (answer.gained
            ? othersSentence(search.scenario.job, answer.gained, OTHERS.grips)
            : notAfter(search.scenario.job))}
        {!running && own && message && `They could not be tried: ${message}`}
      </p>
      {picked.share === null && (
        <p className="loops-small">
          Gains without a share are not sound, or were given up once they had lost more of the parts than the best
          before.
        </p>
      )}
    </div>
  )
}
