/**
 * Axis: a brush motor of 35 mm diameter on a trapezoidal screw Tr 10 × 2 (ISO 2901/2904: d2 9 mm, flank half-angle 15°) with a
 * bronze nut, friction 0.15, which locks itself. Constants in the usual range of that size (K_t 32 mN·m/A, J 40 g·cm² with
 * screw). Part: a turned steel bushing of 0.65 kg in bare hardened jaws (friction 0.15, the low end of handbook values for oiled
 * steel), which shows marks above 420 N.
 */
export const bushing = {
  name: 'Steel bushing on a trapezoidal screw',
  notes:
    'The line packs turned bushings, slightly oiled. The thread locks itself: what the current says after the stop is not the force.',
  actuator: {
    kind: 'screw',
    family: 'brush-screw',
    motor: {
      resistance: 1.6,
      inductance: 0.0009,
      torqueConstant: 0.032,
      inertia: 4e-6,
      continuousCurrent: 2.4,
      peakCurrent: 8,
      thermal: { windingResistance: 3.5, windingTime: 18, housingResistance: 6.5, housingTime: 800 },
    },
    transmission: {
      lead: 0.002,
      pitchDiameter: 0.009,
      threadFriction: 0.15,
      flankAngle: 0.2617993877991494,
      carriageMass: 0.2,
      coulomb: 10,
      breakaway: 14,
      stribeckSpeed: 0.001,
      viscous: 300,
      bristleStiffness: 5e6,
      stiffness: 1.2e7,
      damping: 900,
      backlash: 2e-5,
    },
  },
  jaws: {
    layout: 'mirrored',
    mass: 0.25,
    opening: 0.056,
    stroke: 0.012,
    padStiffness: 8e6,
    padLength: 0.02,
    friction: { static: 0.15, sliding: 0.12 },
  },
  part: { width: 0.05, mass: 0.65, stiffness: 6e6, damping: 0.05, markForce: 420 },
  drive: { busVoltage: 24, currentBandwidth: 4000 },
  servo: { rate: 2000, kp: 9000, ki: 135000, kd: 96, speedFilter: 0.0006, currentLimit: 6 },
  sensors: { encoder: { resolution: 5e-7 }, gauge: { noise: 0.2, resolution: 0.1 } },
  approach: { speed: 0.012, acceleration: 0.6, jerk: 40, creepSpeed: 0.003, overtravel: 0.0012 },
  strategies: {
    thresholdStop: { threshold: 2.3, confirmTime: 0.003 },
    currentClamp: { limit: 2.3 },
    sensedForce: {
      target: 90,
      contactForce: 5,
      kp: 0.00008,
      deadband: 0.00005,
      velocity: { kp: 120, ki: 10000 },
    },
  },
  arm: {
    moves: [
      { start: 0.8, axis: 'up', acceleration: 5, duration: 0.36, jerk: 200 },
      { start: 1.2, axis: 'across', acceleration: 6, duration: 0.3, jerk: 200 },
    ],
  },
}
