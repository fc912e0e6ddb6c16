/** The approach of an output that turns; a job says in `creepFrom` and `overtravel` from where its places are told. */
import { quantity } from '../../quantity.ts'

export const turningApproach = {
  speed: quantity({
    label: 'Approach speed',
    symbol: 'ω',
    unit: 'rad/s',
    shown: 'rev/min',
    default: 20,
    range: [0.001, 2000],
    usual: [1, 200],
    note: 'Speed of the spindle on its way; what turns carries it into whatever ends the turning.',
  }),
  acceleration: quantity({
    label: 'Acceleration',
    symbol: 'ε',
    unit: 'rad/s²',
    default: 400,
    range: [0.01, 1e6],
    usual: [20, 10000],
    note: 'Acceleration limit of the profile; the current that it takes must stay below a threshold, or the spindle stops on the way.',
  }),
  jerk: quantity({
    label: 'Jerk',
    symbol: 'j',
    unit: 'rad/s³',
    default: 20000,
    range: [0.1, 1e9],
    usual: [1000, 500000],
    note: 'Limit on the change of acceleration; a low one keeps the spindle from ringing before it meets anything.',
  }),
  creepSpeed: quantity({
    label: 'Creep speed',
    symbol: 'ω_c',
    unit: 'rad/s',
    shown: 'rev/min',
    default: 4,
    range: [0.001, 2000],
    usual: [0.2, 60],
    note: 'Slower speed inside the creep zone, at most the approach speed; it is the one that counts where the zone begins early enough.',
  }),
}
