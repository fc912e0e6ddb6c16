import { choice, group, quantity } from '../../scenario/quantity.ts'

export const thresholdStopSettings = group('Threshold stop', {
  threshold: quantity({
    label: 'Threshold',
    symbol: 'I_th',
    unit: 'A',
    default: 1.2,
    range: [0.0001, 5000],
    usual: [0.1, 10],
    note: 'Current command above which the move is halted: a low one spares the part and trips more easily on friction.',
  }),
  confirmTime: quantity({
    label: 'Confirm time',
    symbol: 't_c',
    unit: 's',
    shown: 'ms',
    default: 0.002,
    range: [0, 1],
    usual: [0, 0.02],
    note: 'How long the command must stand above the threshold: shorter detects earlier and trips more easily.',
  }),
  filter: quantity({
    label: 'Filter',
    symbol: 'T_th',
    unit: 's',
    shown: 'ms',
    default: 0.001,
    range: [0, 1],
    usual: [0, 0.01],
    note: 'Time constant of the filter on the current command before it is held against the threshold: a long one ignores noise and detects later.',
  }),
  afterwards: choice(
    'After the stop',
    ['hold', 'press'],
    ['Hold the position', 'Press with the clamp current'],
    'Hold: keep the position at which the move was halted. Press: from then on push with the clamp current, as the current clamp does.',
  ),
})
