import { useMemo } from 'react'
import { strategyOf } from '../../../sim/index.ts'
import { Ring } from '../../read/axes/Ring.tsx'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { noResult, reasonText } from '../../read/result/words.ts'
import { quantityUnit } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { ForceStory } from './ForceStory.tsx'
import { NoGrip } from './NoGrip.tsx'
import type { SlideProps } from './Present.tsx'
import { standingAt } from './standing.ts'
import { useSize } from './useSize.ts'

/** Least height of the force over time, in lines of type. */
const LEAST = 12

/** A word and a sentence for every strategy, over the force that tells why. */
export function Outcome({ runs, beside, axis, text }: SlideProps) {
  const [element, size] = useSize<HTMLDivElement>()
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const all = useMemo(() => [...runs, ...beside], [runs, beside])
  if (runs.length === 0) return <NoGrip />
  return (
    <div className="outcome" data-beside={beside.length > 0}>
      <div className="outcome-words">
        {runs.map((run) => (
          <Verdicts key={run.strategy} own={run} beside={beside.find(({ strategy }) => strategy === run.strategy)} />
        ))}
      </div>
      <p className="outcome-axis">
        Grip force <span className="unit">{quantityUnit('force', units).symbol}</span>
      </p>
      <div ref={element} className="outcome-story">
        {size && (
          <ForceStory
            runs={all}
            scenario={runs[0]?.scenario ?? scenario}
            axis={axis}
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
