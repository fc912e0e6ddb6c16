/** What the arm does. */
import Type from 'typebox'
import { choice, group, quantity } from '../quantity.ts'

export const move = Type.Object(
  {
    start: quantity({
      label: 'Start',
      symbol: 't_0',
      unit: 's',
      default: 0.8,
      range: [0, 3600],
      usual: [0.1, 10],
      note: 'Time at which the arm starts to move; by then the grip force should have settled.',
    }),
    axis: choice(
      'Direction',
      ['across', 'along', 'up'],
      ['Across the grip', 'Along the grip', 'Up'],
      'Across: sideways in the plane of the pads. Along: in the direction in which the driven jaw closes. Up: against gravity.',
    ),
    acceleration: quantity({
      label: 'Acceleration',
      symbol: 'a',
      unit: 'm/s²',
      default: 5,
      range: [-1000, 1000],
      usual: [-30, 30],
      note: 'Peak acceleration, with its opposite in the second half of the move; with the part’s mass it is what the grip must hold.',
    }),
    duration: quantity({
      label: 'Duration',
      symbol: 'T',
      unit: 's',
      default: 0.4,
      range: [0.001, 3600],
      usual: [0.1, 3],
      note: 'Whole move from rest to rest; half of it speeds up, half slows down, and as long the grip has to hold.',
    }),
    jerk: quantity({
      label: 'Jerk',
      symbol: 'j',
      unit: 'm/s³',
      default: 200,
      range: [0.01, 1e7],
      usual: [20, 5000],
      note: 'Limit on the change of acceleration; a low one loads the grip gently.',
    }),
  },
  { title: 'Move', additionalProperties: false },
)

export const arm = group('Arm', {
  gravity: choice(
    'Gravity',
    ['across', 'along', 'none'],
    ['Across the grip', 'Along the grip', 'None'],
    'Across: the part hangs by friction. Along: it weighs on the jaw towards which the driven jaw closes.',
  ),
  lift: Type.Union(
    [
      Type.Null(),
      quantity({
        label: 'Lift',
        symbol: 't_l',
        unit: 's',
        range: [0, 3600],
        usual: [0.1, 10],
        note: 'Time at which the support under the part is taken away; from then on the grip carries it.',
      }),
    ],
    {
      title: 'Lift',
      default: null,
      description:
        'Time at which the support under the part is taken away, and from which on the grip carries it; null: with the first move, or, without any, at two thirds of the run.',
    },
  ),
  moves: Type.Array(move, { title: 'Moves', default: [], maxItems: 20 }),
})
