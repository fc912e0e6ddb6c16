/** The servo of an output that turns: its errors are angles. */
import { group, quantity } from '../../quantity.ts'
import { servo } from '../drive.ts'

export const turningServo = group('Servo', {
  ...servo.properties,
  kp: quantity({
    label: 'Proportional gain',
    symbol: 'k_p',
    unit: 'A/rad',
    default: 20,
    range: [0, 1e8],
    usual: [0.5, 2000],
    note: 'Current for each radian of following error: it decides how stiffly the axis holds its angle, and how soon it presses on what stops it.',
  }),
  ki: quantity({
    label: 'Integral gain',
    symbol: 'k_i',
    unit: 'A/(rad·s)',
    default: 200,
    range: [0, 1e11],
    usual: [0, 50000],
    note: 'Removes a lasting error of the angle; where the turning is stopped it winds the current up to its limit.',
  }),
  kd: quantity({
    label: 'Derivative gain',
    symbol: 'k_d',
    unit: 'A·s/rad',
    default: 0.3,
    range: [0, 1e6],
    usual: [0.002, 20],
    note: 'Current for each rad/s of speed error: damping, which calms the axis once something stops it.',
  }),
  velocityFeedforward: quantity({
    label: 'Speed feed-forward',
    symbol: 'k_v',
    unit: 'A·s/rad',
    default: 0,
    range: [0, 1e5],
    usual: [0, 5],
    note: 'Current in advance for viscous friction; it keeps the following error small, and with it the current on the way.',
  }),
  accelerationFeedforward: quantity({
    label: 'Acceleration feed-forward',
    symbol: 'k_a',
    unit: 'A·s²/rad',
    default: 0,
    range: [0, 1e4],
    usual: [0, 0.5],
    note: 'Current in advance for the inertia; without it speeding up looks like torque to a threshold.',
  }),
})
