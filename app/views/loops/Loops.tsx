import { useMemo } from 'react'
import { frictionNote, LOOPS, type LoopsResult, missingLoops, wordingOf } from '../../../sim/index.ts'
import { ParameterDrawer } from '../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../parameters/Parameters.tsx'
import { analysesOf, loopLabel, pointLabel, worstOf } from '../../read/loops/lines.ts'
import { useKept } from '../../read/study/useKept.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Segments } from '../../ui/Choice.tsx'
import { useNarrow } from '../../ui/useNarrow.ts'
import { Bode } from './Bode.tsx'
import { Design } from './Design.tsx'
import { DriveUnits } from './DriveUnits.tsx'
import { Export } from './Export.tsx'
import { MarginTable } from './MarginTable.tsx'
import { Nyquist } from './Nyquist.tsx'
import { Poles } from './Poles.tsx'
import { Step } from './Step.tsx'
import { useLoopsState } from './state.ts'
import { Tune } from './tune/Tune.tsx'
import './loops.css'

/** Margins and gains of the four loops before there is hardware. */
export function Loops() {
  const narrow = useNarrow()
  const scenario = useScenario((state) => state.scenario)
  const loop = useLoopsState((state) => state.loop)
  const { item: result, busy, failure } = useKept('loops', scenario)
  return (
    <div className="loops">
      {narrow ? (
        <ParameterDrawer />
      ) : (
        <div className="loops-parameters">
          <Parameters />
        </div>
      )}
      <div className="loops-middle">
        <div className="loops-head">
          <h1>Loops</h1>
          <Segments
            label="Loop"
            bare
            options={LOOPS.map((value) => ({ value, label: loopLabel(value, scenario.job) }))}
            value={loop}
            onChoose={(next) => useLoopsState.setState({ loop: next })}
          />
          <p role="status" className="loops-small" aria-busy={busy}>
            {failure ? `The loops could not be computed: ${failure}` : result ? statusOf(result) : 'Computing …'}
          </p>
        </div>
        {result && <LoopView result={result} />}
      </div>
      {(!result || analysesOf(result, loop).length > 0) && <Design loop={loop} />}
    </div>
  )
}

function LoopView({ result }: { result: LoopsResult }) {
  const loop = useLoopsState((state) => state.loop)
  const units = useView((state) => state.units)
  const analyses = useMemo(() => analysesOf(result, loop), [result, loop])
  const worst = useMemo(() => worstOf(analyses), [analyses])
  if (analyses.length === 0)
    return (
      <>
        <p>{missingLoops(result)}</p>
        <DriveUnits />
      </>
    )
  const common = { loop, result, analyses, worst }
  return (
    <>
      <MarginTable {...common} />
      <Bode {...common} />
      <div className="loops-pair">
        <Nyquist {...common} />
        <Step {...common} />
      </div>
      <Poles result={result} analyses={analyses} />
      <Export loop={loop} result={result} analyses={analyses} />
      <section className="loops-friction" aria-label="Friction">
        <h2>Friction</h2>
        <p>{frictionNote(result.friction, wordingOf(units))}</p>
      </section>
      {analysesOf(result, 'position').length > 0 && <Tune />}
      <DriveUnits />
    </>
  )
}

/** Which of all loops are unstable, so that the others need not be opened to know. */
function statusOf(result: LoopsResult): string {
  const unstable = result.loops.filter(({ stable }) => !stable)
  if (unstable.length === 0) return 'All loops are stable at all working points, as linear loops.'
  return unstable
    .map(
      ({ loop, workingPoint, stability }) =>
        `${loopLabel(loop, result.friction.job)} loop ${stability === 'border' ? 'on the border of stability' : 'unstable'}: ${pointLabel(result, workingPoint).toLowerCase()}.`,
    )
    .join(' ')
}
