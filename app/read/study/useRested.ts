import { useEffect, useMemo, useState } from 'react'
import type { Scenario, StrategyId, Verdict } from '../../../sim/index.ts'
import { useBeside } from '../../store/beside.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'

/** Rest after the last run of the bench [ms], so that a drag is never slowed. */
const REST = 600

export interface Rested {
  scenario: Scenario
  strategy: StrategyId
  verdict: Verdict
}

/**
 * What is on the bench, or on the axis beside, once it has been run and nobody has moved it for a while; null before, at once when it
 * changes.
 */
export function useRested(strategy: StrategyId, onSecond = false): Rested | null {
  const own = useScenario((state) => state.scenario)
  const fitted = useBeside()?.fitted
  const scenario = onSecond && fitted?.ok ? fitted.scenario : own
  const verdict = useResults(({ runs, beside }) => {
    const run = (onSecond ? beside : runs)[strategy]
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
