/** Simplifications of a closure. Shares that are tried: common practice, no source. */
import { capIn } from '../../job/cap/scenario.ts'
import { FIFTHS, HALF_AND_DOUBLE, type Simplification, scaledKeys } from './simplification.ts'

/** Relaxing share that a liner is given on top. */
const MORE = 0.1

export const CLOSURE: Simplification[] = [
  {
    id: 'closure-friction',
    element: 'closure',
    title: 'One friction in thread and face',
    text: 'Friction of thread and sealing face depends on neither temperature, moisture nor product on the rim. It decides what the torque is worth: the preload goes as one over it.',
    bound: {
      how: 'runs',
      basis: 'Friction of thread and face a fifth lower and higher together.',
      variants: scaledKeys(['closure.threadFriction', 'closure.faceFriction'], FIFTHS),
    },
  },
  {
    id: 'liner-spring',
    element: 'closure',
    title: 'The liner is a linear spring',
    text: 'Liner and rim give in proportion to the force. A real liner is softer at first and harder as it fills, and a glass rim is not flat.',
    bound: {
      how: 'runs',
      basis: 'Stiffness of the liner halved and doubled.',
      variants: scaledKeys(['liner.stiffness'], HALF_AND_DOUBLE),
    },
  },
  {
    id: 'liner-relaxing',
    element: 'closure',
    title: 'One relaxation of the liner',
    text: 'A share of the preload fades with one time constant. Real liners go on fading for days, and faster where they are warm.',
    bound: {
      how: 'runs',
      basis: `Relaxing share ${MORE * 100} points higher.`,
      variants: (scenario) => [
        {
          label: 'more relaxation',
          edits: [{ path: 'liner.relaxing', value: capIn(scenario).liner.relaxing + MORE }],
        },
      ],
    },
  },
  {
    id: 'thread-start',
    element: 'closure',
    title: 'Every thread begins at one angle',
    text: 'The closure meets the start of its thread after the angle of the scenario. Jars come turned any way.',
    bound: {
      how: 'runs',
      basis: 'The start a quarter of a turn earlier and later.',
      variants: (scenario) =>
        [-1, 1].flatMap((side) => {
          const value = capIn(scenario).chuck.startAngle + (side * Math.PI) / 2
          return value < 0
            ? []
            : [
                {
                  label: side < 0 ? 'a quarter earlier' : 'a quarter later',
                  edits: [{ path: 'chuck.startAngle', value }],
                },
              ]
        }),
    },
  },
  {
    id: 'chuck-grip',
    element: 'closure',
    title: 'The chuck holds the closure',
    text: 'The closure turns with the chuck without slip, and the jar stands still. A worn chuck slips, and a jar turns in its starwheel.',
    bound: {
      how: 'runs',
      basis: 'Stiffness of the chuck halved and doubled; slip is not in it.',
      variants: scaledKeys(['chuck.stiffness'], HALF_AND_DOUBLE),
    },
  },
  {
    id: 'strip-torque',
    element: 'closure',
    title: 'Stripping at one preload',
    text: 'The thread strips where it bears too much, whatever the temperature, the speed and the time under load. Warm plastic strips at a fraction.',
    bound: {
      how: 'unknown',
      measure: 'Turn closures on until they strip, warm and cold, enough of them to see the spread.',
    },
  },
]
