import { STRATEGIES } from '../../../sim/index.ts'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { reasonText } from '../../read/result/words.ts'
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
export function Outcome({ runs, axis, text }: SlideProps) {
  const [element, size] = useSize<HTMLDivElement>()
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  if (runs.length === 0) return <NoGrip />
  return (
    <div className="outcome">
      <div className="outcome-words">
        {runs.map((run) => (
          <Verdict key={run.strategy} run={run} />
        ))}
      </div>
      <p className="outcome-axis">
        Grip force <span className="unit">{quantityUnit('force', units).symbol}</span>
      </p>
      <div ref={element} className="outcome-story">
        {size && (
          <ForceStory
            runs={runs}
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

function Verdict({ run }: { run: RunView }) {
  const units = useView((state) => state.units)
  const { word, decided } = standingAt(run, run.scenario.run.duration)
  return (
    <section className="outcome-verdict" data-strategy={run.strategy}>
      <h2>{STRATEGIES.find(({ id }) => id === run.strategy)?.label}</h2>
      <p className="outcome-word">{decided && run.result ? <VerdictWord result={run.result} /> : word}</p>
      <p>{run.status === 'failed' ? `The simulation could not be run: ${run.message}` : reasonText(run, units)}</p>
    </section>
  )
}
