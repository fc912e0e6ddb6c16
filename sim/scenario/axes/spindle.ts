/**
 * Generic spindle axes: a motor alone, or with a gear (efficiency about 0.95 a stage), for whatever turns. Motors in the usual ranges of their
 * size (torque constant, resistance and inertia scale with the frame), friction and play usual for the size; heat data carry off a sixth
 * more than the continuous current. Invented, in the range of common practice, no source and no maker's data.
 */
import type { AxisInput } from './axis.ts'

/** Cogging periods: 24 and 12 a turn, 11 of a brush motor, that of a full step [rad]. */
const COGS_24 = 0.2617993877991494
const COGS_12 = 0.5235987755982988
const COGS_11 = 0.5711986642890533
const STEP = 0.031415926535897934

const frame42 = {
  resistance: 1.1,
  inductance: 0.0012,
  torqueConstant: 0.045,
  inertia: 3e-6,
  continuousCurrent: 3,
  peakCurrent: 9,
  thermal: { windingResistance: 1.7, windingTime: 15, housingResistance: 3.5, housingTime: 700 },
  cogging: { amplitude: 0.004, period: COGS_12 },
}
const frame60 = {
  resistance: 0.35,
  inductance: 0.0007,
  torqueConstant: 0.12,
  inertia: 3e-5,
  continuousCurrent: 6,
  peakCurrent: 18,
  thermal: { windingResistance: 1.3, windingTime: 30, housingResistance: 2.6, housingTime: 1200 },
  cogging: { amplitude: 0.008, period: COGS_12 },
}

