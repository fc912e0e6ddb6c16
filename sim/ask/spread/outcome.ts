/** What a study keeps of one run. */
import { JOBS, jobOf } from '../../job/index.ts'
import type { JobResult, RunResult } from '../../job/job.ts'
import { RATINGS } from '../../job/ratings.ts'
import type { JobId, Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { AnyRunner } from '../runner.ts'
import type { Part } from './draw.ts'

/** What may become of a part: a verdict of its job, or `refused`: its values break a rule of the format or would take too long, so nobody knows. */
export type Fate = string
export const fatesOf = (job: JobId): readonly Fate[] => [...JOBS[job].verdicts, 'refused']

/** Figures of a job that a study keeps, by their ids. */
export const figuresOf = (job: JobId): readonly string[] =>
  JOBS[job].figures.flatMap(({ id }) => (id === 'stepError' ? [] : [id]))

/** What a run may fail beside the verdict: a requirement on a figure, or a rating of motor or drive. */
export type Demand = string
export const demandsOf = (job: JobId): readonly Demand[] => [
  ...figuresOf(job),
  ...RATINGS.map((rating) => `rating.${rating}`),
]

export interface Outcome {
  fate: Fate
  failed: Demand[]
  /** In the order of the job's figures [SI]; NaN where there is none. */
  figures: number[]
  /** How far the run is from its nearest failure, as a share of what it must stand: below 0 it fails. */
  spare: number
}

/** Carries one part's work out; `untilLost`: no further than it is lost, where nothing but whether it is fit is asked. */
export function outcomeOf(
  part: Pick<Part, 'scenario' | 'faults'>,
  strategy: StrategyId,
  run: AnyRunner,
  untilLost = false,
): Outcome {
  if (part.faults.length > 0) return refused(part.scenario)
  try {
    const { result } = run(part.scenario, strategy, { untilLost })
    return {
      fate: result.verdict,
      failed: failedOf(part.scenario.job, result),
      figures: figuresOf(part.scenario.job).map((id) => result.metrics[id] ?? Number.NaN),
      spare: spareOf(part.scenario, result),
    }
  } catch (error) {
    if (error instanceof RangeError) return refused(part.scenario)
    throw error
  }
}

const refused = ({ job }: Scenario): Outcome => ({
  fate: 'refused',
  failed: [],
  figures: figuresOf(job).map(() => Number.NaN),
  spare: Number.NaN,
})

/** Done well, every requirement met and every rating kept. */
export const isFit = (job: JobId, { fate, failed }: Pick<Outcome, 'fate' | 'failed'>): boolean =>
  fate === JOBS[job].well && failed.length === 0

function failedOf(job: JobId, { requirements, overloads }: RunResult): Demand[] {
  const failed = new Set<string>([
    ...requirements.filter(({ met }) => !met).map(({ figure }) => figure),
    ...overloads.map(({ rating }) => `rating.${rating}` as const),
  ])
  return demandsOf(job).filter((id) => failed.has(id))
}

/** A run that is lost without a margin that says by how much counts as having lost all. */
const ALL = -1
/** What nothing limits has this much to spare: finite, so that a file can hold it. */
const MOST = 1e9

function spareOf(scenario: Scenario, result: RunResult): number {
  const { verdict, requirements, overloads } = result
  const { study, well } = jobOf(scenario)
  const margins = study.margins(scenario, result as JobResult).filter((margin) => margin !== null)
  const asked = requirements.map(({ bound, limit, value }) => {
    if (value === null) return ALL
    return (bound === 'least' ? value - limit : limit - value) / (Math.abs(limit) || 1)
  })
  const rated = overloads.map(({ over, limit }) => -over / (Math.abs(limit) || 1))
  const least = Math.max(ALL, Math.min(MOST, ...margins, ...asked, ...rated))
  return verdict === well || least < 0 ? least : ALL
}
