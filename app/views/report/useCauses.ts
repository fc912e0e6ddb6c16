import { useEffect, useState } from 'react'
import type { Scenario, StrategyId, Verdict, Why } from '../../../sim/index.ts'
import { startStudy } from '../../worker/study.ts'
import { type Column, ended } from './columns.ts'

export interface Told {
  why: Why | null
  /** Why there is none; '' while it is worked out. */
  failure: string
}

const NOTHING = {}

/** What made the force of each strategy; asked for as soon as all runs have ended. */
export function useCauses(scenario: Scenario, columns: Column[]): Partial<Record<StrategyId, Told>> {
  const [known, setKnown] = useState<{ scenario: Scenario; told: Partial<Record<StrategyId, Told>> } | null>(null)
  const verdicts = columns.every(ended)
    ? columns.flatMap(({ strategy, run }) => (run?.result ? [`${strategy} ${run.result.verdict}`] : [])).join(',')
    : ''
  useEffect(() => {
    setKnown({ scenario, told: {} })
    const asked = verdicts.split(',').filter((each) => each !== '')
    const stops = asked.map((each) => {
      const [strategy, verdict] = each.split(' ') as [StrategyId, Verdict]
      const tell = (one: Told) => setKnown((before) => ({ scenario, told: { ...before?.told, [strategy]: one } }))
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
  return known?.scenario === scenario ? known.told : NOTHING
}
