/** What the bench of every job has: window, parameters, verdicts, and between them picture and traces. */
import type { ReactNode } from 'react'
import { ParameterDrawer } from '../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../parameters/Parameters.tsx'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import { openPresent } from '../../store/present.ts'
import { useScenario } from '../../store/scenario.ts'
import { Button } from '../../ui/Button.tsx'
import { useNarrow } from '../../ui/useNarrow.ts'
import { BesideShown, SecondAxis } from './SecondAxis.tsx'
import { usePaper } from './usePaper.ts'
import './bench.css'

interface Props {
  verdicts: ReactNode
  children: ReactNode
}

export function BenchFrame({ verdicts, children }: Props) {
  const narrow = useNarrow()
  const beside = useScenario((state) => state.beside !== null)
  const middle = usePaper()
  return (
    <div className="bench" data-beside={beside}>
      <h1 className="sr-only">Bench</h1>
      <OnPaper />
      <div className="bench-head">
        <WindowLine />
        <SecondAxis />
        <Button onClick={openPresent}>Present</Button>
        <BesideShown />
      </div>
      {narrow ? (
        <ParameterDrawer />
      ) : (
        <div className="bench-parameters">
          <Parameters />
        </div>
      )}
      {verdicts}
      <section className="bench-middle" ref={middle} data-sheet aria-label="Picture and traces">
        {children}
      </section>
    </div>
  )
}

/** What a printed bench is headed with. */
function OnPaper() {
  const name = useScenario((state) => state.scenario.name)
  return (
    <p className="bench-paper" aria-hidden="true">
      <b>{name}</b> simulated, not measured
    </p>
  )
}
