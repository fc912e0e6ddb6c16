import { useRef, useState } from 'react'
import { type StrategyId, type Why, whyRule, whySentence, wordingOf } from '../../../../sim/index.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Rescues } from './Rescues.tsx'
import { type Rested, useRested } from './useRested.ts'
import { useStudy } from './useStudy.ts'
import { WhyChart } from './WhyChart.tsx'
import './why.css'

/** Why it came so, and what would save the part; worked out while it is open and the bench is at rest. */
export function WhyFold({ strategy }: { strategy: StrategyId }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="why" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Why, and what would change it</summary>
      {open && <Explained strategy={strategy} />}
    </details>
  )
}

function Explained({ strategy }: { strategy: StrategyId }) {
  const panel = useRef<HTMLDivElement>(null)
  const rested = useRested(strategy)
  const { items, ...first } = useStudy('answers', rested)
  const why = items.flatMap((item) => ('why' in item ? [item.why] : []))[0]
  // A search that was cancelled and is asked for again, about the same grip.
  const [asked, setAsked] = useState<{ about: Rested; question: Rested } | null>(null)
  const again = useStudy('rescue', asked?.about === rested ? (asked?.question ?? null) : null)
  const found = items.flatMap((item) => ('rescue' in item ? [item.rescue] : []))
  const search = again.status === 'waiting' ? { ...first, items: found } : again
  return (
    <div className="why-body" ref={panel} tabIndex={-1}>
      <p role="status" className="why-state">
        {first.status === 'failed' && !why && `This could not be worked out: ${first.message}`}
        {first.status !== 'failed' && !why && 'Taking the force apart …'}
      </p>
      {rested && why && (
        <>
          <Answer rested={rested} why={why} />
          <Rescues
            rested={rested}
            search={search}
            onAgain={() => setAsked({ about: rested, question: { ...rested } })}
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
  return (
    <>
      <p className="why-sentence">{whySentence(rested.scenario, rested.strategy, why, wordingOf(units))}</p>
      <WhyChart why={why} units={units} />
      {why.untold.map(({ cause, label, verdict }) => (
        <p key={cause} className="why-small">
          {label} could not be taken away{verdict && `: without it the grip is ${verdict}`}; what it adds is in what is
          left.
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
