/**
 * Axis: a brushless motor of 60 mm frame on a ball screw 16 × 4 (ISO 3408: friction 0.005), constants in the usual range of that size
 * (K_t 0.12 N·m/A, J 300 g·cm² with screw); frame 30 N/µm, that of a small C frame; common practice, no maker's data. Bushing: steel,
 * Ø 12/8 × 12 mm, E 210 GPa, ν 0.3, in a lug of grey iron Ø 24, E 115 GPa, ν 0.26 (handbook values). Friction pressed in dry, steel on grey
 * iron: 0.11 sliding, 0.12 breaking loose (DIN 7190-1, table of coefficients). Chamfer 5° by 2.3 mm: DIN 7190-1 advises 5° at most and
 * ∛d mm. Interference 10 µm after roughness, in the middle of H7/p6 (ISO 286: 0 to 29 µm before it).
 */
export const castArm = {
  job: 'press',
  name: 'Steel bushing into a cast arm',
  notes:
    'The pivot of the packing line’s arm: a turned steel bushing against the shoulder of a grey-iron lug. Friction 0.11 and 0.12 pressed dry, chamfer 5°: DIN 7190-1. Moduli 210 and 115 GPa: handbooks. Interference: H7/p6 of ISO 286 less roughness. Motor, screw, frame: usual for their size.',
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
      thermal: { windingResistance: 1.1, windingTime: 30, housingResistance: 1.9, housingTime: 1200 },
    },
    transmission: {
      lead: 0.004,
      pitchDiameter: 0.0165,
      threadFriction: 0.005,
      carriageMass: 1.5,
      coulomb: 25,
      breakaway: 32,
      viscous: 300,
      bristleStiffness: 1e7,
      stiffness: 8e7,
      damping: 6000,
      backlash: 0,
    },
  },
  bushing: {
    diameter: 0.012,
    innerDiameter: 0.008,
    length: 0.012,
    interference: 1e-5,
    modulus: 2.1e11,
    poisson: 0.3,
    chamfer: { angle: 0.08726646259971647, length: 0.0023 },
    mass: 0.4,
    mostForce: 6000,
  },
  bore: {
    outerDiameter: 0.024,
    modulus: 1.15e11,
    poisson: 0.26,
    yieldStress: 2e8,
    shoulder: { depth: 0.0122, stiffness: 2e8 },
  },
  joint: { friction: { pressing: 0.11, static: 0.12 }, slideSpeed: 0.001, stiffness: 3e8 },
  ram: { mass: 2, stroke: 0.06, gap: 0.02, stiffness: 3e7, damping: 3000 },
  window: {
    mostForce: 3400,
    depth: { least: 0.01215 },
    seat: { least: 1900, most: 3200 },
    band: [
      { depth: 0.002, least: 100, most: 500 },
      { depth: 0.012, least: 900, most: 2000 },
    ],
  },
  drive: { busVoltage: 48, currentBandwidth: 5000 },
  servo: { kp: 18000, ki: 450000, kd: 270, currentLimit: 16 },
  sensors: { encoder: { resolution: 5e-7 }, gauge: { noise: 2, resolution: 1 } },
  approach: { speed: 0.03, acceleration: 0.6, jerk: 30, creepSpeed: 0.008, creepFrom: 0.0008, overtravel: 0.0135 },
  strategies: {
    thresholdStop: { threshold: 12.5, confirmTime: 0.001, afterwards: 'press' },
    currentClamp: { limit: 12.8 },
    sensedForce: {
      target: 2400,
      contactForce: 60,
      kp: 8e-6,
      speedLimit: 0.02,
      velocity: { kp: 360, ki: 18000 },
    },
  },
  arm: { gravity: 'along' },
  run: { duration: 2.4, cycle: 8 },
  spread: {
    varies: [
      { path: 'bushing.interference', law: 'normal', sd: 1.5e-6 },
      { path: 'joint.friction.pressing', law: 'lognormal', factor: 1.12 },
    ],
  },
}
