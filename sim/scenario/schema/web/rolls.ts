/** The line that hands the web out, the roll that pulls it, and how the drive of the roll follows the line. */
import Type from 'typebox'
import { choice, group, quantity } from '../../quantity.ts'

const ramp = Type.Object(
  {
    start: quantity({
      label: 'Start',
      symbol: 't_0',
      unit: 's',
      default: 0.8,
      range: [0, 600],
      usual: [0.5, 60],
      note: 'Time at which the line begins to change its speed; the ramp before has to be over by then.',
    }),
    speed: quantity({
      label: 'To speed',
      symbol: 'v_1',
      unit: 'm/s',
      default: 1,
      range: [0, 60],
      usual: [0, 10],
      note: 'Speed of the web at the line from the end of the ramp on; 0 stops the line.',
    }),
    acceleration: quantity({
      label: 'Acceleration',
      symbol: 'a',
      unit: 'm/s²',
      default: 0.5,
      range: [0.001, 200],
      usual: [0.05, 5],
      note: 'Steepest change of speed, up or down; with the roll’s inertia it is what the drive has to add to the tension, or takes out of it.',
    }),
    jerk: quantity({
      label: 'Jerk',
      symbol: 'j',
      unit: 'm/s³',
      default: 2,
      range: [0.001, 1e5],
      usual: [0.1, 50],
      note: 'Limit on the change of acceleration; a low one gives the tension time to be held.',
    }),
  },
  { title: 'Ramp', additionalProperties: false },
)

export const line = group('Line', {
  ramps: Type.Array(ramp, { title: 'Ramps', default: [{ start: 0.8, speed: 0.3 }], maxItems: 40 }),
  radius: quantity({
    label: 'Radius of the line’s roll',
    symbol: 'r_1',
    unit: 'm',
    shown: 'mm',
    default: 0.06,
    range: [0.001, 5],
    usual: [0.02, 0.5],
    note: 'Of the roll through which the line hands the web out; what is out of round comes once a turn.',
  }),
  runout: quantity({
    label: 'Out of round, line',
    symbol: 'e_1',
    unit: 'm',
    shown: 'mm',
    default: 0,
    range: [0, 0.1],
    usual: [0, 0.0005],
    note: 'By how much the radius of the line’s roll swings about its mean; the speed of the web swings by the same share.',
  }),
})

export const roll = group('Roll', {
  kind: choice(
    'Kind',
    ['winds', 'draws'],
    ['Winds the web up', 'Draws it and lets it go'],
    'Winds: radius and inertia grow with what has been wound. Draws: the web leaves the roll without pull, and nothing grows.',
  ),
  radius: quantity({
    label: 'Radius at the start',
    symbol: 'R_0',
    unit: 'm',
    shown: 'mm',
    default: 0.1,
    range: [0.005, 10],
    usual: [0.03, 1],
    note: 'Outside, with what is wound already; torque over radius is tension, and a large roll turns slowly.',
  }),
  coreRadius: quantity({
    label: 'Core radius',
    symbol: 'r_c',
    unit: 'm',
    shown: 'mm',
    default: 0.04,
    range: [0.002, 10],
    usual: [0.02, 0.3],
    note: 'Inside of what is wound; between it and the radius lies web of the web’s density.',
  }),
  inertia: quantity({
    label: 'Inertia of core and shaft',
    symbol: 'J_c',
    unit: 'kg·m²',
    default: 0.002,
    range: [1e-7, 1e5],
    usual: [0.0001, 10],
    note: 'What turns with the roll beside the web that is wound on it; of a drawing roll the whole roll.',
  }),
  runout: quantity({
    label: 'Out of round',
    symbol: 'e',
    unit: 'm',
    shown: 'mm',
    default: 0,
    range: [0, 0.5],
    usual: [0, 0.003],
    note: 'By how much the radius swings about its mean in a turn; held by torque the tension swings by e/R, held by speed with the stiffness of the web.',
  }),
})

export const follow = group('Following the line', {
  radius: choice(
    'Radius reckoned with',
    ['start', 'wound'],
    ['That of the start', 'Grown by what is wound'],
    'Start: speed and torque are reckoned with the radius at the start, so a growing roll is pulled on less and less. Wound: the drive counts the line’s length and knows how thick the web is.',
  ),
  overspeed: quantity({
    label: 'Overspeed',
    symbol: 'γ_v',
    unit: '',
    shown: '%',
    default: 0.05,
    range: [0, 1],
    usual: [0.01, 0.15],
    note: 'How much faster than the line the reference of the current clamp may run to keep its lead: more than the web’s draw, or it loses its hold at speed; after a break the roll turns no faster than that.',
  }),
  inertia: quantity({
    label: 'Inertia made up for',
    symbol: 'γ_J',
    unit: '',
    shown: '%',
    default: 1,
    range: [0, 1.5],
    usual: [0, 1],
    note: 'Share of the current for speeding up motor and roll that is added in advance from the line’s acceleration; without it a ramp takes J·a/R² out of the tension.',
  }),
  losses: quantity({
    label: 'Losses made up for',
    symbol: 'γ_b',
    unit: '',
    shown: '%',
    default: 1,
    range: [0, 1.5],
    usual: [0, 1],
    note: 'Share of the axis’ viscous friction at the line’s speed that is added in advance; the rest is missing in the tension at speed.',
  }),
})
