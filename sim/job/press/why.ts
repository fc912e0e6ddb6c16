/** What `explain` has to know of a press: which force tells of a verdict, and what joint and bushing do to it. */
import type { Scenario } from '../../scenario/index.ts'
import type { JobWhy } from '../job.ts'
import { seatDepth, shoulderDepth } from './fill.ts'
import type { PressJudgement, PressVerdict } from './result.ts'
import { pressIn } from './scenario.ts'
import { allowedForce, jointOf, neededForce, slidingForce } from './window.ts'

/** Verdicts without a force that could be taken apart: a slack joint is so by itself, whatever presses it. */
const FORCELESS: ReadonlySet<PressVerdict> = new Set(['missed', 'slack', 'unstable'])

export const pressWhy: JobWhy<PressJudgement> = {
  figures: [
    {
      id: 'settled',
      tells: (verdict) => verdict === 'short',
      take: ({ result }) => (gone(result.verdict) ? null : result.metrics.settledForce),
      bound: neededForce,
    },
    {
      id: 'peak',
      tells: () => true,
      take: ({ result }) => (gone(result.verdict) ? null : result.metrics.peakForce),
      bound: allowedForce,
    },
  ],
  forceless: FORCELESS,
  /** Nothing that happens to a joint ends the force that presses it. */
  unlosable: [],
  causes: [
    {
      cause: 'tilt',
      label: 'Tilt of the bushing',
      without: 'a bushing that stands straight',
      edits: () => [{ path: 'bushing.tilt', value: 0 }],
    },
    {
      cause: 'sticking',
      label: 'Sticking of the joint',
      without: 'friction at rest no higher than that of pressing',
      edits: (scenario) => [{ path: 'joint.friction.static', value: pressIn(scenario).joint.friction.pressing }],
    },
  ],
  creepBefore: (_, distance) => ({ path: 'approach.creepFrom', value: distance }),
  pressed,
}

const gone = (verdict: PressVerdict) => verdict === 'missed' || verdict === 'unstable'

const inSeries = (a: number, b: number) => (a * b) / (a + b)

/** Against the shoulder where there is one and the force carries the bushing to it, else against the joint itself; frame in series. */
function pressed(scenario: Scenario, effort: number): { stiffness: number; travel: number } {
  const { ram, bore } = pressIn(scenario)
  const seat = seatDepth(scenario)
  const slide = slidingForce(scenario, seat)
  if (bore.shoulder && effort > slide) {
    const face = bore.shoulder.stiffness
    return { stiffness: inSeries(ram.stiffness, face), travel: effort / ram.stiffness + (effort - slide) / face }
  }
  const joint = jointOf(scenario)
  const slope = Math.max(slide / Math.max(seat - joint.entry, 1e-6), 1)
  return { stiffness: inSeries(ram.stiffness, slope), travel: effort / ram.stiffness }
}

/** Travel of the ram at which the bushing meets what stops it [m]. */
export const meetingTravel = (scenario: Scenario): number =>
  pressIn(scenario).ram.gap + Math.min(seatDepth(scenario), shoulderDepth(scenario))
