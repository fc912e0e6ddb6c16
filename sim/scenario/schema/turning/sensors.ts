/** What the drive of an output that turns measures with: the encoder at the motor, a torque gauge at the spindle. */
import { group, quantity } from '../../quantity.ts'
import { sensors } from '../sensors.ts'

const { encoder, gauge } = sensors.properties

export const turningSensors = group('Sensors', {
  encoder: group('Encoder', {
    ...encoder.properties,
    resolution: quantity({
      label: 'Resolution',
      symbol: 'Δφ',
      unit: 'rad',
      shown: '°',
      default: 0.0005,
      range: [0, 1],
      usual: [0, 0.01],
      note: 'Step of the measured angle at the spindle, 0 for none; coarse steps make speed and holding current noisy.',
    }),
    offset: quantity({
      label: 'Offset',
      symbol: 'φ_0',
      unit: 'rad',
      shown: '°',
      default: 0,
      range: [-10, 10],
      usual: [-0.1, 0.1],
      note: 'Reading where the spindle sets out, as homing left it: the way ends, and creeping begins, that much earlier, or later if it is negative.',
    }),
  }),
  gauge: group('Gauge', {
    ...gauge.properties,
    gainError: quantity({
      label: 'Gain error',
      symbol: 'ε_g',
      unit: '',
      shown: '%',
      default: 0,
      range: [-0.5, 0.5],
      usual: [-0.03, 0.03],
      note: 'Relative error of the gauge’s gain; the torque is wrong by the same share.',
    }),
    offset: quantity({
      label: 'Offset',
      symbol: 'T_0',
      unit: 'N·m',
      default: 0,
      range: [-1000, 1000],
      usual: [-0.1, 0.1],
      note: 'Reading without load; the torque is wrong by as much.',
    }),
    drift: quantity({
      label: 'Offset drift',
      symbol: 'Ṫ_0',
      unit: 'N·m/s',
      default: 0,
      range: [-100, 100],
      usual: [-0.01, 0.01],
      note: 'Change of the offset with time, as a gauge warms up; the torque follows it unseen.',
    }),
    noise: quantity({
      label: 'Noise, rms',
      symbol: 'σ_T',
      unit: 'N·m',
      default: 0.002,
      range: [0, 100],
      usual: [0, 0.05],
      note: 'Noise of the reading; the torque loop turns it into motion of the spindle.',
    }),
    resolution: quantity({
      label: 'Resolution',
      symbol: 'ΔT',
      unit: 'N·m',
      default: 0.001,
      range: [0, 100],
      usual: [0, 0.02],
      note: 'Step of the reading, 0 for none; the torque does not settle finer.',
    }),
    fingerMass: quantity({
      label: 'Inertia before the gauge',
      symbol: 'J_g',
      unit: 'kg·m²',
      shown: 'g·cm²',
      default: 1e-5,
      range: [0, 10],
      usual: [1e-7, 0.001],
      note: 'Inertia of what turns in front of the gauge; as it speeds up or slows down it reads as torque.',
    }),
  }),
})
