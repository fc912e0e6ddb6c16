import { jobOf, STRATEGIES, type StrategyId, textIn, wordingOf } from '../../../../sim/index.ts'
import type { Figure } from '../../../read/result/figures.ts'
import { VerdictWord } from '../../../read/result/VerdictWord.tsx'
import { noResult, reasonText } from '../../../read/result/words.ts'
import { type RunView, useResults } from '../../../store/results.ts'
import { useScenario } from '../../../store/scenario.ts'
import { useView } from '../../../store/view.ts'
import { Noted, walkNotes } from '../../../ui/Noted.tsx'
import { FigureValue } from '../verdicts/FigureValue.tsx'
import { WhyFold } from '../why/WhyFold.tsx'

/** Figures that are always in sight. */
const MAIN = ['peakForce', 'seatForce', 'depth', 'bandMargin', 'pressTime', 'springBack']

/** What became of the joint by one strategy, and why. */
export function PressCard({ strategy }: { strategy: StrategyId }) {
  const run = useResults((state) => state.runs[strategy])
  const awaited = useScenario((state) => state.scenario !== run?.scenario)
  const units = useView((state) => state.units)
  const { label, summary } = STRATEGIES.find((each) => each.id === strategy)!
  const none = run && noResult(run)
  const mine = run?.scenario.job === 'press' ? run : undefined
  return (
    <article
      className="verdict"
      data-strategy={strategy}
      aria-label={label}
      aria-busy={awaited || run?.status === 'running'}
    >
      <header>
        <h2 title={summary}>{label}</h2>
      </header>
      {mine?.result ? (
        <>
          <p className="word">
            <VerdictWord result={mine.result} />
          </p>
          <p className="reason">{reasonText(mine, units)}</p>
          <Figures run={mine} main />
          <details>
            <summary>More figures</summary>
            <Figures run={mine} main={false} />
          </details>
          <WhyFold strategy={strategy} />
        </>
      ) : (
        <>
          <p className="word">{none?.word ?? 'Pressing …'}</p>
          {none && <p className="reason">{none.why}</p>}
        </>
      )}
    </article>
  )
}

function Figures({ run, main }: { run: RunView; main: boolean }) {
  const units = useView((state) => state.units)
  const all = jobOf(run.scenario).figures as unknown as Figure[]
  const figures = all.filter(({ id }) => MAIN.includes(id) === main)
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
