/** How a web is shown to others. */
import { topSpeed } from '../../job/web/fill.ts'
import type { WebJudgement } from '../../job/web/result.ts'
import { webIn } from '../../job/web/scenario.ts'
import { tensionWindow } from '../../job/web/window.ts'
import type { Scenario } from '../../scenario/index.ts'
import { rampEnd } from '../../scenario/line-ramps.ts'
import type { Wording } from '../wording.ts'
import { beyond, MOTOR_KEYS, RATING_KEYS, type Shown, type TextAt } from './shown.ts'

export const webShown: Shown<WebJudgement> = {
  title: 'The web',
  works: 'webs',
  effort: 'Tension',
  window: 'Tension window',
  below: 'goes slack',
  above(scenario) {
    const { most, tears } = tensionWindow(scenario)
    return (tears ?? Infinity) <= most ? 'tears' : 'stretches'
  },
  between: 'taut',
  picture: 'line, gauge roll, idlers and driven roll in section',
  stiff: 'a web',
  stage(result, time) {
    const taut = result?.metrics.tautTime ?? null
    return !result || taut === null || time < taut ? 'Taking up slack' : 'Pulling'
  },
  fate: ({ verdict }) => FATES[verdict],
  achieves: 'keeps the web taut and unstretched',
  spare: (scenario, { metrics: { slackMargin, stretchMargin, breakMargin } }, words) => [
    ...beyond(tensionWindow(scenario).least > 0 ? slackMargin : null, words, 'more tension than needed'),
    ...beyond(stretchMargin, words, 'before it is stretched'),
    ...beyond(breakMargin, words, 'before it tears'),
  ],
  events: rampEvents,
  facts,
  sheet: {
    work: {
      title: 'Web, span and rolls',
      keys: [
        ['web.width', 'Width'],
        ['web.thickness', 'Thickness'],
        'web.modulus',
        'web.breakTension',
        ['web.slack', 'Slack at the start'],
        ['span.length', 'Span'],
        'span.entryTension',
        ['idlers.coulomb', 'Drag of the idlers'],
        ['roll.kind', 'Roll'],
        ['roll.radius', 'Radius of the roll'],
        ['roll.inertia', 'Inertia of core and shaft'],
        ['roll.runout', 'Out of round by'],
      ],
    },
    axis: ['actuator.family', ...MOTOR_KEYS, ...RATING_KEYS],
    course: {
      title: 'Line',
      keys: [['window.from', 'Tension counts from']],
      list: { path: 'line.ramps', item: 'Ramp', text: rampText, none: 'The line stands still' },
    },
    settings: ['follow'],
  },
  unlost: 'a web that does not tear',
  assumed,
  danger: 'Running rolls draw in hands at the nip, may start unexpectedly, and run on when the web breaks.',
}

const FATES: Record<WebJudgement['verdict'], string> = {
  torn: 'tears',
  stretched: 'is stretched',
  slack: 'goes slack',
  unstable: 'leaves its rails',
  taut: 'is taut',
}

/** `to 0.6 m/s from 1.5 s with 2 m/s², jerk 20 m/s³` */
function rampText(at: TextAt): string {
  return `to ${at('speed')} from ${at('start')} with ${at('acceleration')}, jerk ${at('jerk')}`
}

/** Ramps follow one another, each from the speed that the one before ended at. */
function rampEvents(scenario: Scenario) {
  const { ramps } = webIn(scenario).line
  return ramps.map((ramp, index) => {
    const from = ramps[index - 1]?.speed ?? 0
    const words = ramp.speed > from ? 'line speeds up' : 'line slows down'
    return { start: ramp.start, end: rampEnd(ramp, from), words }
  })
}

function facts(scenario: Scenario, words: Wording) {
  const { web, line, roll, span } = webIn(scenario)
  const top = topSpeed(scenario)
  const changes = line.ramps.length === 1 ? 'one change of speed' : `${line.ramps.length} changes of speed`
  const across = words.length(2 * roll.radius)
  return [
    { name: 'Web', words: `${words.length(web.width)} wide, ${words.smallLength(web.thickness)} thick` },
    {
      name: 'Line',
      words:
        top > 0
          ? `up to ${words.of({ unit: 'm/s' }, top)}, ${changes}, ${words.of({ unit: 'm' }, span.length)} before the roll`
          : 'stands still',
    },
    {
      name: 'Roll',
      words:
        roll.kind === 'winds' ? `winds the web up, ${across} across at the start` : `draws the web, ${across} across`,
    },
  ]
}

function assumed(scenario: Scenario, at: TextAt): string[] {
  const { roll } = webIn(scenario)
  return [
    'Each web is one of exactly the stated size, stiffness and strength: webs scatter only in shares of many.',
    'The web is elastic, the same across its width and all along, and lies flat: no wrinkles, no moisture, no wandering to a side.',
    'The line keeps to its ramps exactly, and nothing slips at its roll or on the driven one.',
    `Tension is one figure for the span, with the drag of the idlers behind the gauge; a wave that runs along the web is left out.`,
    roll.kind === 'winds'
      ? 'What is wound lies round and firm, so the roll grows by what it has wound alone.'
      : `The roll keeps its radius of ${at('roll.radius')}, and the web leaves it without pull.`,
    `Rolls and frame are stiff; the transmission gives by ${at('actuator.transmission.stiffness')}.`,
  ]
}
