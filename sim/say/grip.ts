/** What is said of a grip: the verdict and why in one sentence, and what the part saw where its force is taken apart. */

import type { MissedRun, Why } from '../ask/why.ts'
import type { GripJudgement, Metrics, Verdict } from '../job/grip/result.ts'
import { forceWindow } from '../job/grip/window.ts'
import type { Scenario } from '../scenario/index.ts'
import { beside } from './beside.ts'
import { formatFigure, inPlainSpaces } from './figure.ts'
import type { JobWords, Kept, WindowWords } from './job.ts'
import { gripLiveWords } from './live-grip.ts'
import { quantityUnit } from './units.ts'
import { stiffWords } from './window.ts'
import type { Wording } from './wording.ts'

/** What a verdict says of the part. */
const STATES: Record<Verdict, string> = {
  held: 'held',
  slipped: 'slipping',
  loose: 'loose',
  dropped: 'dropped',
  marked: 'marked',
  crushed: 'crushed',
  missed: 'missed',
  unstable: 'not judged, as a loop is unstable',
}

export const gripWords: JobWords<GripJudgement> = {
  does: 'what becomes of the part by each strategy, and the figures of the grip',
  window,
  frame,
  outcome,
  state: (verdict) => `the part is ${STATES[verdict]}`,
  why: {
    figures: {
      peak: { whole: 'Peak force', bound: 'Least damage limit', share: 'of the peak', least: false },
      hold: { whole: 'Force at its weakest', bound: 'Force needed', share: 'of the hold', least: true },
    },
    outcome: seen,
    missed,
    lost: 'On a part that cannot be lost the same run leaves its rails, so there is no force to take apart.',
  },
  study: {
    one: 'holds',
    many: 'hold',
    done: 'held',
    counted: 'holding',
    does: 'holds',
    asks: 'do most parts hold',
    act: 'grip',
    acting: 'gripping',
    acted: 'gripped',
    run: 'grip',
    runs: 'grips',
    band: 'the force window of the part in the file',
    effort: 'force',
    subjects: {
      held: 'whether parts are held',
      slipped: 'the slips',
      loose: 'the grips that come loose',
      dropped: 'the drops',
      marked: 'the marks',
      crushed: 'the breaks',
      missed: 'the misses',
      unstable: 'the unstable grips',
    },
  },
  axes: {
    asks: 'Which axis suits the part?',
    wanted: 'grip force',
    where: 'at one contact',
    does: 'presses',
    act: 'press',
    limit: 'damage limit',
    impact:
      'First impact at the speed of touching: all the energy of the moving mass in pads and part, without damping.',
    back: 'a force on the jaws',
    well: 'every strategy holding the part',
    kept: 'hold kept at power loss',
  },
  live: gripLiveWords,
  rescue: {
    tooling: 'new pads',
    happens: {
      held: 'it is held',
      slipped: 'it slides',
      loose: 'it comes loose',
      dropped: 'it slides out',
      marked: 'it is marked',
      crushed: 'it breaks',
      missed: 'nothing grips it when its support goes',
      unstable: 'the grip is unstable',
    },
    late: 'the jaws come too late',
    of: 'the part',
  },
  log: {
    meets: 'A part stands between the jaws',
    onto: 'onto the part',
    free: 'in free air',
    start: 'open',
    touches: 'touches the part',
    origin: 'Travel of a jaw from open at which the position in the logs is 0.',
    tells: 'from a touch the stiffness of the part',
    hands: 'the jaws',
  },
  loops: {
    at: {
      free: 'in free air',
      softest: 'on the softest part',
      nominal: 'on the nominal part',
      stiffest: 'on the stiffest part',
      relaxed: 'on the stiffest part, relaxed,',
    },
    feels: 'nothing but the inertia of its finger',
    inertia: 'its finger',
    gives: 'part',
    relaxes: 'the part',
    contact: ' at one contact',
    calmer: 'A softer pad, or one that damps more',
    met: { contact: 'a jaw lifts off', part: 'the part breaks or dents', slides: 'the part slides' },
    travel: 'jaw travel',
    onwards: 'closing',
    back: 'opening',
    commissioning: [
      'Carry out the risk assessment of the machine first; this sheet is no part of its safety. Keep hands out of the jaws, power off, until the stops and the enabling device have been tried.',
      'Enter the scale factors and read back position, current and force against a rule, a clamp meter and a known weight. Signs: closing is positive.',
      'Set the current limit to a quarter. Close the current loop with the motor held, and compare its step with the predicted one.',
      'Close the velocity and the position loop in free air with half the gains, then with all; the step must look like the predicted one.',
      'Approach a soft dummy at creep speed, then at approach speed; read the peak force with an independent gauge.',
      'Set the current limit of this sheet. Try the softest and the stiffest part, and let the jaws wait in contact: no hunting, no growing hum.',
      'Take away the power while a part is held, over a soft landing: see whether the axis keeps it.',
    ],
    cautions: [
      'Jaws pinch: a hand between them takes the whole grip force and the impact before it.',
      'After a loss of power, or when it returns, an axis may open, drop its part or start unexpectedly; secure or support the load before reaching in.',
    ],
  },
}

