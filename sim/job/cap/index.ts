/** The job of tightening a cap: a head that turns a closure onto its thread until the liner takes its torque. */
import type { Scenario } from '../../scenario/index.ts'
import type { Job, Work } from '../job.ts'
import { LoadId } from '../load-id.ts'
import { meetingSpeed, springImpact } from '../meeting.ts'
import { CAP_CHANNELS } from './channels.ts'
import { errorShare, isClose } from './errors.ts'
import { capOutput, fillCap, seatAngle } from './fill.ts'
import { capLive } from './live.ts'
import type { CapLoad } from './load.ts'
import { CAP_METRICS } from './metrics.ts'
import { capMoments } from './moments.ts'
import { capRescue } from './rescue.ts'
import { CAP_VERDICTS, type CapJudgement } from './result.ts'
import { capIn } from './scenario.ts'
import { capStudy } from './study.ts'
import { judgeCap } from './verdict.ts'
import { capWhy } from './why.ts'
import { seatRate } from './window.ts'

export const cap: Job<CapJudgement, CapLoad> = {
  id: 'cap',
  label: 'Cap',
  load: LoadId.cap,
  output: { label: 'head', travel: 'rad', effort: 'N·m' },
  channels: CAP_CHANNELS,
  outputOf: capOutput,
  workOf: capWork,
  fill: fillCap,
  judge: judgeCap,
  verdicts: CAP_VERDICTS,
  well: 'tight',
  weakestOf: () => null,
  judged: ['threadTorque'],
  moments: capMoments,
  impactOf: seatImpact,
  figures: CAP_METRICS,
  headlines: ['peakTorque', 'applicationTorque', 'settledTorque', 'seatAngle', 'torqueMargin'],
  errorShare,
  isClose,
  why: capWhy,
  study: capStudy,
  tune: {
    time: 'capTime',
    peak: 'peakTorque',
    ripple: 'torqueRipple',
    settled: 'settledTorque',
    spare: ['torqueMargin'],
    takes: () => true,
  },
  rescue: capRescue,
  live: capLive,
}

/** On the liner, through what the chuck gives, beside the torque that runs the closure down. */
function seatImpact(scenario: Scenario, inertia: number): number {
  const { chuck, closure } = capIn(scenario)
  const rate = seatRate(scenario)
  const both = (rate * chuck.stiffness) / (rate + chuck.stiffness)
  return closure.runDown + springImpact(both, inertia, meetingSpeed(scenario, capWork(scenario)))
}

/** An effort is the torque of the chuck; places are told from the nominal seat back. */
function capWork(scenario: Scenario): Work {
  const { approach } = scenario
  const seat = seatAngle(scenario)
  const travelAt = (place: number) => seat - place
  return {
    perEffort: 1,
    touch: seat,
    meets: seat,
    stroke: capOutput(scenario).stroke,
    creepFrom: approach.creepFrom > 0 ? Math.max(0, travelAt(approach.creepFrom)) : Number.POSITIVE_INFINITY,
    travelAt,
    reach: 100 * (seat + approach.overtravel + 1),
  }
}
