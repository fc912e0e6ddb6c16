/**
 * Axis: a cylindrical voice coil of 40 mm diameter with 15 mm stroke, constants in the usual range of that size (K_f 11 N/A,
 * R 3.4 Ω, coil 85 g), on a ball guide with 0.5 N of friction. Position gains for about 60 Hz on the moving 0.22 kg. Part:
 * invented; a blown-glass ball of 42 g with a wall under half a millimetre that breaks between flat pads at 16 N.
 */
export const bauble = {
  name: 'Glass bauble on a voice coil',
  notes:
    'The line packs blown-glass baubles. One jaw presses the bauble against a fixed silicone pad; glitter dust makes the glass slippery.',
  actuator: {
    kind: 'direct',
    family: 'voice-coil',
    motor: {
      resistance: 3.4,
      inductance: 0.0011,
      forceConstant: 11,
      movingMass: 0.085,
      continuousCurrent: 1.5,
      peakCurrent: 5,
      thermal: { windingResistance: 2.6, windingTime: 9, housingResistance: 5, housingTime: 400 },
    },
    transmission: {
      carriageMass: 0.09,
      coulomb: 0.35,
      breakaway: 0.5,
      stribeckSpeed: 0.004,
      viscous: 1.5,
      bristleStiffness: 60000,
      stiffness: 3e6,
      damping: 60,
    },
  },
  jaws: {
    layout: 'anvil',
    mass: 0.045,
    opening: 0.09,
    stroke: 0.015,
    padStiffness: 25000,
    padLength: 0.02,
    friction: { static: 0.3, sliding: 0.24 },
  },
  part: { width: 0.08, mass: 0.042, stiffness: 90000, damping: 0.4, crackForce: 16 },
  drive: { busVoltage: 24, currentBandwidth: 6000 },
  servo: { kp: 2800, ki: 60000, kd: 11, currentLimit: 3 },
  sensors: { encoder: { resolution: 5e-7 }, gauge: { noise: 0.01, resolution: 0.005, fingerMass: 0.01 } },
  approach: { speed: 0.12, acceleration: 6, jerk: 600, creepSpeed: 0.02, overtravel: 0.003 },
  strategies: {
    thresholdStop: { threshold: 0.39 },
    currentClamp: { limit: 0.39 },
    sensedForce: {
      target: 4,
      contactForce: 0.4,
      kp: 0.0015,
      velocity: { kp: 15, ki: 1400 },
    },
  },
  arm: {
    moves: [
      { start: 0.7, axis: 'up', acceleration: 15, duration: 0.3, jerk: 800 },
      { start: 1.05, axis: 'across', acceleration: 20, duration: 0.3, jerk: 600 },
    ],
  },
}
