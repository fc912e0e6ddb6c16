/** Schema of the actuator: motor and transmission, for the three ways in which a motor moves a jaw. */
import Type from 'typebox'
import { choice, group, quantity } from './quantity.ts'

const thermal = group('Heat', {
  windingResistance: quantity({
    label: 'Winding to housing',
    symbol: 'R_wh',
    unit: 'K/W',
    default: 1.5,
    range: [0.001, 1000],
    note: 'Temperature rise of the winding over the housing for each watt of copper loss.',
  }),
  windingTime: quantity({
    label: 'Winding time constant',
    symbol: 'τ_w',
    unit: 's',
    default: 15,
    range: [0.05, 1e5],
    note: 'How quickly the winding alone warms up; short peaks are limited by it.',
  }),
  housingResistance: quantity({
    label: 'Housing to ambient',
    symbol: 'R_ha',
    unit: 'K/W',
    default: 3,
    range: [0.001, 1000],
    note: 'Temperature rise of the housing over the ambient for each watt; it sets the continuous force.',
  }),
  housingTime: quantity({
    label: 'Housing time constant',
    symbol: 'τ_h',
    unit: 's',
    default: 600,
    range: [0.5, 1e6],
    note: 'How quickly the whole motor warms up.',
  }),
  ambient: quantity({
    label: 'Ambient',
    symbol: 'T_a',
    unit: '°C',
    default: 25,
    range: [-40, 120],
    note: 'Temperature at the start of the run and of the air around the motor.',
  }),
  limit: quantity({
    label: 'Winding limit',
    symbol: 'T_max',
    unit: '°C',
    default: 130,
    range: [0, 300],
    note: 'Highest winding temperature that the insulation class permits.',
  }),
  magnetCoefficient: quantity({
    label: 'Magnet coefficient',
    symbol: 'α_B',
    unit: '1/K',
    shown: '%/K',
    default: -0.0011,
    range: [-0.01, 0],
    note: 'Loss of magnet flux per kelvin of the housing: a clamp set in amperes presses less when the magnets are warm.',
  }),
})

const electric = {
  resistance: quantity({
    label: 'Resistance at 25 °C',
    symbol: 'R',
    unit: 'Ω',
    default: 1.1,
    range: [0.001, 1000],
    note: 'Winding resistance; with the bus voltage it limits the stall current, and it makes the heat.',
  }),
  inductance: quantity({
    label: 'Inductance',
    symbol: 'L',
    unit: 'H',
    shown: 'mH',
    default: 0.0012,
    range: [1e-7, 10],
    note: 'Winding inductance; it slows the current and therefore the force.',
  }),
  continuousCurrent: quantity({
    label: 'Continuous current',
    symbol: 'I_c',
    unit: 'A',
    default: 3,
    range: [0.001, 1000],
    note: 'Current the motor carries for ever at its ambient temperature.',
  }),
  peakCurrent: quantity({
    label: 'Peak current',
    symbol: 'I_p',
    unit: 'A',
    default: 9,
    range: [0.001, 5000],
    note: 'Highest current the motor and its amplifier may carry for a short time.',
  }),
}

const rotary = group('Motor', {
  ...electric,
  torqueConstant: quantity({
    label: 'Torque constant',
    symbol: 'K_t',
    unit: 'N·m/A',
    shown: 'mN·m/A',
    default: 0.045,
    range: [1e-5, 100],
    note: 'Torque for each ampere; the back-EMF constant in V·s/rad is the same number.',
  }),
  inertia: quantity({
    label: 'Rotor inertia',
    symbol: 'J',
    unit: 'kg·m²',
    shown: 'g·cm²',
    default: 3e-6,
    range: [1e-10, 1],
    note: 'Rotor, coupling and screw; seen through the lead it is usually the largest mass behind an impact.',
  }),
  cogging: group('Cogging', {
    amplitude: quantity({
      label: 'Cogging amplitude',
      symbol: 'T_cog',
      unit: 'N·m',
      shown: 'mN·m',
      default: 0,
      range: [0, 100],
      note: 'Torque of the magnets against the teeth without current; it shows as an error of the grip force.',
    }),
    period: quantity({
      label: 'Cogging period',
      symbol: 'θ_cog',
      unit: 'rad',
      shown: '°',
      default: 0.5235987755982988,
      range: [0.001, 6.3],
      note: 'Angle from one cogging position to the next.',
    }),
  }),
  ripple: group('Ripple', {
    share: quantity({
      label: 'Ripple',
      symbol: 'ρ',
      unit: '',
      shown: '%',
      default: 0,
      range: [0, 0.5],
      note: 'Relative change of the torque constant with position; at a steady current it shows as an error of the grip force.',
    }),
    period: quantity({
      label: 'Ripple period',
      symbol: 'θ_ρ',
      unit: 'rad',
      shown: '°',
      default: 0.2617993877991494,
      range: [0.001, 6.3],
      note: 'Angle from one ripple to the next.',
    }),
  }),
  openLoop: Type.Boolean({
    title: 'Open loop',
    default: false,
    description:
      'A step motor without an encoder: the field follows the profile, the rotor follows the field, and under overload steps are lost.',
  }),
  fullSteps: quantity({
    label: 'Full steps a turn',
    symbol: 'z',
    unit: '',
    default: 200,
    range: [4, 10000],
    integer: true,
    note: 'Four full steps are one electrical cycle; it counts in open loop only.',
  }),
  thermal,
})

