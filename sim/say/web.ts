/** What is said of a web: the verdict and why in one sentence, and what its tension was where that is taken apart. */

import type { MissedRun, Why } from '../ask/why.ts'
import { jobOf } from '../job/index.ts'
import type { WebEvents, WebJudgement, WebMetrics, WebVerdict } from '../job/web/result.ts'
import { tensionWindow } from '../job/web/window.ts'
import type { Scenario } from '../scenario/index.ts'
import { beside } from './beside.ts'
import { inPlainSpaces } from './figure.ts'
import type { JobWords, Kept, WindowWords } from './job.ts'
import { webLiveWords } from './live-web.ts'
import { type Wording, wordingOf } from './wording.ts'

/** What a verdict says of the web. */
const STATES: Record<WebVerdict, string> = {
  taut: 'taut',
  slack: 'slack',
  stretched: 'stretched',
  torn: 'torn',
  unstable: 'not judged, as a loop is unstable',
}

export const webWords: JobWords<WebJudgement> = {
  does: 'what becomes of the tension by each strategy, and the figures of the web',
  window: (scenario) => tensionLines(scenario, wordingOf('si')).map(inPlainSpaces),
  frame,
  outcome,
  state: (verdict) => `the web is ${STATES[verdict]}`,
  refuses: {
    'threshold-stop':
      'A threshold stop halts the roll and holds it at that place, and a web that runs needs a roll that goes on turning.',
  },
  why: {
    figures: {
      least: { whole: 'Least tension', bound: 'Tension needed', share: 'of the tension', least: true },
      most: { whole: 'Most tension', bound: 'Most allowed', share: 'of the tension', least: false },
    },
    outcome: seen,
    missed,
    lost: 'Once its causes may be taken away the same run leaves its rails, so there is no tension to take apart.',
  },
  study: {
    one: 'is taut',
    many: 'are taut',
    done: 'taut',
    counted: 'taut',
    does: 'keeps taut',
    asks: 'are most webs taut',
    act: 'pull',
    acting: 'pulling',
    acted: 'pulled',
    run: 'web',
    runs: 'webs',
    band: 'the window of tension in the file',
    effort: 'tension',
    subjects: {
      taut: 'whether webs are taut',
      slack: 'the slack webs',
      stretched: 'the stretched webs',
      torn: 'the torn webs',
      unstable: 'the unstable runs',
    },
  },
  axes: {
    asks: 'Which axis suits the web?',
    wanted: 'tension',
    where: '',
    does: 'pulls',
    act: 'pull',
    limit: 'limit',
    impact: 'As the slack is taken up: all the energy of what turns in the stretch of the web, without damping.',
    back: 'a pull on the roll',
    well: 'every strategy keeping the web taut',
    kept: 'tension kept at power loss',
  },
  live: webLiveWords,
  rescue: {
    tooling: 'a roll turned true',
    happens: {
      taut: 'it is taut',
      slack: 'it goes slack',
      stretched: 'it is stretched',
      torn: 'it tears',
      unstable: 'a loop is unstable',
    },
    late: 'the roll comes too late',
    of: 'the web',
  },
  log: {
    meets: 'A web is on the roll',
    onto: 'under the web',
    free: 'without a web',
    start: 'start',
    touches: 'draws it taut',
    origin: 'Angle of the roll from its start at which the position in the logs is 0.',
    tells: 'from a web that is drawn taut at standstill its modulus and slack',
    hands: 'the nip, the rolls and the web',
  },
  loops: {
    at: {
      free: 'while the web is slack',
      softest: 'on the softest web',
      nominal: 'on the nominal web',
      stiffest: 'on the stiffest web',
      running: 'on a running web',
    },
    feels: 'nothing',
    inertia: 'what is in front of it,',
    gives: 'web',
    relaxes: 'the web',
    contact: '',
    calmer: 'A lighter roll, or a shorter span, which swings faster',
    met: { contact: 'the web goes slack', part: 'the web tears', slides: 'the web slips' },
    travel: 'turn of the roll',
    onwards: 'drawing',
    back: 'giving way',
    commissioning: [
      'Carry out the risk assessment of the machine first; this sheet is no part of its safety. Keep hands, sleeves and hair out of the nips, power off, until guards and enabling device have been tried.',
      'Enter the scale factors and read back angle, current and tension against a mark, a clamp meter and a known weight hung into the span. Signs: drawing the web is positive.',
      'Set the current limit to a quarter. Close the current loop with the roll held, and compare its step with the predicted one.',
      'Close the velocity and the position loop without a web at half the gains, then with all; the step must look like the predicted one.',
      'Draw the web taut at creep speed, then at the set speed; read the highest tension with an independent gauge.',
      'Set the current limit of this sheet. Try the softest and the stiffest web, standing and running: no hunting, no growing hum.',
      'Stop the line, then take away the power with the web taut: see what roll and web do, and what they do when the power returns.',
    ],
    cautions: [
      'A roll draws in: hands, sleeves and hair go where the web goes, and a full roll goes on turning by its momentum.',
      'After a loss of power, or when it returns, a taut web pulls its rolls, and they may start unexpectedly; take the tension off before reaching in.',
    ],
  },
}

