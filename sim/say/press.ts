/** What is said of a pressed joint: the verdict and why in one sentence, and what the ram saw where its force is taken apart. */

import type { MissedRun, Why } from '../ask/why.ts'
import { forceLimit } from '../job/press/fill.ts'
import type { PressEvents, PressJudgement, PressMetrics, PressVerdict } from '../job/press/result.ts'
import { pressIn } from '../job/press/scenario.ts'
import { allowedForce, jointWindow, neededForce } from '../job/press/window.ts'
import type { Scenario } from '../scenario/index.ts'
import { beside } from './beside.ts'
import { inPlainSpaces } from './figure.ts'
import type { JobWords, Kept, WindowWords } from './job.ts'
import { pressLiveWords } from './live-press.ts'
import { type Wording, wordingOf } from './wording.ts'

/** What a verdict says of the bushing. */
const STATES: Record<PressVerdict, string> = {
  seated: 'seated',
  short: 'short of its seat',
  slack: 'slack',
  tilted: 'tilted',
  forced: 'forced',
  missed: 'missed',
  unstable: 'not judged, as a loop is unstable',
}

export const pressWords: JobWords<PressJudgement> = {
  does: 'what becomes of the joint by each strategy, and the figures of the press',
  window: (scenario) => windowLines(scenario, wordingOf('si')).map(inPlainSpaces),
  frame,
  outcome,
  state: (verdict) => `the bushing is ${STATES[verdict]}`,
  why: {
    figures: {
      peak: { whole: 'Peak force', bound: 'Most force allowed', share: 'of the peak', least: false },
      settled: { whole: 'Settled force', bound: 'Force needed', share: 'of the force', least: true },
    },
    outcome: seen,
    missed,
    lost: 'Once its causes may be taken away the same run leaves its rails, so there is no force to take apart.',
  },
  study: {
    one: 'is seated',
    many: 'are seated',
    done: 'seated',
    counted: 'seated',
    does: 'seats',
    asks: 'are most bushings seated',
    act: 'press',
    acting: 'pressing',
    acted: 'pressed',
    run: 'joint',
    runs: 'joints',
    band: 'what the joint in the file needs and allows at the end of the way',
    effort: 'force',
    subjects: {
      seated: 'whether bushings are seated',
      short: 'the bushings that end short',
      slack: 'the slack joints',
      tilted: 'the tilted bushings',
      forced: 'the forced joints',
      missed: 'the misses',
      unstable: 'the unstable runs',
    },
  },
  axes: {
    asks: 'Which axis suits the joint?',
    wanted: 'force of the ram',
    where: '',
    does: 'presses',
    act: 'press',
    limit: 'limit',
    impact:
      'As the bushing meets its shoulder: the force that slides it, and all the energy of the moving mass in frame and shoulder, without damping.',
    back: 'a force on the ram',
    well: 'every strategy seating the bushing',
    kept: 'force kept at power loss',
  },
  live: pressLiveWords,
  rescue: {
    tooling: 'another fit, lubricant or holder',
    happens: {
      seated: 'it is seated',
      short: 'it ends short',
      slack: 'the joint is slack',
      tilted: 'its tilt lifts the force above the band',
      forced: 'it is forced',
      missed: 'the ram does not reach it',
      unstable: 'a loop is unstable',
    },
    late: 'the ram comes too late',
    of: 'the bushing',
  },
  log: {
    meets: 'A bushing meets its bore',
    onto: 'into the bore',
    free: 'before the bore',
    start: 'back',
    touches: 'meets the bore',
    origin: 'Travel of the ram from its start at which the position in the logs is 0.',
    tells: 'from a joint its interference and where its shoulder stands',
    hands: 'the way of the ram',
  },
  loops: {
    at: {
      free: 'before the bore',
      sliding: 'sliding in the joint',
      resting: 'at rest in the joint',
      softest: 'seated in the softest frame',
      nominal: 'seated',
      stiffest: 'seated in the stiffest frame',
    },
    feels: 'nothing but the inertia of what is in front of it',
    inertia: 'what is in front of it,',
    gives: 'frame',
    relaxes: 'the joint',
    contact: '',
    calmer: 'A frame that damps more, or a punch that weighs less',
    met: { contact: 'the ram lifts off', part: 'over the force limit', slides: 'the joint slides' },
    travel: 'ram travel',
    onwards: 'pressing',
    back: 'going back',
    commissioning: [
      'Carry out the risk assessment of the machine first; this sheet is no part of its safety. Keep hands out of the tool, power off, until guard, stops and enabling device have been tried.',
      'Enter the scale factors and read back position, current and force against a rule, a clamp meter and a reference load cell. Signs: pressing is positive.',
      'Set the current limit to a quarter. Close the current loop with the motor held, and compare its step with the predicted one.',
      'Close the velocity and the position loop before the bore with half the gains, then with all; the step must look like the predicted one.',
      'Press onto the reference cell at creep speed, then at approach speed; read the peak force with it.',
      'Set the current limit of this sheet. Press the tightest and the loosest joint, and let the ram wait on its seat: no hunting, no growing hum.',
      'Take away the power with the ram down and nothing beneath it: see whether it sinks.',
    ],
    cautions: [
      'A press crushes: its full force stands wherever a hand can be, and a joint that slips lets go of it at once.',
      'After a loss of power, or when it returns, a ram may sink or start unexpectedly; block it before reaching in.',
    ],
  },
}

