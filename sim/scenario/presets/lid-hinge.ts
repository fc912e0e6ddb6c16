/**
 * Axis: a brush motor of 35 mm on a trapezoidal screw Tr 10 × 2 with a bronze nut, which locks itself, as for the bushings of the line
 * (ISO 2901/2904: d2 9 mm, flank half-angle 15°, friction 0.15). Bushing: bronze, Ø 6/4 × 6 mm, E 105 GPa, ν 0.34, in an aluminium ear
 * Ø 12, E 70 GPa, ν 0.33 (handbook values). Friction dry 0.06 sliding, 0.07 breaking loose: bronze taken as steel on aluminium or brass
 * pressed axially (DIN 7190-1); another source has 0.05 to 0.10 for yellow metal. The bore goes through, so nothing but the drive ends the
 * way.
 */
export const lidHinge = {
  job: 'press',
  name: 'Bronze bushing into a lid hinge, by depth',
  notes:
    'The hinge of a teapot’s lid: a through bore without shoulder, so the depth has to come from the drive. Friction 0.06 and 0.07: DIN 7190-1 for steel on aluminium or brass, pressed dry; other sources differ by two to three times. Moduli 105 and 70 GPa: handbooks. Motor and screw: usual for their size.',
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
    },
  },
  bushing: {
    diameter: 0.006,
    innerDiameter: 0.004,
    length: 0.006,
    interference: 6e-6,
    modulus: 1.05e11,
    poisson: 0.34,
    chamfer: { angle: 0.17453292519943295, length: 0.001 },
    mass: 0.1,
  },
  bore: { outerDiameter: 0.012, modulus: 7e10, poisson: 0.33, shoulder: null },
  joint: { friction: { pressing: 0.06, static: 0.07 }, slideSpeed: 0.001, stiffness: 1e8 },
  ram: { mass: 0.5, stroke: 0.04, gap: 0.008, stiffness: 8e6, damping: 200 },
  window: {
    mostForce: 260,
    depth: { least: 0.0059, most: 0.0062 },
    band: [
      { depth: 0.001, least: 5, most: 60 },
      { depth: 0.0058, least: 70, most: 220 },
    ],
  },
  drive: { busVoltage: 24, currentBandwidth: 4000 },
  servo: { rate: 2000, kp: 9000, ki: 135000, kd: 96, speedFilter: 0.0006, currentLimit: 6 },
  sensors: { encoder: { resolution: 5e-7 }, gauge: { noise: 0.2, resolution: 0.1 } },
  approach: { speed: 0.012, acceleration: 0.6, jerk: 40, creepSpeed: 0.003, overtravel: 0.00602 },
  strategies: {
    thresholdStop: { threshold: 5.5, confirmTime: 0.003 },
    currentClamp: { limit: 5.8 },
    sensedForce: { target: 190, contactForce: 5, kp: 0.00004, speedLimit: 0.01, velocity: { kp: 120, ki: 10000 } },
  },
  arm: { gravity: 'none' },
  run: { duration: 2, cycle: 6 },
}
