/** The approach that all strategies share, and the settings of each, which lie in its folder. */
import { currentClampAnywhere, currentClampRules, currentClampSettings } from '../../strategy/current-clamp/settings.ts'
import { sensedForceBefore, sensedForceRules, sensedForceSettings } from '../../strategy/sensed-force/settings.ts'
import { thresholdStopSettings } from '../../strategy/threshold-stop/settings.ts'
import { group, quantity } from '../quantity.ts'

export const approach = group('Approach', {
  speed: quantity({
    label: 'Approach speed',
    symbol: 'v',
    unit: 'm/s',
    shown: 'mm/s',
    default: 0.05,
    range: [1e-5, 20],
    usual: [0.005, 0.3],
    note: 'Speed on the way; the moving mass carries it into the part.',
  }),
  acceleration: quantity({
    label: 'Acceleration',
    symbol: 'a',
    unit: 'm/s²',
    default: 3,
    range: [0.001, 2000],
    usual: [0.2, 20],
    note: 'Acceleration limit of the profile; the current that it takes must stay below a threshold, or the jaws stop on the way.',
  }),
  jerk: quantity({
    label: 'Jerk',
    symbol: 'j',
    unit: 'm/s³',
    default: 200,
    range: [0.01, 1e7],
    usual: [10, 2000],
    note: 'Limit on the change of acceleration; a low one keeps the jaws from vibrating before they touch.',
  }),
  creepSpeed: quantity({
    label: 'Creep speed',
    symbol: 'v_c',
    unit: 'm/s',
    shown: 'mm/s',
    default: 0.01,
    range: [1e-5, 20],
    usual: [0.001, 0.05],
    note: 'Slower speed inside the creep zone, at most the approach speed; it is the speed of the impact where the zone begins early enough.',
  }),
  creepFrom: quantity({
    label: 'Creep from opening',
    symbol: 'w_c',
    unit: 'm',
    shown: 'mm',
    default: 0,
    range: [0, 2],
    usual: [0, 0.2],
    note: 'Opening between the pads from which on the jaws creep: wider than the largest part, so that none is met at full speed; 0, or any opening below the part, means no creep zone.',
  }),
  overtravel: quantity({
    label: 'Overtravel',
    symbol: 'x_o',
    unit: 'm',
    shown: 'mm',
    default: 0.002,
    range: [0, 0.5],
    usual: [0.0005, 0.02],
    note: 'How far beyond first contact with the nominal part the profile of a jaw ends; the further, the harder a position loop presses, and the thinner a part it still reaches.',
  }),
})

export const strategies = group('Strategies', {
  thresholdStop: thresholdStopSettings,
  currentClamp: currentClampSettings,
  sensedForce: sensedForceSettings,
})

/** Settings that go with any motor, of those that do not by default. */
export const SETTINGS_ANYWHERE = { currentClamp: currentClampAnywhere }

/** Of those that version 1 had otherwise: where keys have moved to, and which it did not have. */
export const SETTINGS_BEFORE: Readonly<Record<string, { moved: Readonly<Record<string, string>>; fresh: string[] }>> = {
  sensedForce: sensedForceBefore,
}

/** What their keys demand of others. */
export const STRATEGY_RULES = [...currentClampRules, ...sensedForceRules]
