/** Figures of the model that no scenario sets, from the files that use them, so that they can be shown and cited. */

import { GRAVITY } from '../../axis/arm.ts'
import { STIFFEST_STOP } from '../../axis/endstops.ts'
import { LOAD_DAMPING, LOAD_REACH } from '../../axis/flanks.ts'
import { ELASTIC } from '../../axis/friction.ts'
import { COPPER_COEFFICIENT, REFERENCE } from '../../axis/heat.ts'
import { BAND } from '../../cycle/figures.ts'
import { FLIPS, WINDOW } from '../../cycle/rails.ts'
import { RESIDUAL } from '../../job/grip/contact/side.ts'
import { EVEN_PRESSURE } from '../../job/grip/fill.ts'
import { DAMPING_RATIO, SHEAR } from '../../job/grip/slip.ts'
import { SETTLED, STANDING } from '../../job/sums.ts'
import { STIFFNESS_SPREAD } from '../../loops/working-point.ts'
import { LONGEST_STEP, MODE_PER_STEP } from '../../model/step.ts'

export interface FixedFigure {
  id: string
  symbol: string
  label: string
  value: number
  unit: string
  shown?: string
  /** Where the value comes from. */
  basis: string
}

const PRACTICE = 'Common practice, no source'

export const FIXED_FIGURES: FixedFigure[] = [
  {
    id: 'gravity',
    symbol: 'g',
    label: 'Standard acceleration of gravity',
    value: GRAVITY,
    unit: 'm/s²',
    basis: 'ISO 80000-3',
  },
  {
    id: 'copper',
    symbol: 'α_Cu',
    label: 'Temperature coefficient of copper',
    value: COPPER_COEFFICIENT,
    unit: '1/K',
    shown: '%/K',
    basis: 'IEC 60028, annealed copper',
  },
  {
    id: 'reference',
    symbol: 'T_ref',
    label: 'Reference temperature',
    value: REFERENCE,
    unit: '°C',
    basis: 'That at which resistance and magnet flux are given',
  },
  {
    id: 'reach',
    symbol: 'δ',
    label: 'Reach of the loaded flanks',
    value: LOAD_REACH,
    unit: 'm',
    shown: 'µm',
    basis: PRACTICE,
  },
  {
    id: 'flanks',
    symbol: 'T_δ',
    label: 'Damping time of the loaded flanks',
    value: LOAD_DAMPING,
    unit: 's',
    shown: 'ms',
    basis: PRACTICE,
  },
  {
    id: 'elastic',
    symbol: 'κ',
    label: 'Share of its reach up to which a bristle is elastic',
    value: ELASTIC,
    unit: '',
    shown: '%',
    basis: PRACTICE,
  },
  {
    id: 'even',
    symbol: 'r_e',
    label: 'Lever of friction over the radius of a pad',
    value: EVEN_PRESSURE,
    unit: '',
    basis: 'Disc under even pressure, closed form',
  },
  {
    id: 'stop',
    symbol: 'k_stop',
    label: 'Highest stiffness of an end stop',
    value: STIFFEST_STOP,
    unit: 'N/m',
    shown: 'N/µm',
    basis: PRACTICE,
  },
  { id: 'residual', symbol: 'r', label: 'Stiffness left in a broken part', value: RESIDUAL, unit: '', basis: PRACTICE },
  {
    id: 'shear',
    symbol: 's_G',
    label: 'Shear over compressive stiffness of a pad',
    value: SHEAR,
    unit: '',
    basis: 'G/E of an incompressible material, closed form',
  },
  {
    id: 'shear-damping',
    symbol: 'D',
    label: 'Damping ratio of the part on the pads, in shear',
    value: DAMPING_RATIO,
    unit: '',
    basis: PRACTICE,
  },
  {
    id: 'longest-step',
    symbol: 'Δt_max',
    label: 'Longest integration step',
    value: LONGEST_STEP,
    unit: 's',
    shown: 'µs',
    basis: PRACTICE,
  },
  {
    id: 'mode',
    symbol: 'q',
    label: 'Stiffest mode times step, at most',
    value: MODE_PER_STEP,
    unit: '',
    basis: 'Semi-implicit Euler is stable up to 2, closed form; the rest is for accuracy',
  },
  {
    id: 'settled',
    symbol: 'T_set',
    label: 'Length of the settled window',
    value: SETTLED,
    unit: 's',
    shown: 'ms',
    basis: PRACTICE,
  },
  {
    id: 'band',
    symbol: 'ε_set',
    label: 'Band of the grip time around the settled force',
    value: BAND,
    unit: '',
    shown: '%',
    basis: PRACTICE,
  },
  {
    id: 'standing',
    symbol: 'v_0',
    label: 'Speed below which the axis stands',
    value: STANDING,
    unit: 'm/s',
    shown: 'mm/s',
    basis: PRACTICE,
  },
  {
    id: 'flips',
    symbol: 'n_0',
    label: 'Changes from limit to limit that make a run unstable',
    value: FLIPS,
    unit: '',
    basis: PRACTICE,
  },
  {
    id: 'flip-window',
    symbol: 'T_0',
    label: 'Time within which they must fall',
    value: WINDOW,
    unit: 's',
    basis: PRACTICE,
  },
  {
    id: 'spread',
    symbol: 'ε_K',
    label: 'Spread of part stiffness in the loops, either way',
    value: STIFFNESS_SPREAD,
    unit: '',
    shown: '%',
    basis: PRACTICE,
  },
]
