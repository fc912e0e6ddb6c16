/** When the verdict on a closure is in. */
import type { JobMoments } from '../job.ts'
import { momentAt } from '../moments.ts'
import type { CapJudgement } from './result.ts'

export const capMoments: JobMoments<CapJudgement> = {
  wrong({ verdict, events }) {
    switch (verdict) {
      case 'stripped':
        return momentAt(events.strip)
      case 'cross-threaded':
        return momentAt(events.jam ?? events.reached)
      case 'forced':
        return momentAt(events.over)
      case 'unstable':
        return momentAt(events.unstable)
      default:
        return null
    }
  },
  /** Tight once the torque of the chuck has settled. */
  right: (_, { verdict, metrics: { contactTime, capTime } }) =>
    verdict === 'tight' && contactTime !== null && capTime !== null ? contactTime + capTime : null,
}
