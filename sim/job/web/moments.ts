/** When the verdict on a web is in. */
import type { JobMoments } from '../job.ts'
import { momentAt } from '../moments.ts'
import type { WebJudgement } from './result.ts'

export const webMoments: JobMoments<WebJudgement> = {
  wrong({ verdict, events, metrics }) {
    switch (verdict) {
      case 'torn':
        return momentAt(events.torn, events.tearingTension)
      case 'stretched':
        return momentAt(events.over)
      case 'slack':
        return momentAt(metrics.tautTime === null ? null : events.under)
      case 'unstable':
        return momentAt(events.unstable)
      default:
        return null
    }
  },
  /** A web is taut once its run has ended: until then it may go slack. */
  right: () => null,
}
