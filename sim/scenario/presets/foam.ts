/**
 * Axis: the generic U-channel motor with ironless coils, both jaws coupled. Part: a moulded foam cradle of 35 g for two baubles;
 * flexible polyurethane foam, whose equilibrium share of stiffness is 0.3 to 0.7 of the instant one (from memory), here 0.6 with
 * 0.5 s; pressed above 9 N it keeps a dent (invented limit).
 */
export const foam = {
  name: 'Foam cradle on an ironless motor',
  notes: 'The line lays foam cradles into the boxes before the baubles. Soft, light, and every dent shows.',
  actuator: {
    kind: 'direct',
    family: 'linear-coils-moving',
    motor: {
      resistance: 3.2,
      inductance: 0.0011,
      forceConstant: 19,
      movingMass: 0.22,
      continuousCurrent: 2,
      peakCurrent: 8,
      ripple: { share: 0.01, period: 0.005 },
      thermal: { windingResistance: 1.7, windingTime: 25, housingResistance: 2.6, housingTime: 600 },
    },
    transmission: {
      carriageMass: 0.16,
      coulomb: 2,
      breakaway: 2.8,
      stribeckSpeed: 0.003,
      viscous: 6,
      bristleStiffness: 300000,
      stiffness: 4e6,
      damping: 150,
    },
  },
  jaws: {
    layout: 'mirrored',
    mass: 0.08,
    opening: 0.12,
    stroke: 0.04,
    padStiffness: 100000,
    padLength: 0.03,
    friction: { static: 0.6, sliding: 0.5, loadExponent: 0.85, referenceForce: 5 },
  },
  part: {
    width: 0.095,
    mass: 0.035,
    stiffness: 2500,
    damping: 2,
    relaxation: { fraction: 0.4, time: 0.5 },
    yieldForce: 9,
  },
  servo: { kp: 2500, ki: 30000, kd: 16, currentLimit: 4 },
  sensors: { gauge: { noise: 0.01, resolution: 0.005, fingerMass: 0.01 } },
  approach: { speed: 0.15, acceleration: 6, jerk: 600, creepSpeed: 0.03, overtravel: 0.012 },
  strategies: {
    thresholdStop: { threshold: 0.65 },
    currentClamp: { limit: 0.65 },
    sensedForce: {
      target: 5,
      contactForce: 0.5,
      kp: 0.004,
      deadband: 0.0004,
      speedLimit: 0.05,
      velocity: { kp: 16, ki: 1100 },
    },
  },
  arm: {
    moves: [
      { start: 0.8, axis: 'up', acceleration: 10, duration: 0.3, jerk: 500 },
      { start: 1.15, axis: 'across', acceleration: 15, duration: 0.3, jerk: 600 },
    ],
  },
}
