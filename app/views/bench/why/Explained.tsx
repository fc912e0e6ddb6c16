import { useRef } from 'react'
import { type StrategyId, studyWords, type Why, whyRule, whySentence, wordingOf } from '../../../../sim/index.ts'
import { noResult } from '../../../read/result/words.ts'
import { type Rested, useRested } from '../../../read/study/useRested.ts'
import { useStudy } from '../../../read/study/useStudy.ts'
import { WhyChart } from '../../../read/why/WhyChart.tsx'
import { useResults } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Rescues } from './Rescues.tsx'
import { useRescues } from './useRescues.ts'

/** What made the force, and which single changes would turn the verdict. */
export function Explained({ strategy }: { strategy: StrategyId }) {
  const panel = useRef<HTMLDivElement>(null)
  const rested = useRested(strategy)
  const { items, status, message } = useStudy('why', rested)
  const why = items[0]
  const run = useResults(({ runs }) => runs[strategy])
  const none = run && noResult(run)
  const { effort } = useScenario(({ scenario }) => studyWords(scenario.job))
  const { search, again } = useRescues(rested)
  return (
    <div className="why-body" ref={panel} tabIndex={-1}>
      <p role="status" className="why-state">
        {status === 'failed' && `This could not be worked out: ${message}`}
        {none?.why}
        {!none && status !== 'failed' && !why && `Taking the ${effort} apart …`}
      </p>
      {rested && why && (
        <>
          <Answer rested={rested} why={why} />
          <Rescues
            rested={rested}
            search={search}
            onAgain={again}
            onTry={(edits) => {
              useScenario.getState().editMany(edits)
              panel.current?.focus()
            }}
          />
        </>
      )}
    </div>
  )
}

function Answer({ rested, why }: { rested: Rested; why: Why }) {
  const units = useView((state) => state.units)
  const { run } = studyWords(rested.scenario.job)
  return (
    <>
      <p className="why-sentence">{whySentence(rested.scenario, why, wordingOf(units))}</p>
      <WhyChart why={why} units={units} />
      {why.untold.map(({ cause, label, verdict }) => (
        <p key={cause} className="why-small">
          {label} could not be taken away{verdict && `: without it the ${run} is ${verdict}`}; what it adds is in what
          is left.
        </p>
      ))}
      {why.force !== null && (
        <details className="why-small">
          <summary>How the causes are found</summary>
          <p>{whyRule(why)}</p>
          <dl>
            {why.causes.map(({ cause, label, without }) => (
              <div key={cause}>
                <dt>{label}</dt>
                <dd>{without}</dd>
              </div>
            ))}
          </dl>
        </details>
      )}
    </>
  )
}