function frame(scenario: Scenario, words: Wording): WindowWords {
  const [least, most] = [neededForce(scenario), allowedForce(scenario)]
  const span =
    most < Number.POSITIVE_INFINITY ? `${words.force(least)} to ${words.force(most)}` : `from ${words.force(least)}`
  if (least >= most)
    return {
      title: 'No force both seats this bushing and spares the joint:',
      sentence: `the end of the way takes ${words.force(least)}, where ${words.force(most)} are allowed.`,
      span: 'empty',
      empty: true,
    }
  return { title: 'Joint window', sentence: `${windowLines(scenario, words).join('; ')}.`, span, empty: false }
}

/** What the joint is held against, a phrase each. */
export function windowLines(scenario: Scenario, { typed }: Wording): string[] {
  const [force, length] = [(newtons: number) => typed('force', newtons), (metres: number) => typed('length', metres)]
  const { depth, seat, most, band } = jointWindow(scenario)
  const seating = [
    seat.least === null ? '' : `at least ${force(seat.least)}`,
    seat.most === null ? '' : `at most ${force(seat.most)}`,
  ].filter((text) => text !== '')
  const [first, last] = [band[0], band.at(-1)]
  return [
    `depth ${length(depth.least)}${depth.most === null ? ' or more' : ` to ${length(depth.most)}`}`,
    ...(seating.length > 0 ? [`on the shoulder ${seating.join(', ')}`] : []),
    ...(most === null ? [] : [`never more than ${force(most)}`]),
    ...(first && last && first !== last
      ? [
          `band from ${force(first.least)} to ${force(first.most)} at ${length(first.depth)}, to ${force(last.least)} to ${force(last.most)} at ${length(last.depth)}`,
        ]
      : []),
  ]
}

function outcome(scenario: Scenario, { verdict, metrics, events }: Kept<PressJudgement>, words: Wording): string {
  switch (verdict) {
    case 'missed':
      return `Never touches the bushing within ${words.time(scenario.run.duration)}.`
    case 'forced':
      return forced(scenario, metrics, events, words)
    case 'tilted':
      return `Above the band at ${words.length(events.aboveDepth ?? 0)} for the tilt alone: up to ${words.force(metrics.tiltForce ?? 0)} come from ends that press on opposite sides.`
    case 'slack':
      return `Below the band at ${words.length(events.belowDepth ?? 0)}: less force than a joint that holds should take there. Its pressure is ${words.pressure(metrics.jointPressure ?? 0)}.`
    case 'short':
      return short(scenario, metrics, events, words)
    case 'seated':
      return `Seated at ${words.length(metrics.depth ?? 0)}${seating(metrics, words)}${spare(metrics, words)}.`
  }
}

