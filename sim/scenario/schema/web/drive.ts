/** Groups of a turning axis in the words of a web: what is wanted and measured is a tension in newtons, places are angles before it is taut. */
import Type from 'typebox'
import { sensedForceSettings } from '../../../strategy/sensed-force/settings.ts'
import { group, quantity } from '../../quantity.ts'
import { sensors } from '../sensors.ts'
import { strategies } from '../strategies.ts'
import { turningApproach } from '../turning/approach.ts'
import { turningSensors } from '../turning/sensors.ts'
import { turningStrategies } from '../turning/strategies.ts'

const { fingerMass: _, ...gauge } = sensors.properties.gauge.properties

export const webSensors = group('Sensors', {
  encoder: turningSensors.properties.encoder,
  gauge: group('Gauge roll', {
    ...gauge,
    /** The gauge roll stands in the span, not in front of what the drive moves. */
    fingerMass: Type.Literal(0, { title: 'Mass before the gauge', default: 0 }),
  }),
})

const sensed = turningStrategies.properties.sensedForce.properties

export const webStrategies = group('Strategies', {
  thresholdStop: strategies.properties.thresholdStop,
  currentClamp: group('Current clamp', {
    ...turningStrategies.properties.currentClamp.properties,
    from: quantity({
      label: 'Clamp before taut',
      symbol: 'φ_cl',
      unit: 'rad',
      shown: '°',
      default: 1000,
      range: [0, 1000],
      usual: [0.1, 1000],
      note: 'Turn of the roll before the nominal slack is taken up from which on the clamp current limits: before it the servo’s current limit holds, and an angle beyond the whole slack means always.',
    }),
  }),
  sensedForce: group('Sensed force', {
    ...sensed,
    target: quantity({
      label: 'Target tension',
      symbol: 'T*',
      unit: 'N',
      default: 50,
      range: [0.001, 1e6],
      usual: [5, 3000],
      note: 'Wanted tension at the gauge roll; the loop holds it from contact on by trimming the roll’s speed against the line’s.',
    }),
    contactForce: quantity({
      label: 'Contact tension',
      symbol: 'T_t',
      unit: 'N',
      default: 5,
      range: [0.0001, 1e5],
      usual: [0.5, 100],
      note: 'Reading at which the web counts as taut and the loop takes over: a low one is early, and trips on noise.',
    }),
    rate: sensedForceSettings.properties.rate,
    kp: quantity({
      label: 'Proportional gain',
      symbol: 'k_p',
      unit: 'rad/(N·s)',
      default: 0.02,
      range: [0, 1e5],
      usual: [0.0005, 1],
      note: 'Speed of the roll for each newton of tension error; against a stiff web it rings first.',
    }),
    ki: quantity({
      label: 'Integral gain',
      symbol: 'k_i',
      unit: 'rad/(N·s²)',
      default: 0.05,
      range: [0, 1e6],
      usual: [0, 5],
      note: 'Finds the lasting draw that the running web asks for; without it tension falls short, the more the faster the line.',
    }),
    kd: quantity({
      label: 'Derivative gain',
      symbol: 'k_d',
      unit: 'rad/N',
      default: 0,
      range: [0, 1000],
      usual: [0, 0.01],
      note: 'Speed of the roll for each N/s of tension change; it damps the swing of roll on web and passes the gauge’s noise on.',
    }),
    deadband: quantity({
      label: 'Dead band',
      symbol: 'ω_db',
      unit: 'rad/s',
      default: 0.002,
      range: [0, 1000],
      usual: [0, 0.05],
      note: 'Trim of the speed below which the roll is told to keep the line’s speed; it ends hunting, and a running web loses the tension that the draw gives it.',
    }),
  }),
})

export const webApproach = group('Drawing taut', {
  ...turningApproach,
  speed: quantity({
    label: 'Speed of drawing taut',
    symbol: 'ω',
    unit: 'rad/s',
    default: 1,
    range: [0.0001, 2000],
    usual: [0.05, 20],
    note: 'How much faster than the line the roll turns while it takes up the slack; its inertia carries that speed into the web.',
  }),
  acceleration: quantity({
    label: 'Acceleration',
    symbol: 'α',
    unit: 'rad/s²',
    default: 5,
    range: [0.001, 1e6],
    usual: [0.5, 500],
    note: 'Acceleration limit of that move.',
  }),
  jerk: quantity({
    label: 'Jerk',
    symbol: 'j',
    unit: 'rad/s³',
    default: 200,
    range: [0.01, 1e9],
    usual: [10, 50000],
    note: 'Limit on the change of acceleration; a low one keeps the roll from swinging before the web is taut.',
  }),
  creepSpeed: quantity({
    label: 'Creep speed',
    symbol: 'ω_c',
    unit: 'rad/s',
    default: 0.2,
    range: [0.0001, 2000],
    usual: [0.01, 5],
    note: 'Slower speed for the last of the slack; it is the one with which the web comes taut where the zone begins early enough.',
  }),
  creepFrom: quantity({
    label: 'Creep before taut',
    symbol: 'φ_c',
    unit: 'rad',
    shown: '°',
    default: 0,
    range: [0, 1000],
    usual: [0, 3],
    note: 'Turn of the roll before the nominal slack is taken up on which it creeps; 0 means no creep zone.',
  }),
  overtravel: quantity({
    label: 'Lead of the reference',
    symbol: 'φ_o',
    unit: 'rad',
    shown: '°',
    default: 1,
    range: [0, 1000],
    usual: [0.1, 10],
    note: 'How far the position loop’s reference runs ahead of the roll once the web is taut: far enough, and the loop stands at its current limit, however little the web gives way.',
  }),
})
