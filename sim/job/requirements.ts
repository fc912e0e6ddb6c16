/** What a scenario asks of the figures of a run, held against what became of them. */
import type { Scenario } from '../scenario/index.ts'
import type { Figure, JobResult } from './job.ts'

/** One bound on one figure. */
export interface Requirement {
  figure: string
  bound: 'least' | 'most'
  /** [SI] */
  limit: number
  /** Of the run [SI]; infinite where nothing limits it, null where there is none. */
  value: number | null
  met: boolean
}

const BOUNDS = ['least', 'most'] as const

/** Every bound in the order of the figures. A figure that does not exist meets none. */
export function requirementsOf<Result extends JobResult>(
  { requirements }: Scenario,
  figures: readonly Figure<Result>[],
  result: Result,
): Requirement[] {
  const asked: Record<string, { least?: number; most?: number } | undefined> = requirements
  return figures.flatMap(({ id, standsFor }) => {
    const bounds = asked[id]
    if (!bounds) return []
    const value = result.metrics[id] ?? standsFor?.(result) ?? null
    return BOUNDS.flatMap((bound): Requirement[] => {
      const limit = bounds[bound]
      if (limit === undefined) return []
      const met = value !== null && (bound === 'least' ? value >= limit : value <= limit)
      return [{ figure: id, bound, limit, value, met }]
    })
  })
}
