/** How the run is simulated. */
import Type from 'typebox'
import { group, quantity } from '../quantity.ts'

export const run = group('Run', {
  duration: quantity({
    label: 'Duration',
    symbol: 'T',
    unit: 's',
    default: 1.5,
    range: [0.01, 600],
    usual: [0.5, 5],
    note: 'Simulated time; relaxation, hunting and heat may show in long runs only.',
  }),
  step: Type.Union(
    [
      Type.Null(),
      quantity({
        label: 'Step',
        symbol: 'Δt',
        unit: 's',
        shown: 'µs',
        range: [1e-8, 0.001],
        usual: [1e-6, 2e-5],
        note: 'Fixed step of the integration; half of it tells how far off the forces are.',
      }),
    ],
    {
      title: 'Step',
      default: null,
      description:
        'Fixed step of the integration, an integer part of the current loop’s period; null: chosen from the stiffest mode.',
    },
  ),
  cycle: Type.Union(
    [
      Type.Null(),
      quantity({
        label: 'Cycle time',
        symbol: 'T_c',
        unit: 's',
        range: [0.01, 86400],
        usual: [1, 60],
        note: 'Time from one grip to the next; it decides how warm the motor is and so what a set current presses.',
      }),
    ],
    {
      title: 'Cycle time',
      default: null,
      description:
        'The grip repeats at this interval: motor and magnets start at the temperatures of the steady state of that duty. Null: a single grip from cold.',
    },
  ),
  seed: quantity({
    label: 'Seed',
    symbol: 'S',
    unit: '',
    default: 1,
    range: [0, 4294967295],
    integer: true,
    note: 'Seed of the noise; the same seed gives the same run, another one another trip or ripple of the force.',
  }),
})
