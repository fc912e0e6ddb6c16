import { group, quantity } from '../../scenario/quantity.ts'
import { type Rule, rule } from '../../scenario/rule.ts'

/** [A] */
const LEAST = 0.0001

export const currentClampSettings = group('Current clamp', {
  limit: quantity({
    label: 'Clamp current',
    symbol: 'I_cl',
    unit: 'A',
    default: 1.2,
    range: [LEAST, 5000],
    usual: [0.1, 10],
    note: 'Limit of the position loop’s output; in contact the axis presses with it.',
  }),
  from: quantity({
    label: 'Clamp from opening',
    symbol: 'w_cl',
    unit: 'm',
    shown: 'mm',
    default: 2,
    range: [0, 2],
    usual: [0.01, 2],
    note: 'Opening between the pads from which on the clamp current limits: wider open the servo’s current limit holds, and an opening wide enough means always.',
  }),
})

/** Settings that go with any motor. */
export const currentClampAnywhere = { limit: LEAST }

/** What its keys demand of others. */
export const currentClampRules: Rule[] = [
  rule(
    ['strategies.currentClamp.limit', 'actuator.motor.peakCurrent'],
    (s) => s.strategies.currentClamp.limit <= s.actuator.motor.peakCurrent,
    (s) => `${s.strategies.currentClamp.limit} A`,
    (s) => `at most the motor's peak current of ${s.actuator.motor.peakCurrent} A`,
  ),
]
