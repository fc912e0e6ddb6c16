/** How a closure is shown to others. */
import type { CapJudgement } from '../../job/cap/result.ts'
import { capIn } from '../../job/cap/scenario.ts'
import { torqueWindow } from '../../job/cap/window.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { Wording } from '../wording.ts'
import { beyond, MOTOR_KEYS, RATING_KEYS, type Shown, type TextAt } from './shown.ts'

export const capShown: Shown<CapJudgement> = {
  title: 'The closure',
  works: 'closures',
  effort: 'Torque on the thread',
  window: 'Torque window',
  below: 'stays loose',
  above(scenario) {
    const { most, strip } = torqueWindow(scenario)
    return (strip ?? Infinity) <= (most ?? Infinity) ? 'strips' : 'is too tight'
  },
  between: 'tight',
  picture: 'jar, thread, closure and chuck in half section',
  stiff: 'a liner',
  stage(result, time) {
    const start = result?.events.start ?? null
    const contact = result?.metrics.contactTime ?? null
    if (!result || start === null || time < start) return 'Finding the thread'
    return contact === null || time < contact ? 'Running down' : 'Tightening'
  },
  fate: ({ verdict, events }) =>
    verdict === 'cross-threaded' && events.jam === null ? 'has its torque too soon' : FATES[verdict],
  achieves: 'turns the closure tight',
  spare(scenario, { metrics: { applicationTorque, stripMargin } }, words) {
    const { least, most } = torqueWindow(scenario)
    const applied = applicationTorque ?? 0
    return [
      ...beyond(least > 0 ? applied / least - 1 : null, words, 'more torque than needed'),
      ...beyond(most === null || applied === 0 ? null : most / applied - 1, words, 'before it is too much'),
      ...beyond(stripMargin, words, 'before the thread strips'),
    ]
  },
  events: () => [],
  facts,
  sheet: {
    work: {
      title: 'Closure, thread and liner',
      keys: [
        ...['meanDiameter', 'lead', 'flankAngle', 'threadFriction', 'faceRadius', 'faceFriction'].map(
          (key) => `closure.${key}`,
        ),
        ...['runDown', 'engagement', 'stripTorque', 'inertia'].map((key) => `closure.${key}`),
        ['liner.stiffness', 'Stiffness of the liner'],
        ['liner.relaxing', 'Relaxing share of the liner'],
        'chuck.startAngle',
        'chuck.topLoad',
      ],
    },
    axis: ['actuator.family', ...MOTOR_KEYS, 'chuck.inertia', ['chuck.stiffness', 'Chuck'], ...RATING_KEYS],
    course: {
      title: 'Turning of the head',
      keys: [
        'approach.speed',
        'approach.acceleration',
        'approach.creepSpeed',
        'approach.creepFrom',
        'approach.overtravel',
      ],
      list: null,
    },
    settings: [],
  },
  unlost: 'a thread that does not strip',
  assumed,
  danger: 'Turning heads wind up hair, sleeves and gloves, break glass, and may start unexpectedly.',
}

const FATES: Record<CapJudgement['verdict'], string> = {
  stripped: 'strips',
  'cross-threaded': 'jams',
  forced: 'is too tight',
  unstable: 'leaves its rails',
  loose: 'stays loose',
  missed: 'is missed',
  tight: 'is tight',
}

function facts(scenario: Scenario, words: Wording) {
  const { closure, chuck } = capIn(scenario)
  const { speed, creepSpeed, creepFrom } = scenario.approach
  const creeps =
    creepFrom > 0 && creepSpeed < speed
      ? `, the last ${words.turns(creepFrom)} before the liner with ${words.turningSpeed(creepSpeed)}`
      : ''
  return [
    {
      name: 'Closure',
      words: `a thread ${words.length(closure.meanDiameter)} across, ${words.turns(closure.engagement)} from its start to the liner`,
    },
    { name: 'Head', words: `turns with ${words.turningSpeed(speed)}${creeps}` },
    { name: 'Chuck', words: `presses down with ${words.force(chuck.topLoad)}${chuck.topRate > 0 ? ' at first' : ''}` },
  ]
}

function assumed(scenario: Scenario, at: TextAt): string[] {
  const { closure, liner } = capIn(scenario)
  const { relaxing } = liner
  const resting =
    closure.restFriction === 1
      ? ', at rest as in turning'
      : `; at rest both are ${at('closure.restFriction')} times that`
  return [
    'Each closure is one of exactly the stated thread, friction and liner: closures scatter only in shares of many.',
    `Torque over preload by the formulas of the power screw, with one coefficient of friction on the thread and one on the face${resting}.`,
    `The liner is a straight spring; ${relaxing > 0 ? `${at('liner.relaxing')} of its force creep away with a time of ${at('liner.relaxationTime')}` : 'it does not creep'}.`,
    'Neck, lid and jar are stiff: no lid that bulges, no vacuum, no product in the thread, and no warming.',
    `The chuck gives by ${at('chuck.stiffness')} and does not slip on the closure; the transmission gives by ${at('actuator.transmission.stiffness')}.`,
  ]
}