export const SPINDLE_AXES: AxisInput[] = [
  {
    id: 'spindle-60',
    title: 'Brushless 60 mm, motor alone',
    actuator: {
      kind: 'spindle',
      family: 'brushless-spindle',
      motor: frame60,
      transmission: {
        coulomb: 0.015,
        breakaway: 0.02,
        viscous: 0.0003,
        bristleStiffness: 40,
        stiffness: 1500,
        damping: 0.05,
      },
    },
  },
  {
    id: 'spindle-torque-80',
    title: 'Torque motor 80 mm, motor alone',
    actuator: {
      kind: 'spindle',
      family: 'brushless-spindle',
      motor: {
        resistance: 0.9,
        inductance: 0.0025,
        torqueConstant: 0.45,
        inertia: 9e-5,
        continuousCurrent: 4.5,
        peakCurrent: 13,
        thermal: { windingResistance: 0.95, windingTime: 40, housingResistance: 1.85, housingTime: 1500 },
        cogging: { amplitude: 0.012, period: COGS_24 },
      },
      transmission: {
        coulomb: 0.03,
        breakaway: 0.04,
        viscous: 0.0008,
        bristleStiffness: 60,
        stiffness: 3000,
        damping: 0.1,
      },
    },
  },
  {
    id: 'spindle-torque-110',
    title: 'Torque motor 110 mm, motor alone',
    actuator: {
      kind: 'spindle',
      family: 'brushless-spindle',
      motor: {
        resistance: 0.75,
        inductance: 0.004,
        torqueConstant: 0.8,
        inertia: 6e-4,
        continuousCurrent: 6,
        peakCurrent: 18,
        thermal: { windingResistance: 0.65, windingTime: 60, housingResistance: 1.25, housingTime: 2400 },
        cogging: { amplitude: 0.04, period: COGS_24 },
      },
      transmission: {
        inertia: 6e-5,
        coulomb: 0.08,
        breakaway: 0.1,
        viscous: 0.002,
        bristleStiffness: 150,
        stiffness: 8000,
        damping: 0.4,
      },
    },
  },
  {
    id: 'spindle-60-gear-5',
    title: 'Brushless 60 mm, gear 5 : 1',
    actuator: {
      kind: 'spindle',
      family: 'brushless-spindle',
      motor: frame60,
      transmission: {
        gearRatio: 5,
        efficiency: 0.92,
        inertia: 4e-5,
        coulomb: 0.12,
        breakaway: 0.15,
        viscous: 0.002,
        bristleStiffness: 100,
        stiffness: 1500,
        damping: 0.15,
        backlash: 0.002,
      },
    },
  },
  {
    id: 'spindle-42-gear-10',
    title: 'Brushless 42 mm, two-stage gear 10 : 1',
    actuator: {
      kind: 'spindle',
      family: 'brushless-spindle',
      motor: frame42,
      transmission: {
        gearRatio: 10,
        efficiency: 0.9,
        inertia: 1.5e-5,
        coulomb: 0.08,
        breakaway: 0.11,
        viscous: 0.0015,
        bristleStiffness: 80,
        stiffness: 900,
        damping: 0.1,
        backlash: 0.003,
      },
    },
  },
  {
    id: 'spindle-brush-50',
    title: 'Brush motor 50 mm, gear 4 : 1',
    actuator: {
      kind: 'spindle',
      family: 'brush-spindle',
      motor: {
        resistance: 0.8,
        inductance: 0.0009,
        torqueConstant: 0.07,
        inertia: 2.2e-5,
        continuousCurrent: 4,
        peakCurrent: 14,
        thermal: { windingResistance: 1.3, windingTime: 20, housingResistance: 2.6, housingTime: 800 },
        cogging: { amplitude: 0.004, period: COGS_11 },
      },
      transmission: {
        gearRatio: 4,
        efficiency: 0.94,
        inertia: 3e-5,
        coulomb: 0.07,
        breakaway: 0.1,
        viscous: 0.0012,
        bristleStiffness: 80,
        stiffness: 1200,
        damping: 0.1,
        backlash: 0.003,
      },
    },
  },
  {
    id: 'spindle-brush-35-gear-20',
    title: 'Brush motor 35 mm, two-stage gear 20 : 1',
    actuator: {
      kind: 'spindle',
      family: 'brush-spindle',
      motor: {
        resistance: 1.6,
        inductance: 0.0009,
        torqueConstant: 0.032,
        inertia: 4e-6,
        continuousCurrent: 2.4,
        peakCurrent: 8,
        thermal: { windingResistance: 1.9, windingTime: 12, housingResistance: 3.7, housingTime: 550 },
        cogging: { amplitude: 0.002, period: COGS_11 },
      },
      transmission: {
        gearRatio: 20,
        efficiency: 0.85,
        inertia: 2e-5,
        coulomb: 0.15,
        breakaway: 0.21,
        viscous: 0.004,
        bristleStiffness: 120,
        stiffness: 700,
        damping: 0.15,
        backlash: 0.006,
      },
    },
  },
  {
    id: 'spindle-step-57',
    title: 'Step motor 57 mm, motor alone, open loop',
    actuator: {
      kind: 'spindle',
      family: 'step-spindle',
      motor: {
        resistance: 0.7,
        inductance: 0.0022,
        torqueConstant: 0.36,
        inertia: 3e-5,
        continuousCurrent: 3,
        peakCurrent: 4.5,
        thermal: { windingResistance: 2.7, windingTime: 25, housingResistance: 5.5, housingTime: 1200 },
        openLoop: true,
        cogging: { amplitude: 0.03, period: STEP },
      },
      transmission: {
        coulomb: 0.03,
        breakaway: 0.04,
        viscous: 0.001,
        bristleStiffness: 60,
        stiffness: 1500,
        damping: 0.05,
      },
    },
  },
  {
    id: 'spindle-step-57-gear-5',
    title: 'Step motor 57 mm with encoder, gear 5 : 1',
    actuator: {
      kind: 'spindle',
      family: 'step-spindle',
      motor: {
        resistance: 0.7,
        inductance: 0.0022,
        torqueConstant: 0.36,
        inertia: 3e-5,
        continuousCurrent: 3,
        peakCurrent: 4.5,
        thermal: { windingResistance: 2.7, windingTime: 25, housingResistance: 5.5, housingTime: 1200 },
        cogging: { amplitude: 0.03, period: STEP },
      },
      transmission: {
        gearRatio: 5,
        efficiency: 0.92,
        inertia: 4e-5,
        coulomb: 0.18,
        breakaway: 0.24,
        viscous: 0.004,
        bristleStiffness: 120,
        stiffness: 1500,
        damping: 0.15,
        backlash: 0.003,
      },
    },
  },
]