function forced(scenario: Scenario, metrics: PressMetrics, events: PressEvents, words: Wording): string {
  const { depth, seat } = jointWindow(scenario)
  if (events.over !== null) {
    const own = (pressIn(scenario).bushing.mostForce ?? Infinity) <= forceLimit(scenario)
    const whose = own ? 'the bushing’s limit' : 'the limit'
    return `Forced at ${words.length(events.overDepth ?? 0)}: up to ${beside(words.force, metrics.peakForce ?? 0, forceLimit(scenario))} on ${whose} of ${words.force(forceLimit(scenario))}.`
  }
  if (events.jammedDepth !== null)
    return `Above the band at ${words.length(events.jammedDepth)}, straight as it stands.`
  const { seatForce } = metrics
  if (seatForce !== null && seat.most !== null && seatForce > seat.most)
    return `Forced onto its shoulder: ${beside(words.force, seatForce, seat.most)} where ${words.force(seat.most)} are allowed.`
  return `Driven too deep: ${beside(words.length, metrics.depth ?? 0, depth.most ?? 0)} where ${words.length(depth.most ?? 0)} are allowed.`
}

function short(
  scenario: Scenario,
  { depth, seatForce, peakForce }: PressMetrics,
  { moving }: PressEvents,
  words: Wording,
): string {
  const wanted = jointWindow(scenario)
  if (moving !== null)
    return `Still on its way as the run ends, ${words.length(depth ?? 0)} deep: where it would stand is not known.`
  if (depth !== null && depth < wanted.depth.least)
    return `Ends at ${beside(words.length, depth, wanted.depth.least)} where ${words.length(wanted.depth.least)} are needed, with at most ${words.force(peakForce ?? 0)} from the ram.`
  const least = words.force(wanted.seat.least ?? 0)
  return seatForce === null
    ? `Deep enough, but not on the shoulder, where ${least} are needed.`
    : `Pressed onto the shoulder with ${beside(words.force, seatForce, wanted.seat.least ?? 0)} where ${least} are needed.`
}

const seating = ({ seatForce }: PressMetrics, words: Wording) =>
  seatForce === null ? '' : `, pressed onto the shoulder with ${words.force(seatForce)}`

function spare({ bandMargin, forceMargin }: PressMetrics, words: Wording): string {
  const told = [
    bandMargin === null ? '' : `${words.ratio(bandMargin)} to spare in the band`,
    forceMargin === null ? '' : `${words.ratio(forceMargin)} before the limit`,
  ].filter((text) => text !== '')
  return told.length > 0 ? `; ${told.join(', ')}` : ''
}

/** What the ram saw, beside what is allowed or needed. */
function seen(_: Scenario, { figure, bound }: Why<PressJudgement>, whole: number, words: Wording): string {
  const force = words.force(whole)
  if (figure === 'settled') {
    if (bound === null) return `The ram ends at ${force}.`
    return whole < bound
      ? `The ram ends at ${force}, where it takes ${words.force(bound)} to get there and stay.`
      : `The ram ends at ${force}, though ${words.force(bound)} would do if it had all the way.`
  }
  return bound === null
    ? `The ram sees at most ${force}.`
    : `The ram sees at most ${force}, where ${words.force(bound)} are allowed.`
}

function missed(run: MissedRun<PressJudgement>, words: Wording): string {
  const { metrics, events, feels, way } = run
  if (metrics.contactTime !== null)
    return 'The force on the way is what interference, friction and length make of it; of the drive only the speed has a part in it.'
  const gap = words.length(Math.max(0, way.contact - (metrics.ramTravel ?? 0)))
  if (events.engaged !== null) {
    if (feels === 'limit') return `The clamp current does not carry the ram to the bushing: it stands ${gap} before it.`
    const mistaken = feels === 'gauge' ? 'the gauge’s reading' : 'the effort of the move'
    return `At ${words.time(events.engaged)} ${mistaken} is taken for contact, and the ram stops ${gap} before the bushing.`
  }
  if (way.end < way.contact) return `The stroke ends ${words.length(way.contact - way.end)} before the bushing.`
  return `The ram is still ${gap} before the bushing as the run ends.`
}
