/**
 * Opening preset. Axis: a frameless servo of NEMA 17 size on a 10 × 5 mm ball screw with right- and left-hand nuts; constants
 * in the usual range of that size (K_t 45 mN·m/A, J 30 g·cm² with screw), ball friction 0.004, preload friction 6 N. Position
 * gains for about 45 Hz on the reflected 4.9 kg. Part: invented; a thin-walled pot of 0.9 kg whose rim breaks at 65 N.
 */
export const teapot = {
  name: 'Teapot on a ball screw',
  notes: 'The line packs hand-thrown teapots upright. The pads are polyurethane of 60 Shore A, 10 mm thick.',
  actuator: {
    kind: 'screw',
    family: 'brushless-screw',
    motor: {
      resistance: 1.1,
      inductance: 0.0012,
      torqueConstant: 0.045,
      inertia: 3e-6,
      continuousCurrent: 3,
      peakCurrent: 9,
      thermal: { windingResistance: 1.4, windingTime: 14, housingResistance: 3.2, housingTime: 700 },
    },
    transmission: {
      lead: 0.005,
      pitchDiameter: 0.0105,
      threadFriction: 0.004,
      coulomb: 6,
      breakaway: 7.5,
      viscous: 25,
    },
  },
  jaws: {
    layout: 'mirrored',
    mass: 0.18,
    opening: 0.14,
    stroke: 0.03,
    padStiffness: 350000,
    padLength: 0.03,
    friction: { static: 0.45, sliding: 0.36 },
  },
  part: { width: 0.118, mass: 0.9, stiffness: 180000, damping: 0.2, crackForce: 65 },
  servo: { kp: 7500, ki: 90000, kd: 45, currentLimit: 6 },
  approach: { speed: 0.05, acceleration: 3, jerk: 300, creepSpeed: 0.01, overtravel: 0.003 },
  strategies: { thresholdStop: { threshold: 1.53 }, currentClamp: { limit: 1.53 }, sensedForce: { target: 40 } },
  arm: {
    moves: [
      { start: 0.7, axis: 'up', acceleration: 6, duration: 0.36, jerk: 300 },
      { start: 1.1, axis: 'across', acceleration: 9, duration: 0.3, jerk: 400 },
    ],
  },
}
