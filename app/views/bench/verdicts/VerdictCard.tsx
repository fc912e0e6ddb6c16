import { memo, useRef } from 'react'
import { jobOf, jobWords, progressText, STRATEGIES, type StrategyId, textIn, wordingOf } from '../../../../sim/index.ts'
import { Ring } from '../../../read/axes/Ring.tsx'
import type { Figure } from '../../../read/result/figures.ts'
import { VerdictWord } from '../../../read/result/VerdictWord.tsx'
import { differenceText, noResult, reasonText, underWay } from '../../../read/result/words.ts'
import { useBeside } from '../../../store/beside.ts'
import { type RunView, useResults } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { Noted, walkNotes } from '../../../ui/Noted.tsx'
import { useNarrow } from '../../../ui/useNarrow.ts'
import { WhyFold } from '../why/WhyFold.tsx'
import { FigureValue } from './FigureValue.tsx'
import { PairFigures, useReference } from './PairFigures.tsx'

/** Figures of a card in their order, the first of them always in sight on a wide page. */
export interface CardFigures {
  figures: readonly Figure[]
  main: number
}

interface Props extends CardFigures {
  strategy: StrategyId
}

/** What became of one strategy, and why; on the axis beside as well, where one stands there; or why that strategy makes no sense. */
export function VerdictCard({ strategy, ...shown }: Props) {
  const { run, outcome, awaited } = useOutcome(strategy)
  const second = useBesideOutcome(strategy)
  const scenario = useScenario((state) => state.scenario)
  const { pin } = useResults.getState()
  const { label, summary } = STRATEGIES.find((each) => each.id === strategy)!
  const refusal = jobWords(scenario).refuses?.[strategy]
  if (refusal) return <Refused {...{ strategy, refusal }} />
  return (
    <article
      className="verdict"
      data-strategy={strategy}
      aria-label={label}
      aria-busy={awaited || run?.status === 'running' || second?.awaited || second?.run?.status === 'running'}
    >
      <header>
        <h2 title={summary}>{label}</h2>
        {run?.status === 'running' && <span className="closing">{underWay(scenario).toLowerCase()}</span>}
        <Button quiet disabled={run?.status !== 'done'} onClick={() => pin(run, label)}>
          Pin<span className="sr-only"> this run of {label}</span>
        </Button>
      </header>
      {run?.status === 'running' && <LongRun run={run} label={label} />}
      {second ? (
        <Pair own={{ run, outcome }} second={second} label={label} {...shown} />
      ) : outcome?.result ? (
        <Outcome run={outcome} {...shown} />
      ) : (
        <Waiting run={run} />
      )}
      <WhyFold strategy={strategy} />
    </article>
  )
}

function Refused({ strategy, refusal }: { strategy: StrategyId; refusal: string }) {
  const scenario = useScenario((state) => state.scenario)
  const { label, summary } = STRATEGIES.find((each) => each.id === strategy)!
  return (
    <article className="verdict" data-strategy={strategy} aria-label={label}>
      <header>
        <h2 title={summary}>{label}</h2>
      </header>
      <p className="word">Not for a {jobOf(scenario).label.toLowerCase()}</p>
      <p className="reason">{refusal}</p>
    </article>
  )
}

interface Known {
  run: RunView | undefined
  /** While a long run goes on, the one before. */
  outcome: RunView | undefined
}

function useKnown(run: RunView | undefined): Known {
  const last = useRef<RunView>(undefined)
  if (run?.result) last.current = run
  return { run, outcome: run?.status === 'running' ? last.current : run }
}

function useOutcome(strategy: StrategyId): Known & { awaited: boolean } {
  const job = useScenario((state) => state.scenario.job)
  const last = useResults((state) => state.runs[strategy])
  const run = last?.scenario.job === job ? last : undefined
  const awaited = useScenario((state) => state.scenario !== run?.scenario)
  return { ...useKnown(run), awaited }
}

/** Null: no axis stands beside, or it cannot be run. */
function useBesideOutcome(strategy: StrategyId): (Known & { axis: string; awaited: boolean }) | null {
  const beside = useBeside()
  const run = useResults((state) => state.beside[strategy])
  const known = useKnown(run)
  if (!beside?.fitted.ok) return null
  return { ...known, axis: beside.axis.title, awaited: run?.scenario !== beside.fitted.scenario }
}

interface PairProps extends CardFigures {
  own: Known
  second: Known & { axis: string }
  label: string
}

/** One strategy on both axes: a word and a reason each, and their figures side by side. */
function Pair({ own, second, label, figures, main }: PairProps) {
  const narrow = useNarrow()
  const { pin } = useResults.getState()
  const { run, axis } = second
  const both = [own.outcome, second.outcome] as const
  return (
    <>
      {own.outcome?.result ? <Verdict run={own.outcome} /> : <Waiting run={own.run} />}
      <section className="verdict-beside" aria-label={`${label} on ${axis}`}>
        <header>
          <h3>
            <Ring />
            {axis}
          </h3>
          <Button quiet disabled={run?.status !== 'done'} onClick={() => pin(run, `${label}, ${axis}`)}>
            Pin
            <span className="sr-only">
              {' '}
              this run of {label} on {axis}
            </span>
          </Button>
        </header>
        {run?.status === 'running' && <LongRun run={run} label={`${label} on ${axis}`} />}
        {second.outcome?.result ? <Verdict run={second.outcome} /> : <Waiting run={run} />}
      </section>
      {!narrow && <PairFigures runs={both} figures={figures.slice(0, main)} />}
      <details>
        <summary>{narrow ? 'Figures' : 'More figures'}</summary>
        <PairFigures runs={both} figures={narrow ? figures : figures.slice(main)} />
      </details>
    </>
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
  const none = run && noResult(run)
  if (!none) return <Awaited />
  return (
    <>
      <p className="word">{none.word}</p>
      <p className="reason">{none.why}</p>
      {run.again && <Button onClick={run.again}>Run it again</Button>}
    </>
  )
}

function Awaited() {
  const scenario = useScenario((state) => state.scenario)
  return <p className="word">{underWay(scenario)}</p>
}

function Verdict({ run }: { run: RunView }) {
  const units = useView((state) => state.units)
  return (
    <>
      <p className="word">
        <VerdictWord result={run.result!} />
      </p>
      <p className="reason">{reasonText(run, units)}</p>
    </>
  )
}

const Outcome = memo(function Outcome({ run, figures, main: wide }: CardFigures & { run: RunView }) {
  const narrow = useNarrow()
  const main = narrow ? 0 : wide
  return (
    <>
      <Verdict run={run} />
      {main > 0 && <FigureList run={run} figures={figures.slice(0, main)} />}
      <details>
        <summary>{main > 0 ? 'More figures' : 'Figures'}</summary>
        <FigureList run={run} figures={figures.slice(main)} />
      </details>
    </>
  )
})

function FigureList({ run, figures }: { run: RunView; figures: readonly Figure[] }) {
  const units = useView((state) => state.units)
  const reference = useReference(run)?.result
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
