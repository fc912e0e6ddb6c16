import { lazy, Suspense } from 'react'
import { useBesideRuns, useShownRuns } from '../../read/result/useShownRuns.ts'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import { openPresent } from '../../store/present.ts'
import { useScenario } from '../../store/scenario.ts'
import { Button } from '../../ui/Button.tsx'
import { useNarrow } from '../../ui/useNarrow.ts'
import { BenchFrame } from './BenchFrame.tsx'
import { Stage } from './stage/Stage.tsx'
import { Traces } from './traces/Traces.tsx'
import { VerdictCard } from './verdicts/VerdictCard.tsx'
import { Verdicts } from './verdicts/Verdicts.tsx'

/** The generic axes are not needed for the first verdicts. */
const BesideChooser = lazy(async () => ({ default: (await import('./BesideChooser.tsx')).BesideChooser }))
const BesideLine = lazy(async () => ({ default: (await import('../../read/axes/BesideLine.tsx')).BesideLine }))

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
  const beside = useScenario((state) => state.beside !== null)
  const head = (
    <>
      <WindowLine />
      <Suspense fallback={<Button disabled>Second axis</Button>}>
        <BesideChooser />
      </Suspense>
      <Button onClick={openPresent}>Present</Button>
      {beside && (
        <Suspense fallback={null}>
          <BesideLine />
        </Suspense>
      )}
    </>
  )
  return (
    <BenchFrame {...{ head, beside }} verdicts={<Verdicts Card={VerdictCard} />}>
      <ShownStage />
      <Traces narrow={narrow} />
    </BenchFrame>
  )
}

/** By itself, so that new runs redraw the picture alone. */
function ShownStage() {
  return <Stage runs={useShownRuns()} beside={useBesideRuns()} />
}
