/** The job of holding a web's tension: a roll that pulls it from a line that hands it out. */
import type { Scenario } from '../../scenario/index.ts'
import type { Job, Work } from '../job.ts'
import { LoadId } from '../load-id.ts'
import { meetingSpeed, springImpact } from '../meeting.ts'
import { WEB_CHANNELS } from './channels.ts'
import { errorShare, isClose } from './errors.ts'
import { fillFollower, fillWeb, topSpeed, turnToTaut, webOutput, webStiffness } from './fill.ts'
import { webLive } from './live.ts'
import type { WebLoad } from './load.ts'
import { WEB_METRICS } from './metrics.ts'
import { webMoments } from './moments.ts'
import { webRescue } from './rescue.ts'
import { WEB_VERDICTS, type WebJudgement } from './result.ts'
import { webIn } from './scenario.ts'
import { webStudy } from './study.ts'
import { judgeWeb } from './verdict.ts'
import { webWhy } from './why.ts'

export const web: Job<WebJudgement, WebLoad> = {
  id: 'web',
  label: 'Web',
  load: LoadId.web,
  output: { label: 'roll', travel: 'rad', effort: 'N' },
  channels: WEB_CHANNELS,
  refuses: ['threshold-stop'],
  outputOf: webOutput,
  workOf: webWork,
  fill: fillWeb,
  follow: fillFollower,
  judge: judgeWeb,
  verdicts: WEB_VERDICTS,
  well: 'taut',
  judged: ['tension', 'rollTension'],
  moments: webMoments,
  weakestOf: ({ load }) => (load.state.count > 0 ? load.state.least : null),
  impactOf: tautImpact,
  figures: WEB_METRICS,
  headlines: ['meanTension', 'leastTension', 'mostTension', 'settledTension'],
  errorShare,
  isClose,
  why: webWhy,
  study: webStudy,
  tune: {
    time: 'tautTime',
    peak: 'mostTension',
    ripple: 'tensionRipple',
    settled: 'settledTension',
    spare: ['slackMargin', 'stretchMargin'],
    takes: () => true,
  },
  rescue: webRescue,
  live: webLive,
}

/** As the slack is taken up: the web is a spring of E·A/L, with which the roll meets its own momentum at the rim. */
function tautImpact(scenario: Scenario, inertia: number): number {
  const { roll, span } = webIn(scenario)
  const rim = meetingSpeed(scenario, webWork(scenario)) * roll.radius
  return springImpact(webStiffness(scenario) / span.length, inertia / (roll.radius * roll.radius), rim)
}

/** Turns of the roll by which a run may leave what line and reference ask of it [rad]. */
const ASTRAY = 1000

/** An effort is the tension; places are told from where the nominal slack is taken up back. */
function webWork(scenario: Scenario): Work {
  const { roll } = webIn(scenario)
  const { creepFrom, overtravel } = scenario.approach
  const touch = turnToTaut(scenario)
  const travelAt = (place: number) => touch - place
  return {
    perEffort: roll.radius,
    touch,
    meets: touch,
    stroke: Number.POSITIVE_INFINITY,
    creepFrom: creepFrom > 0 ? Math.max(0, travelAt(creepFrom)) : Number.POSITIVE_INFINITY,
    travelAt,
    reach: touch + overtravel + (2 * topSpeed(scenario) * scenario.run.duration) / roll.radius + ASTRAY,
  }
}
