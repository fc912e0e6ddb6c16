import { lazy, Suspense } from 'react'
import { FIGURES } from '../../read/result/figures.ts'
import { useBesideRuns, useShownRuns } from '../../read/result/useShownRuns.ts'
import { useScenario } from '../../store/scenario.ts'
import { useNarrow } from '../../ui/useNarrow.ts'
import { BenchFrame } from './BenchFrame.tsx'
import { Stage } from './stage/Stage.tsx'
import { Traces } from './traces/Traces.tsx'
import { Verdicts } from './verdicts/Verdicts.tsx'

const PressBench = lazy(async () => ({ default: (await import('./press/PressBench.tsx')).PressBench }))

const CapBench = lazy(async () => ({ default: (await import('./cap/CapBench.tsx')).CapBench }))

const WebBench = lazy(async () => ({ default: (await import('./web/WebBench.tsx')).WebBench }))

const OTHERS = { press: PressBench, cap: CapBench, web: WebBench }

/** The bench of the job that the scenario describes. */
export function Bench() {
  const job = useScenario((state) => state.scenario.job)
  if (job === 'grip') return <GripBench />
  const Other = OTHERS[job]
  return (
    <Suspense fallback={<p role="status">Opening …</p>}>
      <Other />
    </Suspense>
  )
}

/** Parameters, picture with traces, verdicts: everything about one grip at a glance. */
function GripBench() {
  const narrow = useNarrow()
  return (
    <BenchFrame verdicts={<Verdicts figures={FIGURES} main={MAIN} />}>
      <ShownStage />
      <Traces narrow={narrow} />
    </BenchFrame>
  )
}

/** Figures that are always in sight on a wide page. */
const MAIN = 6

/** By itself, so that new runs redraw the picture alone. */
function ShownStage() {
  return <Stage runs={useShownRuns()} beside={useBesideRuns()} />
}
