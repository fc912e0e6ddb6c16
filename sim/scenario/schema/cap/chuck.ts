/** What turns the closure: the chuck of the head, and the way of the head. */
import { group, quantity } from '../../quantity.ts'
import { turningApproach } from '../turning/approach.ts'

export const chuck = group('Chuck', {
  inertia: quantity({
    label: 'Inertia of the chuck',
    symbol: 'J_h',
    unit: 'kg·m²',
    shown: 'g·cm²',
    default: 5e-5,
    range: [1e-8, 100],
    usual: [2e-6, 0.005],
    note: 'What turns behind the transmission, up to the give of the chuck; at speed it runs into the seat and makes the peak.',
  }),
  stiffness: quantity({
    label: 'Stiffness of the chuck',
    symbol: 'k_h',
    unit: 'N·m/rad',
    default: 100,
    range: [0.01, 1e7],
    usual: [5, 5000],
    note: 'How far pads or jaws of the chuck give before the closure follows, in series with thread and liner.',
  }),
  damping: quantity({
    label: 'Damping of the chuck',
    symbol: 'd_h',
    unit: 'N·m·s/rad',
    shown: 'mN·m·s/rad',
    default: 0.01,
    range: [0, 1e4],
    usual: [0.0002, 1],
    note: 'Beside that stiffness; without it closure and chuck go on ringing after the seat.',
  }),
  startAngle: quantity({
    label: 'Angle to the start of the thread',
    symbol: 'φ_s',
    unit: 'rad',
    shown: '°',
    default: Math.PI,
    range: [0, 100],
    usual: [0, 7],
    note: 'How far the closure turns on the rim before the threads find each other; it differs from jar to jar, by up to a turn.',
  }),
  topLoad: quantity({
    label: 'Top load',
    symbol: 'N_t',
    unit: 'N',
    default: 20,
    range: [0, 1e6],
    usual: [0, 300],
    note: 'Force with which the head presses the closure down at the start; it eases the thread and is gone once the head lifts.',
  }),
  topRate: quantity({
    label: 'Top load lost on the way',
    symbol: 'k_n',
    unit: 'N/m',
    shown: 'N/mm',
    default: 0,
    range: [0, 1e7],
    usual: [0, 20000],
    note: 'Spring rate of the top load: so much is lost for each way that the closure goes down by its lead.',
  }),
})

/** Places are told from the nominal seat back. */
export const capApproach = group('Approach', {
  ...turningApproach,
  creepFrom: quantity({
    label: 'Creep before the seat',
    symbol: 'φ_w',
    unit: 'rad',
    shown: '°',
    default: 0,
    range: [0, 300],
    usual: [0, 10],
    note: 'Angle before first touch of the nominal liner on which the head creeps; 0 means no creep zone.',
  }),
  overtravel: quantity({
    label: 'Angle beyond the liner',
    symbol: 'φ_o',
    unit: 'rad',
    shown: '°',
    default: 4,
    range: [0, 300],
    usual: [0.5, 13],
    note: 'How far beyond first touch of the nominal liner the profile of the head ends: well beyond where the torque is reached, so that the torque ends the turning.',
  }),
})
