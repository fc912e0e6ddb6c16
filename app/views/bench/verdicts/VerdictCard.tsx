import type { ReactNode } from 'react'
import { STRATEGIES, type StrategyId } from '../../../../sim/index.ts'
import { type RunView, useResults } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { FIGURES } from '../figures.ts'
import { useNarrow } from '../useNarrow.ts'
import { FigureValue } from './FigureValue.tsx'
import { differenceText, isDamage, reasonText, VERDICT_WORDS } from './words.ts'

/** What became of one strategy's grip, and why. */
export function VerdictCard({ strategy }: { strategy: StrategyId }) {
  const run = useResults((state) => state.runs[strategy])
  const { pin } = useResults.getState()
  const { label, summary } = STRATEGIES.find((each) => each.id === strategy)!
  const result = run?.result
  return (
    <article
      className="verdict"
      data-strategy={strategy}
      aria-label={label}
      aria-busy={!run || run.status === 'running'}
    >
      <header>
        <h3 title={summary}>{label}</h3>
        <Button quiet disabled={run?.status !== 'done'} onClick={() => pin(strategy, label)}>
          Pin<span className="sr-only"> this run of {label}</span>
        </Button>
      </header>
      {result && run ? <Outcome run={run} /> : <Waiting run={run} />}
    </article>
  )
}

function Waiting({ run }: { run: RunView | undefined }) {
  if (run?.status === 'failed')
    return (
      <>
        <p className="word">No result</p>
        <p className="reason">The simulation could not be run: {run.message}</p>
      </>
    )
  return <p className="word">Closing …</p>
}

/** On a narrow page the figures stay folded, so that the picture is not far. */
function FigureList({ narrow, children }: { narrow: boolean; children: ReactNode }) {
  if (!narrow) return children
  return (
    <details>
      <summary>Figures</summary>
      {children}
    </details>
  )
}

function Outcome({ run }: { run: RunView }) {
  const narrow = useNarrow()
  const units = useView((state) => state.units)
  const reference = useReference(run.strategy)
  const result = run.result!
  return (
    <>
      <p className="word" data-damage={isDamage(result.verdict)}>
        {VERDICT_WORDS[result.verdict]}
      </p>
      <p className="reason">{reasonText(run, units)}</p>
      <FigureList narrow={narrow}>
        <dl className="figures">
          {FIGURES.map((figure) => {
            const before = reference?.result ? figure.value(reference.result) : null
            const change = differenceText(figure, figure.value(result), before, units)
            return (
              <div key={figure.id}>
                <dt>{figure.label}</dt>
                <dd>
                  <FigureValue figure={figure} result={result} scenario={run.scenario} units={units} />
                  {figure.id !== 'stepError' && change && <span className="change">{change}</span>}
                </dd>
              </div>
            )
          })}
        </dl>
      </FigureList>
    </>
  )
}

/** The run that figures of a strategy are compared with: its ghost, or the pin that the person chose. */
function useReference(strategy: StrategyId): RunView | undefined {
  const against = useView((state) => state.against)
  const pinned = useResults((state) => state.pins.find((pin) => pin.id === against)?.run)
  const ghost = useResults((state) => state.ghosts[strategy])
  return pinned ?? ghost
}
