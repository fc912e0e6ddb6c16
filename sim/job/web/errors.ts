/** What the integration step does to the figures of a web, once it is known how far it puts each off. */
import type { StepErrors } from '../job.ts'
import type { WebJudgement, WebMetrics } from './result.ts'

/** Error of a figure that the finer run does not have, as twice the change to none: in shares of the most tension. */
const GONE = 2

const TENSIONS = ['meanTension', 'leastTension', 'mostTension', 'settledTension'] as const

/** Tensions as a share of the most of them: one that is nearly none is not off by more for that. */
export function errorShare(metrics: WebMetrics, errors: StepErrors<WebJudgement>): number | null {
  const { mostTension, meanTension } = metrics
  if (!mostTension || meanTension === null || Object.keys(errors).length === 0) return null
  const share = (id: (typeof TENSIONS)[number]) =>
    metrics[id] === null ? 0 : (errors[id] ?? GONE * mostTension) / mostTension
  return Math.max(...TENSIONS.map(share))
}

/** A margin that is smaller than its error. */
export function isClose({ verdict, metrics }: WebJudgement, errors: StepErrors<WebJudgement>): boolean {
  const within = (id: 'slackMargin' | 'stretchMargin' | 'breakMargin') =>
    (metrics[id] ?? Number.POSITIVE_INFINITY) < (errors[id] ?? 0)
  return verdict === 'taut' && (within('slackMargin') || within('stretchMargin') || within('breakMargin'))
}