function window(scenario: Scenario): string[] {
  const { least, most, yields, leastStiff } = forceWindow(scenario)
  const force = (value: number | null) => inPlainSpaces(formatFigure(value))
  return [
    `force window: ${force(least)} N to ${force(most)} N at one contact`,
    ...(yields ? [stiffWords(leastStiff === null ? null : `${force(leastStiff)} N`)] : []),
  ]
}

function frame(scenario: Scenario, { system }: Wording): WindowWords {
  const { symbol, toShown } = quantityUnit('force', system)
  const { least, most, yields, leastStiff } = forceWindow(scenario)
  const force = (value: number) => `${formatFigure(toShown(value))} ${symbol}`
  const stiff = yields ? ` ${stiffWords(leastStiff === null ? null : force(leastStiff))}` : ''
  if (least !== null && most !== null && least >= most)
    return {
      title: 'No grip force both holds and spares this part:',
      sentence: `holding needs at least ${force(least)}, the part takes at most ${force(most)}.${stiff}`,
      span: 'empty',
      empty: true,
    }
  const edges = edgesOf(least && force(least), most && force(most))
  return { title: 'Force window', empty: false, ...edges, sentence: edges.sentence + stiff }
}

function edgesOf(least: string | 0 | null, most: string | 0 | null): Pick<WindowWords, 'sentence' | 'span'> {
  if (least && most)
    return {
      span: `${least} to ${most}`,
      sentence: `${least} to ${most} at each contact: less drops the part, more damages it.`,
    }
  if (least)
    return {
      span: `from ${least}`,
      sentence: `from ${least} at each contact: less drops the part; it has no damage limit.`,
    }
  if (most)
    return {
      span: `up to ${most}`,
      sentence: `up to ${most} at each contact: nothing pulls on the part, more damages it.`,
    }
  return { span: 'open', sentence: 'is open: nothing pulls on the part, and it has no damage limit.' }
}

function outcome(scenario: Scenario, { verdict, metrics, events }: Kept<GripJudgement>, words: Wording): string {
  const { part, jaws } = scenario
  const peak = metrics.peakForce ?? 0
  const at = (time: number | null) => words.time(time ?? 0)
  switch (verdict) {
    case 'missed':
      return metrics.contactTime === null
        ? `Never touches the part within ${words.time(scenario.run.duration)}.`
        : 'No force on the part when its support goes: it stays behind.'
    case 'crushed':
      if (events.met !== null) return `The jaws meet at ${at(events.met)}: nothing of the part is left between them.`
      return `Cracks at ${at(events.crack)}: ${words.force(peak)} on a ${words.force(part.crackForce ?? 0)} part.`
    case 'dropped':
      return `Lost at ${at(events.drop)}: slides past the ${words.length(jaws.padLength)} pad${shortfall(metrics, words)}.`
    case 'loose':
      if (events.loose === null)
        return `Comes loose: in the end the jaws hold less than what pulls on the part${shortfall(metrics, words)}.`
      return `Comes loose at ${at(events.loose)}: a contact opens while the part hangs${shortfall(metrics, words)}.`
    case 'slipped':
      return `${slid(metrics, words)} from ${at(events.slip)} on${shortfall(metrics, words)}.`
    case 'marked': {
      const dented = part.yieldForce !== undefined && peak > part.yieldForce
      const limit = Math.min(part.markForce ?? Infinity, part.yieldForce ?? Infinity)
      return `${dented ? 'Dented' : 'Marked'} at ${at(events.mark)}: up to ${words.force(peak)} on a ${words.force(limit)} limit.`
    }
    case 'held':
      return holding(metrics, words, pullsAlong(scenario))
  }
}