const linear = group('Motor', {
  ...electric,
  forceConstant: quantity({
    label: 'Force constant',
    symbol: 'K_f',
    unit: 'N/A',
    default: 12,
    range: [0.001, 1e5],
    note: 'Force for each ampere; the back-EMF constant in V·s/m is the same number.',
  }),
  movingMass: quantity({
    label: 'Moving mass',
    symbol: 'm_m',
    unit: 'kg',
    shown: 'g',
    default: 0.12,
    range: [1e-5, 500],
    note: 'The half of the motor that moves, coils or magnets; it strikes the part together with the jaw.',
  }),
  cogging: group('Cogging', {
    amplitude: quantity({
      label: 'Cogging amplitude',
      symbol: 'F_cog',
      unit: 'N',
      default: 0,
      range: [0, 1e4],
      note: 'Force of the magnets against the iron without current; it shows as an error of the grip force.',
    }),
    period: quantity({
      label: 'Cogging period',
      symbol: 'x_cog',
      unit: 'm',
      shown: 'mm',
      default: 0.012,
      range: [1e-5, 1],
      note: 'Travel from one cogging position to the next.',
    }),
  }),
  ripple: group('Ripple', {
    share: quantity({
      label: 'Ripple',
      symbol: 'ρ',
      unit: '',
      shown: '%',
      default: 0,
      range: [0, 0.5],
      note: 'Relative change of the force constant with position; at a steady current it shows as an error of the grip force.',
    }),
    period: quantity({
      label: 'Ripple period',
      symbol: 'x_ρ',
      unit: 'm',
      shown: 'mm',
      default: 0.004,
      range: [1e-5, 1],
      note: 'Travel from one ripple to the next.',
    }),
  }),
  endLoss: quantity({
    label: 'Force loss at the ends',
    symbol: 'κ',
    unit: '',
    shown: '%',
    default: 0,
    range: [0, 0.9],
    note: 'Share of the force constant that is missing at either end of the stroke, as in a short voice coil.',
  }),
  thermal,
})

const moved = {
  carriageMass: quantity({
    label: 'Carriage mass',
    symbol: 'm_c',
    unit: 'kg',
    shown: 'g',
    default: 0.15,
    range: [0, 500],
    note: 'Nut or slider and carriage, on the motor side of the transmission stiffness.',
  }),
  coulomb: quantity({
    label: 'Coulomb friction',
    symbol: 'F_c',
    unit: 'N',
    default: 6,
    range: [0, 1e5],
    note: 'Sliding friction of motor, guide and screw without load, at the jaw; current cannot tell it from grip force.',
  }),
  breakaway: quantity({
    label: 'Break-away friction',
    symbol: 'F_s',
    unit: 'N',
    default: 8,
    range: [0, 1e5],
    note: 'Friction at rest, at the jaw; above the sliding friction it makes small corrections jump.',
  }),
  stribeckSpeed: quantity({
    label: 'Stribeck speed',
    symbol: 'v_s',
    unit: 'm/s',
    shown: 'mm/s',
    default: 0.002,
    range: [1e-6, 1],
    note: 'Speed at which friction has fallen half-way from break-away to Coulomb.',
  }),
  viscous: quantity({
    label: 'Viscous friction',
    symbol: 'b',
    unit: 'N·s/m',
    default: 25,
    range: [0, 1e6],
    note: 'Friction that grows with speed, at the jaw.',
  }),
  bristleStiffness: quantity({
    label: 'Bristle stiffness',
    symbol: 'σ_0',
    unit: 'N/m',
    shown: 'N/µm',
    default: 2e6,
    range: [1e3, 1e9],
    note: 'Stiffness of the axis before friction breaks away.',
  }),
  stiffness: quantity({
    label: 'Transmission stiffness',
    symbol: 'k_t',
    unit: 'N/m',
    shown: 'N/µm',
    default: 8e6,
    range: [1e3, 1e10],
    note: 'Between motor side and jaw: screw, bearing, nut, finger root.',
  }),
  damping: quantity({
    label: 'Transmission damping',
    symbol: 'd_t',
    unit: 'N·s/m',
    default: 300,
    range: [0, 1e6],
    note: 'Damps the vibration of the jaw against the motor side.',
  }),
  backlash: quantity({
    label: 'Backlash',
    symbol: 'b_l',
    unit: 'm',
    shown: 'µm',
    default: 0,
    range: [0, 0.01],
    note: 'Free play between motor side and jaw.',
  }),
}

