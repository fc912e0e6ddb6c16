/** What the closure has to be in the end. */
import { group, limit, quantity } from '../../quantity.ts'

export const capWindow = group('Torque window', {
  torque: group('Application torque', {
    least: quantity({
      label: 'Least application torque',
      symbol: 'T_l',
      unit: 'N·m',
      default: 1,
      range: [0, 1e5],
      usual: [0.2, 10],
      note: 'A closure that was turned on with less is loose: its liner is not pressed as it should be.',
    }),
    most: limit({
      label: 'Most application torque',
      symbol: 'T_u',
      unit: 'N·m',
      range: [1e-5, 1e5],
      usual: [0.3, 20],
      note: 'A closure that was turned on with more is forced: it is hard to open, or its liner is cut.',
    }),
  }),
  leastTurns: limit({
    label: 'Least turns',
    symbol: 'n_l',
    unit: 'rad',
    shown: 'rev',
    range: [0, 300],
    usual: [2, 18],
    note: 'A closure that reaches its torque after fewer turns on the thread counts as cross-threaded, whatever stopped it.',
  }),
})
