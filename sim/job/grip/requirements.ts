/** What a scenario asks of a grip, held against what became of it. */
import type { Scenario } from '../../scenario/index.ts'
import { METRICS } from './metrics.ts'
import { type GripResult, METRIC_IDS, type Requirement } from './result.ts'

type Judged = Pick<GripResult, 'metrics' | 'events'>

const STANDS_FOR = new Map(METRICS.map(({ id, standsFor }) => [id, standsFor]))

/** Every bound in the order of the figures. A figure that does not exist meets none. */
export function requirementsOf({ requirements }: Scenario, result: Judged): Requirement[] {
  return METRIC_IDS.flatMap((figure): Requirement[] => {
    const asked = requirements[figure]
    if (!asked) return []
    const value = result.metrics[figure] ?? STANDS_FOR.get(figure)?.(result) ?? null
    return (['least', 'most'] as const).flatMap((bound): Requirement[] => {
      const limit = asked[bound]
      if (limit === undefined) return []
      const met = value !== null && (bound === 'least' ? value >= limit : value <= limit)
      return [{ figure, bound, limit, value, met }]
    })
  })
}
