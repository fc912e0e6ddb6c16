/** What is said of a closure: the verdict and why in one sentence, and what the head saw where its torque is taken apart. */

import type { MissedRun, Why } from '../ask/why.ts'
import type { CapEvents, CapJudgement, CapMetrics, CapVerdict } from '../job/cap/result.ts'
import { torqueWindow } from '../job/cap/window.ts'
import { jobOf } from '../job/index.ts'
import type { Scenario } from '../scenario/index.ts'
import { beside } from './beside.ts'
import { inPlainSpaces } from './figure.ts'
import type { JobWords, Kept, WindowWords } from './job.ts'
import { capLiveWords } from './live-cap.ts'
import { type Wording, wordingOf } from './wording.ts'

/** What a verdict says of the closure. */
const STATES: Record<CapVerdict, string> = {
  tight: 'tight',
  loose: 'loose',
  forced: 'forced',
  stripped: 'stripped',
  'cross-threaded': 'cross-threaded',
  missed: 'missed',
  unstable: 'not judged, as a loop is unstable',
}

export const capWords: JobWords<CapJudgement> = {
  does: 'what becomes of the closure by each strategy, and the figures of the head',
  window: (scenario) => torqueLines(scenario, wordingOf('si')).map(inPlainSpaces),
  frame,
  outcome,
  state: (verdict) => `the closure is ${STATES[verdict]}`,
  why: {
    figures: {
      peak: { whole: 'Peak torque', bound: 'Most torque allowed', share: 'of the peak', least: false },
      applied: { whole: 'Application torque', bound: 'Torque needed', share: 'of the torque', least: true },
    },
    outcome: seen,
    missed,
    lost: 'Once its causes may be taken away the same run leaves its rails, so there is no torque to take apart.',
  },
  study: {
    one: 'is tight',
    many: 'are tight',
    done: 'tight',
    counted: 'tight',
    does: 'tightens',
    asks: 'are most closures tight',
    act: 'tighten',
    acting: 'tightening',
    acted: 'tightened',
    run: 'closure',
    runs: 'closures',
    band: 'the window of torque in the file',
    effort: 'torque',
    subjects: {
      tight: 'whether closures are tight',
      loose: 'the loose closures',
      forced: 'the forced closures',
      stripped: 'the stripped threads',
      'cross-threaded': 'the cross-threaded closures',
      missed: 'the misses',
      unstable: 'the unstable runs',
    },
  },
  axes: {
    asks: 'Which axis suits the closure?',
    wanted: 'application torque',
    where: '',
    does: 'turns',
    act: 'turn',
    limit: 'limit',
    impact:
      'As the liner is met: the torque that runs the closure down, and all the energy of what turns in liner and chuck, without damping.',
    back: 'a torque on the head',
    well: 'every strategy tightening the closure',
    kept: 'torque kept at power loss',
  },
  live: capLiveWords,
  rescue: {
    tooling: 'another liner, thread or lubricant',
    happens: {
      tight: 'it is tight',
      loose: 'it stays loose',
      forced: 'it is turned too far',
      stripped: 'its thread strips',
      'cross-threaded': 'it counts as cross-threaded',
      missed: 'it does not come onto the thread',
      unstable: 'a loop is unstable',
    },
    late: 'the head comes too late',
    of: 'the closure',
  },
  log: {
    meets: 'A closure meets its thread',
    onto: 'onto the thread',
    free: 'free of a closure',
    start: 'start',
    touches: 'meets the thread',
    origin: 'Angle of the head from its start at which the position in the logs is 0.',
    tells: 'from a closure its run-down torque, seat and liner',
    hands: 'the head and the chuck',
  },
  loops: {
    at: {
      free: 'before the liner',
      sliding: 'turning on the liner',
      softest: 'at rest on the liner, all of it at its softest',
      nominal: 'at rest on the liner',
      stiffest: 'at rest on the liner, all of it at its stiffest',
    },
    feels: 'nothing but the inertia of the closure and of what else turns behind it',
    inertia: 'the closure, and what else turns behind it',
    gives: 'seat',
    relaxes: 'the liner',
    contact: '',
    calmer: 'A chuck that damps more, or a lighter one',
    met: {
      contact: 'the chuck lets go',
      part: 'the thread strips, or over the most torque',
      slides: 'the closure turns',
    },
    travel: 'turn of the head',
    onwards: 'tightening',
    back: 'turning back',
    commissioning: [
      'Carry out the risk assessment of the machine first; this sheet is no part of its safety. Keep hands, sleeves and hair away from the chuck, power off, until guard and enabling device have been tried.',
      'Enter the scale factors and read back angle, current and torque against a mark, a clamp meter and a reference torque meter. Signs: tightening is positive.',
      'Set the current limit to a quarter. Close the current loop with the spindle held, and compare its step with the predicted one.',
      'Close the velocity and the position loop with an empty chuck at half the gains, then with all; the step must look like the predicted one.',
      'Tighten onto the reference meter at creep speed, then at approach speed; read the peak torque with it.',
      'Set the current limit of this sheet. Tighten the softest and the hardest liner, and let the head wait on its seat: no hunting, no growing hum.',
      'Take away the power with a closure half on: see what the head does, and what it does when the power returns.',
    ],
    cautions: [
      'A chuck that turns winds in sleeves, gloves and hair, and a closure that strips or a jar that breaks throws pieces.',
      'After a loss of power, or when it returns, a head may turn unexpectedly; lock it off before reaching in.',
    ],
  },
}

