/**
 * Axis: a brushless motor of 60 mm frame with a two-stage gear 5 : 1, constants in the usual range of that size (K_t 0.12 N·m/A, J 300 g·cm²);
 * common practice, no maker's data. Closure: a lined plastic lid of 63 mm on a glass neck, mean thread diameter 60 mm, six turns an inch,
 * flank 10° (geometry typical of continuous-thread finishes; common practice, no source). Torque: trade guides give 25 to 43 lbf·in for
 * 63 mm, and half the diameter in millimetres as a rule in lbf·in. Friction 0.2 of plastic on glass and the liner's stiffness: common
 * practice, no source; measure them. Relaxing share: what takes the removal torque to the 40 to 60 % of the application torque that a trade
 * guide finds after a day.
 */
export const jarLid = {
  job: 'cap',
  name: 'Lid of 63 mm on a jar of apricots',
  notes:
    'The big jar of the line: a lined lid, turned on through a gear. Torque 25 to 43 lbf·in: trade guides for 63 mm. Thread, friction and liner: usual for the size, no source, so measure them. Motor and gear: usual for their size.',
  actuator: {
    kind: 'spindle',
    family: 'brushless-spindle',
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
      gearRatio: 5,
      efficiency: 0.92,
      inertia: 4e-5,
      coulomb: 0.12,
      breakaway: 0.15,
      stribeckSpeed: 0.2,
      viscous: 0.002,
      bristleStiffness: 100,
      stiffness: 1500,
      damping: 0.15,
      backlash: 0.003,
    },
  },
  closure: {
    inertia: 8e-6,
    lead: 0.004233333333333333,
    meanDiameter: 0.06,
    flankAngle: Math.PI / 18,
    threadFriction: 0.2,
    faceRadius: 0.028,
    faceFriction: 0.2,
    runDown: 0.12,
    engagement: 2 * Math.PI,
    stiffness: 400,
    stripTorque: 6.5,
  },
  liner: { stiffness: 4e5, relaxing: 0.35, relaxationTime: 7200 },
  chuck: { inertia: 1.5e-4, stiffness: 120, damping: 0.03, startAngle: Math.PI, topLoad: 40, topRate: 2000 },
  window: { torque: { least: 2.82, most: 4.86 }, leastTurns: 1.84 * Math.PI },
  drive: { busVoltage: 48, currentBandwidth: 5000 },
  servo: { kp: 36, ki: 900, kd: 0.45, accelerationFeedforward: 0.0016, currentLimit: 12 },
  sensors: { encoder: { resolution: 0.00002 }, gauge: { noise: 0.004, resolution: 0.002, fingerMass: 1e-4 } },
  approach: {
    speed: 8 * Math.PI,
    acceleration: 400,
    jerk: 40000,
    creepSpeed: 2 * Math.PI,
    creepFrom: Math.PI / 4,
    overtravel: 0.8 * Math.PI,
  },
  strategies: {
    thresholdStop: { threshold: 6.2, confirmTime: 0.001, filter: 0.0005 },
    currentClamp: { limit: 6.8 },
    sensedForce: {
      target: 3.6,
      contactForce: 0.6,
      kp: 4.5,
      speedLimit: 6,
      deadband: 0.1,
      velocity: { kp: 0.4, ki: 24 },
    },
  },
  run: { duration: 1.5, cycle: 3 },
  spread: {
    varies: [
      { path: 'closure.threadFriction', law: 'lognormal', factor: 1.12 },
      { path: 'closure.faceFriction', law: 'lognormal', factor: 1.15 },
      { path: 'liner.stiffness', law: 'lognormal', factor: 1.15 },
      { path: 'chuck.startAngle', law: 'uniform', half: Math.PI / 2 },
    ],
  },
}
