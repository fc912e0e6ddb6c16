import { memo, useRef } from 'react'
import { progressText, STRATEGIES, type StrategyId, textIn, wordingOf } from '../../../../sim/index.ts'
import { FIGURES, type Figure } from '../../../read/result/figures.ts'
import { VerdictWord } from '../../../read/result/VerdictWord.tsx'
import { differenceText, reasonText } from '../../../read/result/words.ts'
import { type RunView, useResults } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { Noted, walkNotes } from '../../../ui/Noted.tsx'
import { useNarrow } from '../../../ui/useNarrow.ts'
import { WhyFold } from '../why/WhyFold.tsx'
import { FigureValue } from './FigureValue.tsx'

/** What became of one strategy's grip, and why; while a long run goes on, what became of the one before. */
export function VerdictCard({ strategy }: { strategy: StrategyId }) {
  const run = useResults((state) => state.runs[strategy])
  const awaited = useScenario((state) => state.scenario !== run?.scenario)
  const last = useRef<RunView>(undefined)
  if (run?.result) last.current = run
  const outcome = run?.status === 'running' ? last.current : run
  const { pin } = useResults.getState()
  const { label, summary } = STRATEGIES.find((each) => each.id === strategy)!
  return (
    <article
      className="verdict"
      data-strategy={strategy}
      aria-label={label}
      aria-busy={awaited || run?.status === 'running'}
    >
      <header>
        <h2 title={summary}>{label}</h2>
        {run?.status === 'running' && <span className="closing">closing …</span>}
        <Button quiet disabled={run?.status !== 'done'} onClick={() => pin(strategy, label)}>
          Pin<span className="sr-only"> this run of {label}</span>
        </Button>
      </header>
      {run?.status === 'running' && <LongRun run={run} label={label} />}
      {outcome?.result ? <Outcome run={outcome} /> : <Waiting run={run} />}
      <WhyFold strategy={strategy} />
    </article>
  )
}

/** Time after which a run is long [s]: shorter ones are over before this can be read. */
const LONG = 1

/** How far a long run is, and a way to stop it. */
function LongRun({ run: { progress, stop }, label }: { run: RunView; label: string }) {
  const elapsed = progress ? (performance.now() - progress.since) / 1000 : 0
  if (!progress || elapsed < LONG) return null
  return (
    <p className="long-run">
      {progressText(progress.done, elapsed)}
      <Button quiet onClick={stop}>
        Stop<span className="sr-only"> this run of {label}</span>
      </Button>
    </p>
  )
}

function Waiting({ run }: { run: RunView | undefined }) {
  if (run?.again)
    return (
      <>
        <p className="word">Stopped</p>
        <p className="reason">The run has no result: {run.message}</p>
        <Button onClick={run.again}>Run it again</Button>
      </>
    )
  if (run?.status === 'failed')
    return (
      <>
        <p className="word">No result</p>
        <p className="reason">The simulation could not be run: {run.message}</p>
      </>
    )
  return <p className="word">Closing …</p>
}

/** Figures that are always in sight on a wide page. */
const MAIN = 6

const Outcome = memo(function Outcome({ run }: { run: RunView }) {
  const narrow = useNarrow()
  const units = useView((state) => state.units)
  const result = run.result!
  const main = narrow ? 0 : MAIN
  return (
    <>
      <p className="word">
        <VerdictWord result={result} />
      </p>
      <p className="reason">{reasonText(run, units)}</p>
      {main > 0 && <FigureList run={run} figures={FIGURES.slice(0, main)} />}
      <details>
        <summary>{main > 0 ? 'More figures' : 'Figures'}</summary>
        <FigureList run={run} figures={FIGURES.slice(main)} />
      </details>
    </>
  )
})

function FigureList({ run, figures }: { run: RunView; figures: Figure[] }) {
  const units = useView((state) => state.units)
  const reference = useReference(run.strategy)?.result
  const result = run.result!
  return (
    <dl className="figures" onKeyDown={walkNotes}>
      {figures.map((figure, place) => {
        const before = reference && figure.id !== 'stepError' ? figure.value(reference) : null
        const change = differenceText(figure, figure.value(result), before, units)
        return (
          <div key={figure.id}>
            <dt>
              <Noted note={textIn(figure.note, wordingOf(units))} place={place}>
                {figure.label}
              </Noted>
            </dt>
            <dd>
              <FigureValue figure={figure} result={result} scenario={run.scenario} units={units} />
              {change && <span className="change">{change}</span>}
            </dd>
          </div>
        )
      })}
    </dl>
  )
}

/** The run that figures of a strategy are compared with: the one before, or the pin that the person chose. */
function useReference(strategy: StrategyId): RunView | undefined {
  const against = useView((state) => state.against)
  const pinned = useResults((state) => state.pins.find((pin) => pin.id === against)?.run)
  const ghost = useResults((state) => state.ghosts[strategy])
  return pinned ?? ghost
}