function frame(scenario: Scenario, words: Wording): WindowWords {
  const torque = (value: number) => words.of({ unit: 'N·m' }, value)
  const { least, most } = jobOf(scenario).study.window(scenario)
  const empty = least !== null && most !== null && least >= most
  return {
    title: empty ? 'No torque both tightens this closure and spares it:' : 'Torque window',
    sentence: `${torqueLines(scenario, words).join('; ')}.`,
    span: empty ? 'empty' : most === null ? `from ${torque(least ?? 0)}` : `${torque(least ?? 0)} to ${torque(most)}`,
    empty,
  }
}

/** What the closure is held against, a phrase each. */
export function torqueLines(scenario: Scenario, { spindleTorque, turns }: Wording): string[] {
  const window = torqueWindow(scenario)
  return [
    `application torque ${spindleTorque(window.least)}${window.most === null ? ' or more' : ` to ${spindleTorque(window.most)}`}`,
    ...(window.turns === null ? [] : [`not before ${turns(window.turns)} on the thread`]),
    ...(window.strip === null ? [] : [`the thread strips at ${spindleTorque(window.strip)}`]),
  ]
}

function outcome(scenario: Scenario, { verdict, metrics, events }: Kept<CapJudgement>, words: Wording): string {
  const applied = words.spindleTorque(metrics.applicationTorque ?? 0)
  const { least, most, strip } = torqueWindow(scenario)
  switch (verdict) {
    case 'missed':
      return `Never comes onto the thread within ${words.time(scenario.run.duration)}.`
    case 'stripped':
      return `Strips after ${words.turns(events.stripTurns ?? 0)} at ${words.time(events.strip ?? 0)}: ${applied} on a thread that takes ${words.spindleTorque(strip ?? 0)}.`
    case 'cross-threaded':
      return crossed(scenario, metrics, events, words)
    case 'forced':
      return `Turned on with ${beside(words.spindleTorque, metrics.applicationTorque ?? 0, most ?? 0)} where ${words.spindleTorque(most ?? 0)} are allowed.`
    case 'loose':
      return loose(metrics, events, words, least)
    case 'tight':
      return `Tight: turned on with ${applied}${removal(metrics, words)}.`
  }
}

function crossed(scenario: Scenario, metrics: CapMetrics, events: CapEvents, words: Wording): string {
  const torque = words.spindleTorque(metrics.applicationTorque ?? 0)
  if (events.jam !== null)
    return `Jams on a wrong turn of its thread at ${words.time(events.jam)}: up to ${torque} after ${words.turns(metrics.turns ?? 0)}, the liner ${metrics.preload ? 'hardly pressed' : 'not met'}.`
  const { turns } = torqueWindow(scenario)
  return `Counts as cross-threaded: its torque is there after ${words.turns(events.reachedTurns ?? 0)}, where a straight one takes ${words.turns(turns ?? 0)} at least.`
}

function loose(metrics: CapMetrics, { moving }: CapEvents, words: Wording, least: number): string {
  const torque = words.spindleTorque(metrics.applicationTorque ?? 0)
  if (metrics.contactTime === null)
    return `Stands before its liner after ${words.turns(metrics.turns ?? 0)} on the thread, with at most ${torque}.`
  if (moving !== null)
    return `Still turning as the run ends, with at most ${torque} so far: where it would stand is not known.`
  const short = beside(words.spindleTorque, metrics.applicationTorque ?? 0, least)
  return `Turned on with ${short} where ${words.spindleTorque(least)} are needed.`
}

const removal = ({ removalTorque, removalAfter }: CapMetrics, words: Wording) =>
  removalTorque === null || removalAfter === null
    ? ''
    : `; by its preload it should come off with about ${words.spindleTorque(removalTorque)} at once and ${words.spindleTorque(removalAfter)} once the liner has crept`

/** What the head saw, beside what is allowed or needed. */
function seen(_: Scenario, { figure, bound }: Why<CapJudgement>, whole: number, words: Wording): string {
  const torque = words.spindleTorque(whole)
  if (figure === 'applied') {
    if (bound === null) return `The closure is turned on with ${torque}.`
    return whole < bound
      ? `The closure is turned on with ${torque}, where ${words.spindleTorque(bound)} are needed.`
      : `The closure is turned on with ${torque}, though ${words.spindleTorque(bound)} would do if it stood.`
  }
  return bound === null
    ? `The head sees at most ${torque}.`
    : `The head sees at most ${torque}, where ${words.spindleTorque(bound)} are allowed.`
}

function missed({ events, metrics, feels, way }: MissedRun<CapJudgement>, words: Wording): string {
  const turned = words.turns(Math.max(0, metrics.headTravel ?? 0))
  if (events.engaged !== null) {
    if (feels === 'limit') return `The clamp current does not carry the head to the thread: it stands after ${turned}.`
    const mistaken = feels === 'gauge' ? 'the gauge’s reading' : 'the effort of the move'
    return `At ${words.time(events.engaged)} ${mistaken} is taken for the seat, and the head stops after ${turned}, before the thread.`
  }
  return way.end < way.contact
    ? `The profile ends ${words.turns(way.contact - way.end)} before the liner.`
    : `The head has turned ${turned} as the run ends, and is not on the thread yet.`
}
