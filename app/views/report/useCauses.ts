import { useEffect, useState } from 'react'
import type { Scenario, StrategyId, Verdict, Why } from '../../../sim/index.ts'
import { startStudy } from '../../worker/study.ts'
import { type Column, ended } from './columns.ts'

export interface Told {
  why: Why | null
  /** Why there is none; '' while it is worked out. */
  failure: string
}

/** What made the force of each strategy; asked for as soon as all runs have ended. */
export function useCauses(scenario: Scenario, columns: Column[]): Partial<Record<StrategyId, Told>> {
  const [told, setTold] = useState<Partial<Record<StrategyId, Told>>>({})
  const verdicts = columns.every(ended)
    ? columns.flatMap(({ strategy, run }) => (run?.result ? [`${strategy} ${run.result.verdict}`] : [])).join(',')
    : ''
  useEffect(() => {
    setTold({})
    const asked = verdicts.split(',').filter((each) => each !== '')
    const stops = asked.map((each) => {
      const [strategy, verdict] = each.split(' ') as [StrategyId, Verdict]
      const tell = (one: Told) => setTold((before) => ({ ...before, [strategy]: one }))
      return startStudy(
        'why',
        { scenario, strategy, verdict },
        {
          item: (why) => tell({ why, failure: '' }),
          done() {},
          failed: (failure) => tell({ why: null, failure }),
        },
      )
    })
    return () => {
      for (const stop of stops) stop()
    }
  }, [scenario, verdicts])
  return told
}
