/** Generic gear-and-rack axes: small brushless motors on one or two spur stages (efficiency about 0.95 a stage); common practice, no maker's data. */
import type { AxisInput } from './axis.ts'

export const RACK_AXES: AxisInput[] = [
  {
    id: 'rack-4',
    title: 'Brushless 40 mm flat, gear 4 : 1 and rack',
    actuator: {
      kind: 'rack',
      family: 'geared-rack',
      motor: {
        resistance: 0.9,
        inductance: 0.0006,
        torqueConstant: 0.04,
        inertia: 1.2e-5,
        continuousCurrent: 3,
        peakCurrent: 9,
        thermal: { windingResistance: 2.1, windingTime: 10, housingResistance: 4.2, housingTime: 500 },
        cogging: { amplitude: 0.006, period: 0.2617993877991494 },
      },
      transmission: {
        pinionRadius: 0.008,
        gearRatio: 4,
        efficiency: 0.94,
        carriageMass: 0.12,
        coulomb: 3,
        breakaway: 4,
        viscous: 8,
        bristleStiffness: 5e5,
        stiffness: 1.5e6,
        damping: 60,
        backlash: 4e-5,
      },
    },
  },
  {
    id: 'rack-16',
    title: 'Brushless 28 mm, two-stage gear 16 : 1 and rack',
    actuator: {
      kind: 'rack',
      family: 'geared-rack',
      motor: {
        resistance: 2.2,
        inductance: 0.0008,
        torqueConstant: 0.021,
        inertia: 1e-6,
        continuousCurrent: 1.5,
        peakCurrent: 5,
        thermal: { windingResistance: 3.5, windingTime: 9, housingResistance: 7, housingTime: 400 },
        cogging: { amplitude: 0.001, period: 0.5235987755982988 },
      },
      transmission: {
        pinionRadius: 0.007,
        gearRatio: 16,
        efficiency: 0.88,
        carriageMass: 0.12,
        coulomb: 7,
        breakaway: 9,
        viscous: 20,
        bristleStiffness: 1e6,
        stiffness: 1.5e6,
        damping: 120,
        backlash: 8e-5,
      },
    },
  },
]
