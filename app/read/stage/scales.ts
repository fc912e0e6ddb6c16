/** One scale for all lanes, so that arrows and magnifiers of two strategies can be compared. */
import { forceWindow, travelToContact } from '../../../sim/index.ts'
import { forceScale, type PictureScales } from '../../picture/grip/scales.ts'
import type { RunView } from '../../store/results.ts'

/** Least squeeze that the magnifier is made for [m]. */
const LEAST_SQUEEZE = 2e-6

export function scalesOf(runs: RunView[]): PictureScales | undefined {
  const steady = runs.filter(({ result }) => result && result.events.unstable === null)
  const first = steady[0]
  if (!first) return undefined
  const figures = steady.map(({ result }) => result!.metrics)
  return {
    force: forceScale(
      figures.map(({ settledForce }) => settledForce ?? 0),
      figures.map(({ peakForce }) => peakForce ?? 0),
      forceWindow(first.scenario),
    ),
    squeeze: Math.max(LEAST_SQUEEZE, ...steady.map(largestSqueeze)),
  }
}

/** Largest overlap of pad and part at the driven contact [m]; of a run that broke the part, up to the break. */
function largestSqueeze({ scenario, traces, rows, result }: RunView): number {
  if (!traces) return 0
  const gap = travelToContact(scenario)
  const until = result?.events.crack ?? Number.POSITIVE_INFINITY
  let most = 0
  for (let row = 0; row < rows && traces.time[row]! <= until; row++) {
    const overlap = traces.travel[row]! - gap - traces.partShift[row]!
    if (overlap > most) most = overlap
  }
  return most
}
