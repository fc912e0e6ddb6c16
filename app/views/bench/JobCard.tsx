import { jobOf, jobWords, STRATEGIES, type StrategyId, textIn, wordingOf } from '../../../sim/index.ts'
import type { Figure } from '../../read/result/figures.ts'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { noResult, reasonText } from '../../read/result/words.ts'
import { underWay } from '../../read/stage/JobLane.tsx'
import { type RunView, useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Noted, walkNotes } from '../../ui/Noted.tsx'
import { FigureValue } from './verdicts/FigureValue.tsx'
import { WhyFold } from './why/WhyFold.tsx'

interface Props {
  strategy: StrategyId
  /** Figures that are always in sight. */
  main: readonly string[]
}

/** What became of the work by one strategy, and why; or why that strategy makes no sense for it. */
export function JobCard({ strategy, main }: Props) {
  const run = useResults((state) => state.runs[strategy])
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const refusal = jobWords(scenario).refuses?.[strategy]
  const { label, summary } = STRATEGIES.find((each) => each.id === strategy)!
  const none = run && noResult(run)
  const mine = run?.scenario.job === scenario.job ? run : undefined
  if (refusal)
    return (
      <article className="verdict" data-strategy={strategy} aria-label={label}>
        <header>
          <h2 title={summary}>{label}</h2>
        </header>
        <p className="word">Not for a {jobOf(scenario).label.toLowerCase()}</p>
        <p className="reason">{refusal}</p>
      </article>
    )
  return (
    <article
      className="verdict"
      data-strategy={strategy}
      aria-label={label}
      aria-busy={scenario !== run?.scenario || run?.status === 'running'}
    >
      <header>
        <h2 title={summary}>{label}</h2>
        <Button quiet disabled={mine?.status !== 'done'} onClick={() => useResults.getState().pin(mine, label)}>
          Pin<span className="sr-only"> this run of {label}</span>
        </Button>
      </header>
      {mine?.result ? (
        <>
          <p className="word">
            <VerdictWord result={mine.result} />
          </p>
          <p className="reason">{reasonText(mine, units)}</p>
          <Figures run={mine} shown={(id) => main.includes(id)} />
          <details>
            <summary>More figures</summary>
            <Figures run={mine} shown={(id) => !main.includes(id)} />
          </details>
          <WhyFold strategy={strategy} />
        </>
      ) : (
        <>
          <p className="word">{none?.word ?? underWay(scenario)}</p>
          {none && <p className="reason">{none.why}</p>}
        </>
      )}
    </article>
  )
}

function Figures({ run, shown }: { run: RunView; shown: (id: string) => boolean }) {
  const units = useView((state) => state.units)
  const all = jobOf(run.scenario).figures as unknown as Figure[]
  const figures = all.filter(({ id }) => shown(id))
  return (
    <dl className="figures" onKeyDown={walkNotes}>
      {figures.map((figure, place) => (
        <div key={figure.id}>
          <dt>
            <Noted note={textIn(figure.note, wordingOf(units))} place={place}>
              {figure.label}
            </Noted>
          </dt>
          <dd>
            <FigureValue figure={figure} result={run.result!} scenario={run.scenario} units={units} />
          </dd>
        </div>
      ))}
    </dl>
  )
}
