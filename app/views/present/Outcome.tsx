import { useMemo } from 'react'
import { shownAs, strategyOf } from '../../../sim/index.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { acrossUnit, overOf } from '../../read/effort/over.ts'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { noResult, reasonText } from '../../read/result/words.ts'
import { effortUnit } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { EffortStory } from './EffortStory.tsx'
import { NoRun } from './NoRun.tsx'
import type { SlideProps } from './Present.tsx'
import { standingAt } from './standing.ts'
import { useSize } from './useSize.ts'

/** Least height of the story, in lines of type. */
const LEAST = 12

/** A word and a sentence for every strategy, over the effort that tells why. */
export function Outcome({ runs, beside, axis, text }: SlideProps) {
  const [element, size] = useSize<HTMLDivElement>()
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const all = useMemo(() => [...runs, ...beside], [runs, beside])
  const over = overOf(scenario)
  if (runs.length === 0) return <NoRun />
  return (
    <div className="outcome" data-beside={beside.length > 0}>
      <div className="outcome-words">
        {runs.map((run) => (
          <Verdicts key={run.strategy} own={run} beside={beside.find(({ strategy }) => strategy === run.strategy)} />
        ))}
      </div>
      <p className="outcome-axis">
        {shownAs(scenario).effort} <span className="unit">{effortUnit(scenario, units).symbol}</span>
        {over && (
          <>
            {' '}
            {over.title} <span className="unit">{acrossUnit(over, units).symbol}</span>
          </>
        )}
      </p>
      <div ref={element} className="outcome-story">
        {size && (
          <EffortStory
            runs={all}
            scenario={runs[0]?.scenario ?? scenario}
            axis={axis}
            over={over}
            units={units}
            width={size.width}
            height={Math.max(LEAST * text, size.height)}
            text={0.9 * text}
            time={null}
          />
        )}
      </div>
    </div>
  )
}

/** One strategy, on the axis of the bench and on the one beside it. */
function Verdicts({ own, beside }: { own: RunView; beside: RunView | undefined }) {
  return (
    <section className="outcome-verdict" data-strategy={own.strategy}>
      <h2>{strategyOf(own.strategy).label}</h2>
      <Verdict run={own} />
      {beside && (
        <>
          <h3>
            <Ring />
            {beside.axis}
          </h3>
          <Verdict run={beside} />
        </>
      )}
    </section>
  )
}

function Verdict({ run }: { run: RunView }) {
  const units = useView((state) => state.units)
  const { word, decided } = standingAt(run, run.scenario.run.duration)
  return (
    <>
      <p className="outcome-word">{decided && run.result ? <VerdictWord result={run.result} /> : word}</p>
      <p>{noResult(run)?.why ?? reasonText(run, units)}</p>
    </>
  )
}
