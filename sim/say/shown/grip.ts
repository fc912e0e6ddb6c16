/** How a grip is shown to others. */
import type { GripJudgement } from '../../job/grip/result.ts'
import type { ArmMove, Scenario } from '../../scenario/index.ts'
import { damageWord } from '../window.ts'
import type { Wording } from '../wording.ts'
import { armMoves, MOTOR_KEYS, moveText, RATING_KEYS, type Shown, type TextAt } from './shown.ts'

export const gripShown: Shown<GripJudgement> = {
  title: 'The grip',
  works: 'parts',
  effort: 'Grip force',
  window: 'Force window',
  below: 'drops',
  above: damageWord,
  between: 'holds',
  picture: 'the gripper in section',
  stiff: 'a part',
  stage(result, time) {
    const contact = result?.metrics.contactTime ?? null
    if (!result || contact === null || time < contact) return 'Closing'
    return result.events.slip !== null && time >= result.events.slip ? 'Sliding' : 'Gripping'
  },
  fate: ({ verdict }) => FATES[verdict],
  achieves: 'holds the part undamaged',
  spare: (_, { metrics: { holdMargin, damageMargin } }, words) => [
    `${words.ratio(holdMargin ?? 0)} more hold than needed`,
    damageMargin === null ? 'no damage limit is stated' : `${words.ratio(damageMargin)} before damage`,
  ],
  events: armMoves,
  facts,
  sheet: {
    work: {
      title: 'Part and pads',
      keys: [
        ...['width', 'mass', 'stiffness', 'exponent', 'damping'].map((key) => `part.${key}`),
        ...['relaxation.fraction', 'relaxation.time'].map((key) => `part.${key}`),
        ...['markForce', 'yieldForce', 'crackForce'].map((key) => `part.${key}`),
        ...['friction.static', 'friction.sliding', 'padStiffness'].map((key) => `jaws.${key}`),
      ],
    },
    axis: ['actuator.family', 'jaws.layout', ...MOTOR_KEYS, 'jaws.mass', ...RATING_KEYS],
    course: {
      title: 'Arm',
      keys: ['arm.gravity', ['arm.lift', 'Lift at']],
      list: { path: 'arm.moves', item: 'Move', text: moveText, none: 'No arm move' },
    },
    settings: [],
  },
  unlost: 'a part that cannot be lost meanwhile',
  assumed,
  danger:
    'Grippers pinch and crush, may start unexpectedly, and may drop the part or keep hold of it when power fails.',
}

const FATES: Record<GripJudgement['verdict'], string> = {
  crushed: 'cracks',
  dropped: 'drops',
  loose: 'comes loose',
  slipped: 'slides',
  marked: 'is marked',
  unstable: 'leaves its rails',
  missed: 'is missed',
  held: 'is held',
}

function facts({ part, jaws, approach, arm }: Scenario, words: Wording) {
  const moves = arm.moves.map((move) => moveWords(move, words))
  const driven = jaws.layout === 'mirrored' ? 'both driven' : 'one driven against a fixed one'
  return [
    { name: 'Part', words: `${words.length(part.width)} wide, ${words.mass(part.mass)}` },
    { name: 'Jaws', words: `${driven}, closing with ${words.speed(approach.speed)}` },
    { name: 'Arm', words: moves.length > 0 ? moves.join(', then ') : 'stands still' },
  ]
}

const DIRECTIONS: Record<ArmMove['axis'], [string, string]> = {
  up: ['up', 'down'],
  across: ['sideways', 'sideways'],
  along: ['along the grip', 'along the grip'],
}

const moveWords = ({ axis, acceleration }: ArmMove, words: Wording) =>
  `${DIRECTIONS[axis][acceleration < 0 ? 1 : 0]} with ${words.acceleration(Math.abs(acceleration))}`

function assumed({ part }: Scenario, at: TextAt): string[] {
  const relaxing =
    part.relaxation.fraction > 0
      ? `${at('part.relaxation.fraction')} of the force relaxes as one Maxwell element of ${at('part.relaxation.time')}`
      : 'the part does not relax'
  return [
    'Each grip is that of one part of exactly the stated size, stiffness and limits: parts scatter only in shares of many parts.',
    `Contact by Hunt and Crossley, force over flattening to the power ${part.exponent}; ${relaxing}.`,
    'The part slides and turns in the pads under one limit of their friction, which depends on load only.',
    `Jaws, guides and arm are stiff but for the pads and a transmission of ${at('actuator.transmission.stiffness')}.`,
    'The arm follows its jerk-limited moves exactly and does not vibrate.',
  ]
}
