/**
 * Axis: a brushless torque motor without a gear, constants in the usual range of that size (K_t 0.45 N·m/A, J 900 g·cm²); common practice,
 * no maker's data. Closure: a lined plastic lid of 38 mm on a glass neck, mean thread diameter 35.5 mm, six turns an inch, flank 10°
 * (geometry typical of continuous-thread finishes; common practice, no source). Torque: trade guides give 17 to 26 lbf·in for 38 mm, and the
 * rule of half the diameter 19 lbf·in. Friction and liner as of the big lid: common practice, no source; measure them.
 */
export const smallLid = {
  job: 'cap',
  name: 'Lid of 38 mm on a jar of apricot jam',
  notes:
    'The small jar of the line: a motor without a gear turns the lid on, so its current tells the torque. Torque 17 to 26 lbf·in: trade guides for 38 mm. Thread, friction and liner: usual for the size, no source, so measure them. Motor: usual for its size.',
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
      thermal: { windingResistance: 0.8, windingTime: 40, housingResistance: 1.4, housingTime: 1500 },
      cogging: { amplitude: 0.012, period: 0.15 },
    },
    transmission: {
      gearRatio: 1,
      efficiency: 1,
      inertia: 2e-5,
      coulomb: 0.03,
      breakaway: 0.04,
      stribeckSpeed: 0.2,
      viscous: 0.0008,
      bristleStiffness: 60,
      stiffness: 3000,
      damping: 0.1,
    },
  },
  closure: {
    inertia: 1.2e-6,
    lead: 0.004233333333333333,
    meanDiameter: 0.0355,
    flankAngle: Math.PI / 18,
    threadFriction: 0.2,
    faceRadius: 0.016,
    faceFriction: 0.2,
    runDown: 0.06,
    engagement: 2.5 * Math.PI,
    stiffness: 150,
    stripTorque: 4,
  },
  liner: { stiffness: 4e5, relaxing: 0.35, relaxationTime: 7200 },
  chuck: { inertia: 6e-5, stiffness: 80, damping: 0.01, startAngle: Math.PI, topLoad: 25, topRate: 1500 },
  window: { torque: { least: 1.93, most: 2.93 }, leastTurns: 2.3 * Math.PI },
  drive: { busVoltage: 48, currentBandwidth: 5000 },
  servo: { kp: 9, ki: 220, kd: 0.11, accelerationFeedforward: 0.00038, currentLimit: 9 },
  sensors: { encoder: { resolution: 0.00002 }, gauge: { noise: 0.003, resolution: 0.001, fingerMass: 4e-5 } },
  approach: {
    speed: 10 * Math.PI,
    acceleration: 800,
    jerk: 80000,
    creepSpeed: 2 * Math.PI,
    creepFrom: Math.PI / 4,
    overtravel: 0.8 * Math.PI,
  },
  strategies: {
    thresholdStop: { threshold: 4.3, confirmTime: 0.001, filter: 0.0005 },
    currentClamp: { limit: 5 },
    sensedForce: {
      target: 2.3,
      contactForce: 0.35,
      kp: 12,
      speedLimit: 6,
      deadband: 0.1,
      velocity: { kp: 0.11, ki: 8 },
    },
  },
  run: { duration: 1.2, cycle: 3 },
}