function frame(scenario: Scenario, words: Wording): WindowWords {
  const { least, most } = jobOf(scenario).study.window(scenario)
  const empty = least !== null && most !== null && least >= most
  return {
    title: empty ? 'The web tears before it has the tension that is wanted:' : 'Tension window',
    sentence: `${tensionLines(scenario, words).join('; ')}.`,
    span: empty ? 'empty' : `${words.force(least ?? 0)} to ${words.force(most ?? 0)}`,
    empty,
  }
}

/** What the tension is held against, a phrase each. */
export function tensionLines(scenario: Scenario, { typed, time }: Wording): string[] {
  const force = (newtons: number) => typed('force', newtons)
  const { least, most, from, tears } = tensionWindow(scenario)
  return [
    `tension ${force(least)} or more from ${time(from)} on`,
    `never more than ${force(most)}`,
    ...(tears === null ? [] : [`tears at ${force(tears)}`]),
  ]
}

function outcome(scenario: Scenario, { verdict, metrics, events }: Kept<WebJudgement>, words: Wording): string {
  const { least, most, from, tears } = tensionWindow(scenario)
  switch (verdict) {
    case 'torn':
      return `Torn at ${words.time(events.torn ?? 0)}: ${words.force(events.tearingTension ?? 0)} on a web that tears at ${words.force(tears ?? 0)}.`
    case 'stretched':
      return `Stretched at ${words.time(events.over ?? 0)}: up to ${beside(words.force, metrics.mostTension ?? 0, most)} where ${words.force(most)} are allowed.`
    case 'slack':
      return slack(scenario, metrics, events, words)
    case 'taut':
      return `Taut from ${words.time(from)} on: never less than ${words.force(metrics.leastTension ?? 0)} where ${words.force(least)} are needed, never more than ${words.force(metrics.mostTension ?? 0)} of the ${words.force(most)} allowed.`
  }
}

function slack(scenario: Scenario, metrics: WebMetrics, { under }: WebEvents, words: Wording): string {
  const { least } = tensionWindow(scenario)
  if (metrics.contactTime === null) return `Never drawn taut within ${words.time(scenario.run.duration)}.`
  if (metrics.tautTime === null)
    return `Never as taut as ${words.force(least)}: at most ${words.force(metrics.mostTension ?? 0)}.`
  if (metrics.leastTension === 0 && under !== null)
    return `Slack at ${words.time(under)}: at ${words.time(metrics.leastTensionTime ?? 0)} the web has no tension at all, where ${words.force(least)} are needed.`
  return `Slack at ${words.time(under ?? 0)}: down to ${beside(words.force, metrics.leastTension ?? 0, least)} where ${words.force(least)} are needed.`
}

/** What the tension was, beside what is allowed or needed. */
function seen(_: Scenario, { figure, bound }: Why<WebJudgement>, whole: number, words: Wording): string {
  const tension = words.force(whole)
  if (figure === 'least') {
    return bound === null
      ? `The web has never less than ${tension}.`
      : `The web comes down to ${tension}, where ${words.force(bound)} are needed.`
  }
  return bound === null
    ? `The web sees at most ${tension}.`
    : `The web sees at most ${tension}, where ${words.force(bound)} are allowed.`
}

function missed({ metrics }: MissedRun<WebJudgement>, words: Wording): string {
  return metrics.mostTension === null
    ? 'The web never had any tension, so there is none to take apart.'
    : `The run has no tension that could be taken apart; its highest was ${words.force(metrics.mostTension)}.`
}
