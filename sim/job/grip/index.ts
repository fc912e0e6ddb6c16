/** The job of gripping: two jaws that close on a part, carry it through the arm's moves, and let it go. */

import type { Scenario } from '../../scenario/index.ts'
import type { Job, Work } from '../job.ts'
import { LoadId } from '../load-id.ts'
import { meetingSpeed } from '../meeting.ts'
import { GRIP_CHANNELS } from './channels.ts'
import { errorShare, isClose } from './errors.ts'
import { fillGrip, gripOutput } from './fill.ts'
import { contactsOf, travelToContact } from './geometry.ts'
import { gripLive } from './live.ts'
import type { GripLoad } from './load.ts'
import { METRICS } from './metrics.ts'
import { gripMoments } from './moments.ts'
import { gripRescue } from './rescue.ts'
import { type GripJudgement, VERDICTS } from './result.ts'
import { impactForce } from './statics.ts'
import { gripStudy } from './study.ts'
import { judgeEnd, weakestOf } from './verdict.ts'
import { gripWhy } from './why.ts'

export const grip: Job<GripJudgement, GripLoad> = {
  id: 'grip',
  label: 'Grip',
  load: LoadId.grip,
  output: { label: 'jaw', travel: 'm', effort: 'N' },
  channels: GRIP_CHANNELS,
  outputOf: gripOutput,
  workOf: gripWork,
  fill: fillGrip,
  judge: judgeEnd,
  verdicts: VERDICTS,
  well: 'held',
  weakestOf,
  judged: ['force', 'farForce'],
  moments: gripMoments,
  impactOf: (scenario, mass) => impactForce(scenario, mass, meetingSpeed(scenario, gripWork(scenario))),
  figures: METRICS,
  headlines: ['peakForce', 'settledForce', 'holdMargin', 'damageMargin', 'slipDistance'],
  errorShare,
  isClose,
  why: gripWhy,
  study: gripStudy,
  tune: {
    time: 'gripTime',
    peak: 'peakForce',
    ripple: 'forceRipple',
    settled: 'settledForce',
    spare: ['holdMargin'],
    takes: () => true,
  },
  rescue: gripRescue,
  live: gripLive,
}

/** An effort is the force at one contact; the output carries both of a mirrored pair. */
function gripWork(scenario: Scenario): Work {
  const { approach, jaws, part } = scenario
  const contacts = contactsOf(scenario)
  const travelAt = (opening: number) => (jaws.opening - opening) / contacts
  return {
    perEffort: contacts,
    touch: travelToContact(scenario),
    meets: travelToContact(scenario),
    stroke: jaws.stroke,
    creepFrom: approach.creepFrom > part.width ? Math.max(0, travelAt(approach.creepFrom)) : Number.POSITIVE_INFINITY,
    travelAt,
    reach: 10 * Math.max(jaws.stroke, jaws.opening),
  }
}
