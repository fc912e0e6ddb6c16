/**
 * Web: unprinted newsprint that the line wraps teapots in, 70 µm × 0.4 m, E 4.0 GPa (published list of moduli of webs, ± 30 %), 48 g/m²
 * and so 690 kg/m³, breaking at 2.2 kN/m (common practice, no source). Tension 150 N/m of width (common practice, no source; a tenth of
 * what breaks it is a usual rule). It is wound from the parent roll to small rolls for the wrapping station, so radius and inertia grow.
 * Axis: a brushless motor of 60 mm frame with a planetary gear 5:1, constants in the usual range of that size; common practice, no maker's
 * data.
 */
export const paperRoll = {
  job: 'web',
  name: 'Packing paper, wound to small rolls',
  notes:
    'The paper in which the line wraps its teapots, wound from the parent roll to small ones for the wrapping station. Modulus 4.0 GPa: published list for newsprint. Strength, tension, drag, motor and gear: usual for their size, no source.',
  actuator: {
    kind: 'spindle',
    family: 'brushless-spindle',
    motor: {
      resistance: 0.35,
      inductance: 0.0007,
      torqueConstant: 0.12,
      inertia: 6e-5,
      continuousCurrent: 7,
      peakCurrent: 20,
      cogging: { amplitude: 0.004 },
      thermal: { windingResistance: 1.1, windingTime: 30, housingResistance: 1.9, housingTime: 1200 },
    },
    transmission: {
      gearRatio: 5,
      efficiency: 0.95,
      inertia: 0.0003,
      coulomb: 0.1,
      breakaway: 0.13,
      stribeckSpeed: 0.2,
      viscous: 0.004,
      bristleStiffness: 100,
      stiffness: 3000,
      damping: 1.2,
      backlash: 0,
    },
  },
  web: {
    width: 0.4,
    thickness: 7e-5,
    modulus: 4e9,
    density: 690,
    damping: 0.001,
    slack: 0.02,
    breakTension: 880,
  },
  span: { length: 1.5, entryTension: 20 },
  idlers: { mass: 0.5, coulomb: 0.8, breakaway: 1.1, viscous: 0.2 },
  line: {
    radius: 0.08,
    runout: 0.00001,
    ramps: [
      { start: 2.4, speed: 2, acceleration: 1, jerk: 5 },
      { start: 6.9, speed: 0, acceleration: 1, jerk: 5 },
    ],
  },
  roll: { kind: 'winds', radius: 0.05, coreRadius: 0.02, inertia: 0.001, runout: 0.00005 },
  follow: { radius: 'wound', inertia: 1, losses: 1 },
  window: { least: 40, most: 85, from: 2 },
  drive: { busVoltage: 60, currentBandwidth: 5000 },
  servo: { kp: 40, ki: 100, kd: 1.2, speedFilter: 0.001, currentLimit: 18 },
  sensors: { encoder: { resolution: 0.00001 }, gauge: { bandwidth: 600, noise: 0.1, resolution: 0.05 } },
  approach: { speed: 0.8, acceleration: 4, jerk: 100, creepSpeed: 0.2, creepFrom: 0.06, overtravel: 0.5 },
  strategies: {
    currentClamp: { limit: 5.6 },
    sensedForce: {
      target: 60,
      contactForce: 6,
      kp: 0.01,
      ki: 0.03,
      deadband: 0.0005,
      speedLimit: 1,
      velocity: { kp: 3, ki: 120 },
    },
  },
  run: { duration: 9.8 },
}
