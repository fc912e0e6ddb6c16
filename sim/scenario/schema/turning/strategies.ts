/** The settings of the strategies where the output turns: what presses is a torque, and places are angles. */
import { currentClampSettings } from '../../../strategy/current-clamp/settings.ts'
import { sensedForceSettings } from '../../../strategy/sensed-force/settings.ts'
import { group, quantity } from '../../quantity.ts'
import { strategies } from '../strategies.ts'

/** An angle that every place is within: the clamp limits all the way [rad]. */
const EVERYWHERE = 1000

const sensedTorque = group('Sensed torque', {
  ...sensedForceSettings.properties,
  target: quantity({
    label: 'Target torque',
    symbol: 'T*',
    unit: 'N·m',
    default: 1.5,
    range: [1e-5, 1e5],
    usual: [0.05, 50],
    note: 'Wanted torque of the spindle; the torque loop holds it once the gauge has felt contact.',
  }),
  contactForce: quantity({
    label: 'Contact torque',
    symbol: 'T_t',
    unit: 'N·m',
    default: 0.4,
    range: [1e-6, 1e4],
    usual: [0.01, 5],
    note: 'Gauge reading at which the torque loop takes over: a low one is early, and trips on friction of the way, on noise and on inertia.',
  }),
  rate: quantity({
    label: 'Torque loop rate',
    symbol: 'f_T',
    unit: '1/s',
    shown: 'kHz',
    default: 1000,
    range: [20, 100000],
    usual: [200, 5000],
    note: 'Samples a second of the torque loop, a divisor of the servo rate; between two samples the spindle turns on.',
  }),
  kp: quantity({
    label: 'Proportional gain',
    symbol: 'k_p',
    unit: 'rad/(N·m·s)',
    default: 5,
    range: [0, 1e6],
    usual: [0.05, 200],
    note: 'Speed of the spindle for each newton metre of torque error; on a stiff seat it rings first.',
  }),
  ki: quantity({
    label: 'Integral gain',
    symbol: 'k_i',
    unit: 'rad/(N·m·s²)',
    default: 0,
    range: [0, 1e7],
    usual: [0, 500],
    note: 'Removes a lasting torque error; together with friction it hunts.',
  }),
  kd: quantity({
    label: 'Derivative gain',
    symbol: 'k_d',
    unit: 'rad/(N·m)',
    default: 0,
    range: [0, 1e4],
    usual: [0, 0.5],
    note: 'Speed of the spindle for each N·m/s of torque change; it damps the torque and passes the noise of the gauge on.',
  }),
  deadband: quantity({
    label: 'Dead band',
    symbol: 'ω_db',
    unit: 'rad/s',
    default: 0.05,
    range: [0, 1000],
    usual: [0, 0.5],
    note: 'Speed command below which the axis is told to stand still; it ends hunting and leaves a small torque error.',
  }),
  speedLimit: quantity({
    label: 'Speed limit',
    symbol: 'ω_lim',
    unit: 'rad/s',
    shown: 'rev/min',
    default: 10,
    range: [0.0001, 2000],
    usual: [0.2, 60],
    note: 'Highest speed that the torque loop may ask for; it bounds how far the torque overshoots after contact.',
  }),
  velocity: group('Velocity loop', {
    kp: quantity({
      label: 'Proportional gain',
      symbol: 'k_p',
      unit: 'A·s/rad',
      default: 0.3,
      range: [0, 1e6],
      usual: [0.002, 20],
      note: 'Current for each rad/s of speed error: it decides how closely the axis follows the torque loop.',
    }),
    ki: quantity({
      label: 'Integral gain',
      symbol: 'k_i',
      unit: 'A/rad',
      default: 15,
      range: [0, 1e8],
      usual: [0, 2000],
      note: 'Removes a lasting speed error; it holds against friction.',
    }),
  }),
})

export const turningStrategies = group('Strategies', {
  thresholdStop: strategies.properties.thresholdStop,
  currentClamp: group('Current clamp', {
    ...currentClampSettings.properties,
    from: quantity({
      label: 'Clamp before the seat',
      symbol: 'φ_cl',
      unit: 'rad',
      shown: '°',
      default: EVERYWHERE,
      range: [0, EVERYWHERE],
      usual: [0.1, EVERYWHERE],
      note: 'Angle before the nominal seat from which on the clamp current limits: before it the servo’s current limit holds, and an angle beyond the whole way means always.',
    }),
  }),
  sensedForce: sensedTorque,
})
