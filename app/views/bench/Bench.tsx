import { ParameterDrawer } from '../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../parameters/Parameters.tsx'
import { useShownRuns } from '../../read/result/useShownRuns.ts'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import { openPresent } from '../../store/present.ts'
import { Button } from '../../ui/Button.tsx'
import { useNarrow } from '../../ui/useNarrow.ts'
import { Stage } from './stage/Stage.tsx'
import { Traces } from './traces/Traces.tsx'
import { Verdicts } from './verdicts/Verdicts.tsx'
import './bench.css'

/** Parameters, picture with traces, verdicts: everything about one grip at a glance. */
export function Bench() {
  const narrow = useNarrow()
  return (
    <div className="bench">
      <h1 className="sr-only">Bench</h1>
      <div className="bench-head">
        <WindowLine />
        <Button onClick={openPresent}>Present</Button>
      </div>
      {narrow ? (
        <ParameterDrawer />
      ) : (
        <div className="bench-parameters">
          <Parameters />
        </div>
      )}
      <Verdicts />
      <section className="bench-middle" data-sheet aria-label="Picture and traces">
        <ShownStage />
        <Traces narrow={narrow} />
      </section>
    </div>
  )
}

/** By itself, so that new runs redraw the picture alone. */
function ShownStage() {
  return <Stage runs={useShownRuns()} />
}
