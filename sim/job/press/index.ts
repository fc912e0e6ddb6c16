/** The job of pressing in: a ram that slides a bushing into a bore, to its depth or onto a shoulder. */
import type { Scenario } from '../../scenario/index.ts'
import type { Job, Work } from '../job.ts'
import { LoadId } from '../load-id.ts'
import { meetingSpeed, springImpact } from '../meeting.ts'
import { PRESS_CHANNELS } from './channels.ts'
import { errorShare, isClose } from './errors.ts'
import { fillPress, pressOutput, seatDepth, shoulderDepth } from './fill.ts'
import { pressLive } from './live.ts'
import type { PressLoad } from './load.ts'
import { PRESS_METRICS } from './metrics.ts'
import { pressMoments } from './moments.ts'
import { pressRescue } from './rescue.ts'
import { PRESS_VERDICTS, type PressJudgement } from './result.ts'
import { pressIn } from './scenario.ts'
import { pressStudy } from './study.ts'
import { judgePress } from './verdict.ts'
import { meetingTravel, pressWhy } from './why.ts'
import { slidingForce } from './window.ts'

export const press: Job<PressJudgement, PressLoad> = {
  id: 'press',
  label: 'Press',
  load: LoadId.press,
  output: { label: 'ram', travel: 'm', effort: 'N' },
  channels: PRESS_CHANNELS,
  outputOf: pressOutput,
  workOf: pressWork,
  fill: fillPress,
  judge: judgePress,
  verdicts: PRESS_VERDICTS,
  well: 'seated',
  weakestOf: () => null,
  judged: ['force'],
  moments: pressMoments,
  impactOf: shoulderImpact,
  figures: PRESS_METRICS,
  headlines: ['peakForce', 'settledForce', 'seatForce', 'depth', 'bandMargin'],
  errorShare,
  isClose,
  why: pressWhy,
  study: pressStudy,
  tune: {
    time: 'pressTime',
    peak: 'peakForce',
    ripple: 'forceRipple',
    settled: 'settledForce',
    spare: ['bandMargin', 'forceMargin'],
    // Through a bore without a shoulder the depth decides, whatever it takes.
    takes: (scenario) => pressIn(scenario).bore.shoulder !== null,
  },
  rescue: pressRescue,
  live: pressLive,
}

/** On the shoulder, beside the force that slides the bushing on to it; a bore without one stops nothing. */
function shoulderImpact(scenario: Scenario, mass: number): number | null {
  const { bore, ram } = pressIn(scenario)
  if (bore.shoulder === null) return null
  const { stiffness } = bore.shoulder
  const both = (stiffness * ram.stiffness) / (stiffness + ram.stiffness)
  const slide = slidingForce(scenario, shoulderDepth(scenario))
  return slide + springImpact(both, mass, meetingSpeed(scenario, pressWork(scenario)))
}

/** An effort is the force of the ram; places are told from the seat back. */
function pressWork(scenario: Scenario): Work {
  const { ram } = pressIn(scenario)
  const { creepFrom } = scenario.approach
  const travelAt = (place: number) => ram.gap + seatDepth(scenario) - place
  return {
    perEffort: 1,
    touch: ram.gap,
    meets: meetingTravel(scenario),
    stroke: ram.stroke,
    creepFrom: creepFrom > 0 ? Math.max(0, travelAt(creepFrom)) : Number.POSITIVE_INFINITY,
    travelAt,
    reach: 10 * ram.stroke,
  }
}
