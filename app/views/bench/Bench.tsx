import { STRATEGIES } from '../../../sim/index.ts'
import { useResults } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { ParameterDrawer } from './ParameterDrawer.tsx'
import { Parameters } from './parameters/Parameters.tsx'
import { Stage } from './stage/Stage.tsx'
import { Traces } from './traces/Traces.tsx'
import { useNarrow } from './useNarrow.ts'
import { Verdicts } from './verdicts/Verdicts.tsx'
import { WindowLine } from './verdicts/WindowLine.tsx'
import './bench.css'

/** Parameters, picture with traces, verdicts: everything about one grip at a glance. */
export function Bench() {
  const narrow = useNarrow()
  return (
    <div className="bench">
      <h1 className="sr-only">Bench</h1>
      <WindowLine />
      {narrow ? (
        <ParameterDrawer />
      ) : (
        <section className="bench-parameters" aria-label="Parameters">
          <Parameters />
        </section>
      )}
      <Verdicts />
      <section className="bench-middle" data-sheet aria-label="Picture and traces">
        <ShownStage />
        <Traces narrow={narrow} />
      </section>
    </div>
  )
}

function ShownStage() {
  const runs = useResults((state) => state.runs)
  const shown = useView((state) => state.shown)
  return <Stage runs={STRATEGIES.flatMap(({ id }) => (shown.includes(id) && runs[id] ? [runs[id]] : []))} />
}
