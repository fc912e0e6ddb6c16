/** When the verdict on a grip is in. */
import type { Scenario } from '../../scenario/index.ts'
import { liftTime } from '../../scenario/index.ts'
import type { JobMoments } from '../job.ts'
import { momentAt } from '../moments.ts'
import type { GripJudgement } from './result.ts'

export const gripMoments: JobMoments<GripJudgement> = {
  wrong({ verdict, events, metrics }) {
    switch (verdict) {
      case 'crushed':
        return momentAt(events.crack, metrics.peakForce)
      case 'marked':
        return momentAt(events.mark, metrics.peakForce)
      case 'dropped':
        return momentAt(events.drop)
      case 'loose':
        return momentAt(events.loose)
      case 'slipped':
        return momentAt(events.slip)
      case 'unstable':
        return momentAt(events.unstable)
      default:
        return null
    }
  },
  right(scenario, { verdict, metrics }) {
    if (verdict === 'missed') return metrics.contactTime === null ? null : liftTime(scenario)
    return verdict === 'held' ? lastMove(scenario) : null
  },
}

/** What is held is held once the arm has moved for the last time [s]. */
const lastMove = (scenario: Scenario) =>
  Math.max(liftTime(scenario), ...scenario.arm.moves.map(({ start, duration }) => start + duration))
