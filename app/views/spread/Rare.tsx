/** Failures that plain sampling would hardly meet: how rare they are, and the likeliest way to one. */
import { memo } from 'react'
import {
  editScenario,
  exponentOf,
  grouped,
  quantityAt,
  type RareGrips,
  rareSentences,
  readPath,
  runRare,
  type SpreadStudy,
  shownUnit,
  studyWords,
  tailOf,
  variedPaths,
} from '../../../sim/index.ts'
import { nameOf } from '../../read/spread/name.ts'
import { askedOf } from '../../store/asked.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { formatPlain, withUnit } from '../../ui/format.ts'
import { crew } from '../../worker/crew.ts'
import { Ask } from './Ask.tsx'
import { putOnBench } from './put.ts'

interface Progress {
  grips: number
  found: RareGrips | null
}

const useRare = askedOf<SpreadStudy, Progress>(async ({ scenario, seed }, strategy, tell) => {
  const found = await runRare(scenario, { strategy, seed }, crew, (grips) => tell({ grips, found: null }))
  tell({ grips: found.grips, found })
})

export const Rare = memo(function Rare({ study }: { study: SpreadStudy }) {
  return (
    <Ask
      store={useRare}
      question={study}
      about={study.scenario}
      subjects={study.strategies}
      name="Rare failures"
      className="rare"
      heading="How rare is a failure?"
      begin="Search for failures"
      again="Search anew"
      progress={({ grips }) => `${grouped(grips)} parts ${studyWords(study.scenario.job).acted}`}
      failed="They could not be searched"
    >
      {({ found }) => found && <Found study={study} found={found} />}
    </Ask>
  )
})

function Found({ study: { scenario }, found }: { study: SpreadStudy; found: RareGrips }) {
  const [answer, ...more] = rareSentences(scenario.job, found)
  const { likeliest } = found
  const put = () => {
    const failing = likeliest && editScenario(scenario, likeliest)
    if (failing?.ok) putOnBench('The likeliest failure of the study', failing.scenario, scenario)
  }
  return (
    <>
      <p className="rare-answer">{answer}</p>
      {likeliest && (
        <>
          <Way study={scenario} found={found} />
          <Button onClick={put}>Put this failure on the bench</Button>
        </>
      )}
      {more.map((sentence) => (
        <p key={sentence} className="spread-note">
          {sentence}
        </p>
      ))}
    </>
  )
}

/** Quantities told of the way. */
const TOLD = 6

/** The likeliest way to fail: what is farthest out first. */
function Way({ study, found: { rare, likeliest } }: { study: SpreadStudy['scenario']; found: RareGrips }) {
  const units = useView((state) => state.units)
  if (rare.kind !== 'share' || !likeliest) return null
  const scores = rare.likeliest
  const farthest = [...scores.keys()].sort((a, b) => Math.abs(scores[b]!) - Math.abs(scores[a]!)).slice(0, TOLD)
  const alone = study.spread.together.length === 0
  return (
    <table className="spread-table">
      <caption>The likeliest way to fail that was found, what is farthest out first</caption>
      <thead>
        <tr>
          <th scope="col">Quantity</th>
          <th scope="col">There</th>
          <th scope="col">In the file</th>
          {alone && <th scope="col">Parts as far out</th>}
        </tr>
      </thead>
      <tbody>
        {farthest.map((at) => {
          const path = variedPaths(study)[at]!
          const unit = shownUnit(quantityAt(study, path)!, units, exponentOf(study))
          const text = (value: unknown) => withUnit(formatPlain(unit.toShown(Number(value)), 3), unit.symbol)
          return (
            <tr key={path}>
              <th scope="row">{nameOf(study, path)}</th>
              <td>{text(likeliest[at]!.value)}</td>
              <td>{text(readPath(study, path))}</td>
              {alone && <td>1 in {grouped(Math.round(1 / tailOf(scores[at]!)))}</td>}
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
