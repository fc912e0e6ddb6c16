import Type from 'typebox'
import { group, quantity } from '../../scenario/quantity.ts'
import { divides, nearestDivisor, type Rule, rule } from '../../scenario/rule.ts'

export const sensedForceSettings = group('Sensed force', {
  target: quantity({
    label: 'Target force',
    symbol: 'F*',
    unit: 'N',
    default: 25,
    range: [0.001, 1e6],
    usual: [1, 500],
    note: 'Wanted grip force at one contact; the force loop holds it from contact on.',
  }),
  contactForce: quantity({
    label: 'Contact force',
    symbol: 'F_t',
    unit: 'N',
    default: 1.5,
    range: [0.0001, 1e5],
    usual: [0.1, 10],
    note: 'Gauge reading at which the force loop takes over: a low one is early, and trips on noise and on the inertia of the finger.',
  }),
  rate: quantity({
    label: 'Force loop rate',
    symbol: 'f_F',
    unit: '1/s',
    shown: 'kHz',
    default: 1000,
    range: [20, 100000],
    usual: [200, 5000],
    note: 'Samples a second of the force loop, a divisor of the servo rate; between two samples the jaws move on.',
  }),
  kp: quantity({
    label: 'Proportional gain',
    symbol: 'k_p',
    unit: 'm/(N·s)',
    shown: 'mm/(N·s)',
    default: 0.0004,
    range: [0, 100],
    usual: [1e-5, 0.01],
    note: 'Jaw speed for each newton of force error; on a stiff part it rings first.',
  }),
  ki: quantity({
    label: 'Integral gain',
    symbol: 'k_i',
    unit: 'm/(N·s²)',
    shown: 'mm/(N·s²)',
    default: 0,
    range: [0, 1000],
    usual: [0, 0.05],
    note: 'Removes a lasting force error; together with friction it hunts.',
  }),
  kd: quantity({
    label: 'Derivative gain',
    symbol: 'k_d',
    unit: 'm/N',
    shown: 'mm/N',
    default: 0,
    range: [0, 1],
    usual: [0, 1e-5],
    note: 'Jaw speed for each N/s of force change; it damps the force and passes the noise of the gauge on.',
  }),
  derivativeFilter: Type.Union(
    [
      Type.Null(),
      quantity({
        label: 'Derivative filter',
        symbol: 'T_Fd',
        unit: 's',
        shown: 'ms',
        range: [0, 1],
        usual: [0, 0.005],
        note: 'Time constant of the filter on the change of the force; a long one keeps the gauge’s noise from the jaw and damps later.',
      }),
    ],
    {
      title: 'Derivative filter',
      default: null,
      description:
        'Time constant of the filter on the change of the force; null: that of the gauge, one over its bandwidth.',
    },
  ),
  deadband: quantity({
    label: 'Dead band',
    symbol: 'v_db',
    unit: 'm/s',
    shown: 'mm/s',
    default: 0.0002,
    range: [0, 10],
    usual: [0, 0.001],
    note: 'Speed command below which the axis is told to stand still; it ends hunting and leaves a small force error.',
  }),
  speedLimit: quantity({
    label: 'Speed limit',
    symbol: 'v_lim',
    unit: 'm/s',
    shown: 'mm/s',
    default: 0.02,
    range: [1e-6, 20],
    usual: [0.002, 0.1],
    note: 'Highest speed that the force loop may ask for; it bounds how far the force overshoots after contact.',
  }),
  velocity: group('Velocity loop', {
    kp: quantity({
      label: 'Proportional gain',
      symbol: 'k_p',
      unit: 'A·s/m',
      default: 80,
      range: [0, 1e7],
      usual: [1, 500],
      note: 'Current for each m/s of speed error: it decides how closely the axis follows the force loop.',
    }),
    ki: quantity({
      label: 'Integral gain',
      symbol: 'k_i',
      unit: 'A/m',
      shown: 'A/mm',
      default: 4000,
      range: [0, 1e9],
      usual: [0, 50000],
      note: 'Removes a lasting speed error; it holds against friction.',
    }),
  }),
})

/** What version 1 had otherwise: the gauge lay here, and one key was not known. */
export const sensedForceBefore = { moved: { sensor: 'sensors.gauge' }, fresh: ['derivativeFilter'] }

/** What its keys demand of others. */
export const sensedForceRules: Rule[] = [
  rule(
    ['strategies.sensedForce.rate', 'servo.rate'],
    (s) => divides(s.strategies.sensedForce.rate, s.servo.rate),
    (s) => `${s.strategies.sensedForce.rate} 1/s`,
    (s) =>
      `a rate that divides the servo's ${s.servo.rate} 1/s, such as ${nearestDivisor(s.strategies.sensedForce.rate, s.servo.rate, sensedForceSettings.properties.rate)} 1/s`,
  ),
]
