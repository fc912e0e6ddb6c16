/**
 * Generic screw axes of the size of a small press. Motors in the usual ranges of their size, screws by ISO 3408 (ball) and ISO 2901/2904
 * (trapezoidal, bronze nut); heat data carry off a sixth more than the continuous current. Invented, in the range of common practice, no
 * source and no maker's data.
 */
import type { AxisInput } from './axis.ts'

export const PRESS_AXES: AxisInput[] = [
  {
    id: 'press-ball-16x5',
    title: 'Brushless 60 mm, ball screw 16 × 5',
    actuator: {
      kind: 'screw',
      family: 'brushless-screw',
      motor: {
        resistance: 0.35,
        inductance: 0.0007,
        torqueConstant: 0.12,
        inertia: 3e-5,
        continuousCurrent: 6,
        peakCurrent: 18,
        thermal: { windingResistance: 1.3, windingTime: 30, housingResistance: 2.6, housingTime: 1200 },
        cogging: { amplitude: 0.008, period: 0.5235987755982988 },
      },
      transmission: {
        lead: 0.005,
        pitchDiameter: 0.0165,
        threadFriction: 0.005,
        carriageMass: 1.2,
        coulomb: 25,
        breakaway: 32,
        viscous: 250,
        bristleStiffness: 1e7,
        stiffness: 6e7,
        damping: 4000,
      },
    },
  },
  {
    id: 'press-ball-20x5',
    title: 'Brushless 80 mm, ball screw 20 × 5',
    actuator: {
      kind: 'screw',
      family: 'brushless-screw',
      motor: {
        resistance: 0.4,
        inductance: 0.0018,
        torqueConstant: 0.28,
        inertia: 1.2e-4,
        continuousCurrent: 8,
        peakCurrent: 24,
        thermal: { windingResistance: 0.65, windingTime: 45, housingResistance: 1.25, housingTime: 1800 },
        cogging: { amplitude: 0.03, period: 0.5235987755982988 },
      },
      transmission: {
        lead: 0.005,
        pitchDiameter: 0.0207,
        threadFriction: 0.005,
        carriageMass: 2,
        coulomb: 45,
        breakaway: 58,
        viscous: 400,
        bristleStiffness: 2e7,
        stiffness: 1e8,
        damping: 8000,
      },
    },
  },
  {
    id: 'press-trapezoidal-16x4',
    title: 'Brush motor 60 mm, trapezoidal screw 16 × 4',
    actuator: {
      kind: 'screw',
      family: 'brush-screw',
      motor: {
        resistance: 0.55,
        inductance: 0.0008,
        torqueConstant: 0.1,
        inertia: 4e-5,
        continuousCurrent: 5,
        peakCurrent: 16,
        thermal: { windingResistance: 1.2, windingTime: 25, housingResistance: 2.4, housingTime: 1000 },
        cogging: { amplitude: 0.006, period: 0.5711986642890533 },
      },
      transmission: {
        lead: 0.004,
        pitchDiameter: 0.014,
        threadFriction: 0.15,
        flankAngle: 0.2617993877991494, // 15°
        carriageMass: 1.2,
        coulomb: 40,
        breakaway: 55,
        stribeckSpeed: 0.001,
        viscous: 800,
        bristleStiffness: 1e7,
        stiffness: 4e7,
        damping: 4000,
      },
    },
  },
]
