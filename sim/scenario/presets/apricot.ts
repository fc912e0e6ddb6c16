/**
 * Axis: a tubular brushless motor with moving coils, constants in the usual range of a 25 mm forcer (K_f 17 N/A, R 8 Ω, forcer
 * and carriage 0.5 kg), both jaws coupled by a belt. Position gains for about 40 Hz on the moving mass. Part: invented numbers
 * in the manner of soft fruit: rounded, half of the force fades within seconds (apples: Gorji Chakespari et al., Adv. J. Food
 * Sci. Technol. 2, 2010, a spring and one Maxwell element), a bruise shows above 12 N.
 */
export const apricot = {
  name: 'Apricot on a tubular motor',
  notes:
    'The line packs ripe apricots one by one. A bruise shows a day later; the fruit relaxes while it is held, and its skin is moist.',
  actuator: {
    kind: 'direct',
    family: 'tubular-coils-moving',
    motor: {
      resistance: 8,
      inductance: 0.0035,
      forceConstant: 17,
      movingMass: 0.32,
      continuousCurrent: 1.1,
      peakCurrent: 3.5,
      thermal: { windingResistance: 1.9, windingTime: 25, housingResistance: 2.8, housingTime: 900 },
    },
    transmission: {
      carriageMass: 0.18,
      coulomb: 1.2,
      breakaway: 1.6,
      stribeckSpeed: 0.004,
      viscous: 4,
      bristleStiffness: 150000,
      stiffness: 1.5e6,
      damping: 80,
    },
  },
  jaws: {
    layout: 'mirrored',
    mass: 0.06,
    opening: 0.07,
    stroke: 0.025,
    padStiffness: 20000,
    padLength: 0.025,
    friction: { static: 0.3, sliding: 0.25 },
  },
  part: {
    width: 0.046,
    mass: 0.055,
    stiffness: 120000,
    exponent: 1.5,
    damping: 1.2,
    relaxation: { fraction: 0.45, time: 0.9 },
    markForce: 12,
  },
  servo: { kp: 2400, ki: 30000, kd: 13, currentLimit: 2.5 },
  sensors: { gauge: { noise: 0.01, resolution: 0.005, fingerMass: 0.01 } },
  approach: { speed: 0.08, acceleration: 4, jerk: 400, creepSpeed: 0.01, creepFrom: 0.05, overtravel: 0.006 },
  strategies: {
    thresholdStop: { threshold: 0.54 },
    currentClamp: { limit: 0.54 },
    sensedForce: {
      target: 4,
      contactForce: 0.4,
      kp: 0.002,
      velocity: { kp: 18, ki: 1100 },
    },
  },
  arm: {
    moves: [
      { start: 0.9, axis: 'up', acceleration: 12, duration: 0.3, jerk: 500 },
      { start: 1.25, axis: 'across', acceleration: 15, duration: 0.3, jerk: 600 },
    ],
  },
  run: { duration: 1.8 },
}
