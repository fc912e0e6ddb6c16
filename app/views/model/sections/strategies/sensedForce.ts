import { type Section, say, tex } from '../../section.ts'
import { COMMAND, INTEGRAL, perSecond, SERVO_PERIOD, SPEED } from '../symbols.ts'

export const SENSED_FORCE: Section[] = [
  {
    id: 'sensed-force',
    title: 'Sensed force',
    blocks: [
      say`A velocity PI drives the axis throughout. Until the gauge reads more than $F_t$, and the profile does not speed up, the wanted speed is the profile’s. From then on a force PID sets it once a period $T_F = 1/f_F$, limited to $\pm v_lim$:`,
      tex`w = \left(k_p + \frac{k_i\,T_F}{2}\right)(F^* - F_m) + S - k_d\,\dot F_m`,
      tex`S' = S + k_i\,T_F\,(F^* - F_m)`,
      say`The derivative acts on the measured force, filtered with the time constant $T_Fd$, which is $1/ω_g$ where none is set. The dead band gives zero where $|w| \le v_db$ and leaves $w$ as it is outside. Speeding up towards the part stays within the acceleration of the approach; slowing down is at once.`,
    ],
    quantities: [
      'strategies.sensedForce.target',
      'strategies.sensedForce.contactForce',
      'strategies.sensedForce.rate',
      'strategies.sensedForce.kp',
      'strategies.sensedForce.ki',
      'strategies.sensedForce.kd',
      'strategies.sensedForce.derivativeFilter',
      'strategies.sensedForce.deadband',
      'strategies.sensedForce.speedLimit',
      'sensors.gauge.bandwidth',
    ],
    own: [
      { symbol: 'w', title: 'Wanted speed', unit: 'm/s' },
      { symbol: 'F_m', title: 'Reading of the gauge', unit: 'N' },
      INTEGRAL('m/s'),
      {
        symbol: 'T_F',
        title: 'Period of the force loop',
        unit: 's',
        shown: 'ms',
        value: perSecond(({ strategies }) => strategies.sensedForce.rate),
      },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'velocity-loop',
    title: 'Velocity loop of the sensed force',
    blocks: [
      tex`i^* = \left(k_p + \frac{k_i\,T_s}{2}\right)(w - v_m) + S,\qquad S' = S + k_i\,T_s\,(w - v_m)`,
      say`It runs at the servo rate, is limited to $\pm I_lim$, and takes the measured speed as the servo does.`,
    ],
    quantities: ['strategies.sensedForce.velocity.kp', 'strategies.sensedForce.velocity.ki', 'servo.currentLimit'],
    own: [{ symbol: 'w', title: 'Wanted speed', unit: 'm/s' }, SPEED, COMMAND, INTEGRAL('A'), SERVO_PERIOD],
    fixed: [],
    sources: [],
  },
]