/** Turning is what it is mainly where the pads' centre hardly moves. */
function slid({ slipDistance, rotation }: Metrics, words: Wording): string {
  const way = `Slides ${words.length(slipDistance ?? 0)}`
  return rotation ? `${way} and turns by ${words.angle(rotation)}` : way
}

/** What settled beside what the hardest moment asks for, if that were to last. */
function shortfall({ settledForce, requiredForce, minForceInMove }: Metrics, words: Wording): string {
  if (requiredForce === null || !settledForce) return '' // 0: the part had gone before the force could be taken
  const [settled, required] = [words.force(settledForce), words.force(requiredForce)]
  if (settledForce < requiredForce)
    return `, with ${beside(words.force, settledForce, requiredForce)} where ${required} hold`
  const least = minForceInMove ?? settledForce
  return least < requiredForce
    ? `, as the ${settled} that it settled at fall to ${beside(words.force, least, requiredForce)} in the arm’s move, where ${required} hold`
    : `, though it settled at ${settled} and a slow pull takes ${required}: the force falls later, or the part swings on its pads`
}

const pullsAlong = ({ arm }: Scenario) => arm.gravity === 'along' || arm.moves.some(({ axis }) => axis === 'along')

function holding(
  { settledForce, requiredForce, holdMargin, damageMargin }: Metrics,
  words: Wording,
  along: boolean,
): string {
  const until = along ? 'before it slides or a contact opens' : 'before it slides'
  const spare = [
    holdMargin === null ? '' : `${words.ratio(holdMargin)} to spare ${until}`,
    damageMargin === null ? '' : `${words.ratio(damageMargin)} before damage`,
  ].filter((text) => text !== '')
  return `${needs(settledForce, requiredForce, words)}${spare.length > 0 ? `; ${spare.join(', ')}` : ''}.`
}

function needs(settled: number | null, required: number | null, words: Wording): string {
  if (settled === null) return required === null ? 'Holds' : `Holds where ${words.force(required)} are needed`
  const holds = `Holds with ${words.force(settled)}`
  if (required === null) return holds
  if (settled >= required) return `${holds} where ${words.force(required)} are needed`
  return `${holds}, though ${words.force(required)} are needed for a pull that lasts: the force has grown by then, or the pads soften the pull`
}

/** What the part saw, beside what it takes or needs. */
function seen(scenario: Scenario, { verdict, figure, bound }: Why, whole: number, words: Wording): string {
  const force = words.force(whole)
  const most = bound === null ? '' : words.force(bound)
  if (figure === 'hold') {
    if (bound === null) return `The grip is left with ${force} at its weakest.`
    if (whole < bound) return `The grip is left with ${force} at its weakest, where the hardest moment needs ${most}.`
    return `The grip keeps ${force}, where ${most} would do if the part did not swing in the pads.`
  }
  if (verdict === 'crushed') return `The part breaks at ${most}; one that did not break would see ${force}.`
  if (verdict === 'marked')
    return whole > (scenario.part.yieldForce ?? Number.POSITIVE_INFINITY)
      ? `The part gives way at ${most}; one that did not would see ${force}.`
      : `The part sees ${force} and is marked above ${most}.`
  return bound === null ? `The part sees at most ${force}.` : `The part sees at most ${force} and takes ${most}.`
}

function missed({ metrics, events, feels, way }: MissedRun, words: Wording): string {
  const { contactTime, jawTravel } = metrics
  const { engaged } = events
  if (contactTime !== null) return `The jaws touch it at ${words.time(contactTime)} and let go of it again.`
  const gap = words.length(Math.max(0, way.contact - (jawTravel ?? 0)))
  if (engaged !== null) {
    if (feels === 'limit') return `The clamp current does not carry the jaws to the part: they stand ${gap} before it.`
    const mistaken = feels === 'gauge' ? 'the gauge’s reading' : 'the effort of the move'
    return `At ${words.time(engaged)} ${mistaken} is taken for contact, and the jaws stop ${gap} before it.`
  }
  if (way.end < way.contact) return `The stroke of a jaw ends ${words.length(way.contact - way.end)} before the part.`
  if (way.arrival >= way.lift)
    return `The approach takes ${words.time(way.arrival)} to the part, and the support goes at ${words.time(way.lift)}.`
  return `The drive does not follow its profile to the part: the jaws stand ${gap} before it.`
}
