/** What the bench of every job has: window, parameters, verdicts, and between them picture and traces. */
import type { ReactNode } from 'react'
import { ParameterDrawer } from '../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../parameters/Parameters.tsx'
import { useScenario } from '../../store/scenario.ts'
import { useNarrow } from '../../ui/useNarrow.ts'
import { usePaper } from './usePaper.ts'
import './bench.css'

interface Props {
  head: ReactNode
  verdicts: ReactNode
  /** A second axis stands beside that of the bench. */
  beside?: boolean
  children: ReactNode
}

export function BenchFrame({ head, verdicts, beside = false, children }: Props) {
  const narrow = useNarrow()
  const middle = usePaper()
  return (
    <div className="bench" data-beside={beside}>
      <h1 className="sr-only">Bench</h1>
      <OnPaper />
      <div className="bench-head">{head}</div>
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
