/** Holding a part: part, arm, axis. */
import { forceWindow } from '../../job/grip/window.ts'
import { type Answers, asGiven, figuresAt, given, leftOut, type NewJob, rounded } from './job.ts'

const LIMITS = ['part.markForce', 'part.yieldForce', 'part.crackForce']

/** Directions in which the arm may speed up. */
const WAYS = [
  { way: 'up', label: 'Acceleration upwards' },
  { way: 'across', label: 'Acceleration sideways' },
  { way: 'along', label: 'Acceleration along the grip' },
]

/** So much wider than the part the jaws stand open [m]. */
const CLEARANCE = 0.02
/** Share of the static friction that is left while the part slides; common practice, no source. */
const SLIDING = 0.8
/** Each move of the arm lasts so long, after the first started, and one follows the other after a pause [s]. */
const [FIRST_MOVE, MOVE, PAUSE, AFTER] = [0.8, 0.3, 0.1, 0.3]

const moves = { choice: 'arm', is: 'moves' }

export const gripJob: NewJob = {
  label: 'Hold a part in jaws',
  steps: [
    {
      title: 'Part',
      figures: figuresAt(['part.width', 'part.mass', 'jaws.friction.static'], ['part.stiffness', ...LIMITS]),
    },
    {
      title: 'Arm',
      choices: [
        {
          id: 'arm',
          legend: 'What does the arm do?',
          options: [
            { value: 'still', label: 'It stands still while it holds the part' },
            { value: 'moves', label: 'It moves the part' },
          ],
        },
      ],
      figures: WAYS.map(({ way, label }) => ({
        id: way,
        path: 'arm.moves[0].acceleration',
        label,
        note: 'Size of the largest acceleration in this direction.',
        when: moves,
      })),
      some: moves,
      note: {
        when: moves,
        text: `The largest in each direction counts. Each becomes a move of ${MOVE} s, one after the other; times and further moves can be set on the bench.`,
      },
    },
  ],
  effort: {
    type: 'number',
    title: 'Wanted grip force',
    symbol: 'F',
    unit: 'N',
    minimum: 0.001,
    maximum: 1e6,
    description: 'Normal force at one contact that every strategy is set to.',
  },
  window: {
    title: 'Force window',
    unit: ' at each contact',
    below: 'less drops the part',
    above: 'more damages it',
    noLeast: 'nothing pulls on the part',
    noMost: 'no limit of the part is given',
    empty: 'Holding needs more than the part takes. No axis and no tuning can help; another pad, move or part can.',
  },
  whole: () => false,
  windowComes: 'appears here as soon as mass and friction of the pads, or a limit of the part, are given.',
  edits(answers) {
    const [width, friction] = [given(answers, 'part.width'), given(answers, 'jaws.friction.static')]
    const moved = movesOf(answers)
    const last = moved.at(-1)
    return [
      ...asGiven(answers, ['part.width', 'part.mass', 'jaws.friction.static', 'part.stiffness', ...LIMITS]),
      ...(width === undefined ? [] : [{ path: 'jaws.opening', value: rounded(width + CLEARANCE, 6) }]),
      ...(friction === undefined ? [] : [{ path: 'jaws.friction.sliding', value: rounded(SLIDING * friction) }]),
      ...(moved.length > 0 ? [{ path: 'arm.moves', value: moved }] : []),
      ...(last ? [{ path: 'run.duration', value: Math.max(1.5, rounded(last.start + MOVE + AFTER, 6)) }] : []),
    ]
  },
  edges(scenario, answers) {
    const { least, most } = forceWindow(scenario)
    const holds = given(answers, 'part.mass') !== undefined && given(answers, 'jaws.friction.static') !== undefined
    return {
      least: holds ? least : null,
      most: LIMITS.some((path) => given(answers, path) !== undefined) ? most : null,
    }
  },
  assumed: (answers) => [
    ...leftOut(answers, ['part.stiffness']),
    'jaws.layout',
    'jaws.opening',
    'jaws.friction.sliding',
    'jaws.padStiffness',
    'arm.gravity',
    'approach.speed',
  ],
}

function movesOf(answers: Answers) {
  if (answers.choices.arm !== 'moves') return []
  const told = WAYS.filter(({ way }) => given(answers, way) !== undefined)
  return told.map(({ way: axis }, place) => ({
    axis,
    acceleration: given(answers, axis)!,
    start: rounded(FIRST_MOVE + place * (MOVE + PAUSE), 6),
    duration: MOVE,
  }))
}