const screw = group('Transmission', {
  lead: quantity({
    label: 'Lead',
    symbol: 'l',
    unit: 'm',
    shown: 'mm',
    default: 0.005,
    range: [1e-5, 0.5],
    note: 'Travel for one turn: a short lead gives force and hides it behind friction, a long lead can be pushed back.',
  }),
  pitchDiameter: quantity({
    label: 'Pitch diameter',
    symbol: 'd_2',
    unit: 'm',
    shown: 'mm',
    default: 0.0105,
    range: [0.0005, 0.5],
    note: 'Diameter at which the thread, or the balls, carry the load.',
  }),
  threadFriction: quantity({
    label: 'Thread friction',
    symbol: 'µ_t',
    unit: '',
    default: 0.004,
    range: [0, 1],
    note: 'Coefficient of friction in the thread; about 0.003 to 0.01 for balls, 0.1 to 0.2 for sliding nuts.',
  }),
  flankAngle: quantity({
    label: 'Flank half-angle',
    symbol: 'β',
    unit: 'rad',
    shown: '°',
    default: 0,
    range: [0, 1.2],
    note: 'Half the angle between the flanks: 15° trapezoidal, 0 square or ball screw.',
  }),
  ...moved,
})

const rack = group('Transmission', {
  pinionRadius: quantity({
    label: 'Pinion radius',
    symbol: 'r_p',
    unit: 'm',
    shown: 'mm',
    default: 0.008,
    range: [0.0002, 1],
    note: 'Pitch radius of the pinion that drives the racks.',
  }),
  gearRatio: quantity({
    label: 'Gear ratio',
    symbol: 'i',
    unit: '',
    default: 5,
    range: [0.1, 1000],
    note: 'Motor turns for one turn of the pinion; the rotor counts with its square.',
  }),
  efficiency: quantity({
    label: 'Gear efficiency',
    symbol: 'η',
    unit: '',
    default: 0.9,
    range: [0.3, 1],
    note: 'Efficiency from motor to rack; the way back has 2 − 1/η and locks below one half.',
  }),
  ...moved,
})

const direct = group('Transmission', moved)

export const SCREW_FAMILIES = ['brushless-screw', 'brush-screw', 'step-screw'] as const
export const RACK_FAMILIES = ['geared-rack'] as const
export const DIRECT_FAMILIES = [
  'voice-coil',
  'linear-magnets-moving',
  'linear-coils-moving',
  'tubular-rod-moving',
  'tubular-coils-moving',
  'moving-magnet',
] as const

const FAMILY_NOTE = 'How the motor is built; it decides the drawing and what is typical for the numbers.'

/** One closed object a kind; `kind` decides which of them an input is held against. */
export const ACTUATORS = {
  screw: Type.Object(
    {
      kind: Type.Literal('screw', { title: 'Kind', default: 'screw' }),
      family: choice(
        'Family',
        SCREW_FAMILIES,
        ['Brushless motor, screw', 'Brush motor, screw', 'Step motor, screw'],
        FAMILY_NOTE,
      ),
      motor: rotary,
      transmission: screw,
    },
    { title: 'Screw axis', default: {}, additionalProperties: false },
  ),
  rack: Type.Object(
    {
      kind: Type.Literal('rack', { title: 'Kind', default: 'rack' }),
      family: choice('Family', RACK_FAMILIES, ['Brushless motor, gear and rack'], FAMILY_NOTE),
      motor: rotary,
      transmission: rack,
    },
    { title: 'Rack axis', default: {}, additionalProperties: false },
  ),
  direct: Type.Object(
    {
      kind: Type.Literal('direct', { title: 'Kind', default: 'direct' }),
      family: choice(
        'Family',
        DIRECT_FAMILIES,
        [
          'Voice coil',
          'Linear brushless, magnets moving',
          'Linear brushless, coils moving',
          'Tubular brushless, rod moving',
          'Tubular brushless, coils moving',
          'Moving-magnet linear',
        ],
        FAMILY_NOTE,
      ),
      motor: linear,
      transmission: direct,
    },
    { title: 'Direct drive', default: {}, additionalProperties: false },
  ),
}
