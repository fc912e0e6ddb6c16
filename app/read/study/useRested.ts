import { useEffect, useMemo, useState } from 'react'
import type { Scenario, StrategyId, Verdict } from '../../../sim/index.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'

/** Rest after the last run of the bench [ms], so that a drag is never slowed. */
const REST = 600

export interface Rested {
  scenario: Scenario
  strategy: StrategyId
  verdict: Verdict
}

/** What is on the bench once it has been run and nobody has moved it for a while; null before, at once when it changes. */
export function useRested(strategy: StrategyId): Rested | null {
  const scenario = useScenario((state) => state.scenario)
  const verdict = useResults(({ runs }) => {
    const run = runs[strategy]
    return run?.status === 'done' && run.scenario === scenario ? run.result?.verdict : undefined
  })
  const question = useMemo(
    () => (verdict === undefined ? null : { scenario, strategy, verdict }),
    [scenario, strategy, verdict],
  )
  const [rested, setRested] = useState<Rested | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => setRested(question), REST)
    return () => clearTimeout(timer)
  }, [question])
  return rested === question ? rested : null
}
