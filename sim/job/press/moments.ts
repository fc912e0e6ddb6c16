/** When the verdict on a joint is in. */
import type { JobMoments } from '../job.ts'
import { momentAt } from '../moments.ts'
import type { PressJudgement } from './result.ts'

export const pressMoments: JobMoments<PressJudgement> = {
  wrong({ verdict, events }) {
    switch (verdict) {
      case 'forced':
        // Above the band without tilt, or too deep, has no instant of its own.
        return momentAt(events.over ?? (events.jammedDepth === null ? null : events.above))
      case 'tilted':
        return momentAt(events.above)
      case 'slack':
        return momentAt(events.below)
      case 'unstable':
        return momentAt(events.unstable)
      default:
        return null
    }
  },
  /** Pressed home once its force has settled. */
  right: (_, { verdict, metrics: { contactTime, pressTime } }) =>
    verdict === 'seated' && contactTime !== null && pressTime !== null ? contactTime + pressTime : null,
}
