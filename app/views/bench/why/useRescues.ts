import { useMemo, useState } from 'react'
import type { Rescue, RescueProgress } from '../../../../sim/index.ts'
import type { Rested } from '../../../read/study/useRested.ts'
import { type StudyState, useStudy } from '../../../read/study/useStudy.ts'

/** The search of both workers. */
export interface RescueSearch {
  found: Rescue[]
  status: StudyState<'rescue'>['status']
  message: string
  /** Parameters that were searched, and of how many; null: not yet known. */
  done: number
  of: number | null
  stop(): void
}

/** The search for what would save a grip, which two workers share; `again` takes up one that was cancelled. */
export function useRescues(rested: Rested | null): { search: RescueSearch; again(): void } {
  const [asked, setAsked] = useState<{ about: Rested | null; times: number }>({ about: null, times: 0 })
  const times = asked.about === rested ? asked.times : 0
  const halves = useMemo(() => {
    const question = (n: number) => rested && { ...rested, share: { n, of: 2 }, times }
    return [question(0), question(1)] as const
  }, [rested, times])
  const both = [useStudy('rescue', halves[0]), useStudy('rescue', halves[1])]
  return { search: together(both), again: () => setAsked({ about: rested, times: times + 1 }) }
}

function together(halves: StudyState<'rescue'>[]): RescueSearch {
  const last = halves.flatMap(({ items }) => items.slice(-1))
  const sum = (pick: (progress: RescueProgress) => number) => last.reduce((total, each) => total + pick(each), 0)
  const status = (['failed', 'stopped', 'running', 'waiting'] as const).find((one) =>
    halves.some((half) => half.status === one),
  )
  return {
    found: halves.flatMap(({ items }) => items.map(({ rescue }) => rescue)),
    status: status ?? 'done',
    message: halves.find((half) => half.status === 'failed')?.message ?? '',
    done: sum(({ done }) => done),
    of: last.length === halves.length ? sum(({ of }) => of) : null,
    stop: () => {
      for (const half of halves) half.stop()
    },
  }
}
