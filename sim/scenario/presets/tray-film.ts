/**
 * Web: polyester film that lids the trays of apricots, 12 µm × 0.3 m, E 4.4 GPa (published list of moduli of webs; textbooks 2 to 5).
 * Tension by the trade's rule 0.75 lbf/in per mil, which is a stress of 5.17 MPa: 18.6 N. The film yields near 100 MPa and breaks near
 * 200 MPa (common practice, no source), far above what a lid takes: the window is that of the print mark, ± 35 %. The line indexes tray by tray,
 * so that it ramps, runs and stands. Axis: a brushless motor that turns a drawing roll without a gear; common practice, no maker's data.
 */
export const trayFilm = {
  job: 'web',
  name: 'Lidding film over trays, by index',
  notes:
    'Film drawn over trays of apricots, a tray at a time. Modulus 4.4 GPa: published list for polyester. Tension 18.6 N: the trade’s rule of 0.75 lbf/in per mil. Window, drag, motor and roll: usual for their size, no source.',
  actuator: {
    kind: 'spindle',
    family: 'brushless-spindle',
    motor: {
      resistance: 1.8,
      inductance: 0.0035,
      torqueConstant: 0.3,
      inertia: 8e-5,
      continuousCurrent: 3,
      peakCurrent: 9,
      cogging: { amplitude: 0.004 },
      thermal: { windingResistance: 1.4, windingTime: 30, housingResistance: 2.2, housingTime: 1200 },
    },
    transmission: {
      gearRatio: 1,
      efficiency: 1,
      inertia: 2e-5,
      coulomb: 0.015,
      breakaway: 0.02,
      stribeckSpeed: 0.2,
      viscous: 0.0005,
      bristleStiffness: 40,
      stiffness: 800,
      damping: 0.05,
      backlash: 0,
    },
  },
  web: { width: 0.3, thickness: 1.2e-5, modulus: 4.4e9, density: 1390, damping: 0.002, slack: 0.01, breakTension: 700 },
  span: { length: 1, entryTension: 4 },
  idlers: { mass: 0.15, coulomb: 0.3, breakaway: 0.4, viscous: 0.05 },
  line: {
    radius: 0.04,
    runout: 0.00001,
    ramps: [
      { start: 1.5, speed: 0.6, acceleration: 2, jerk: 20 },
      { start: 2.6, speed: 0, acceleration: 2, jerk: 20 },
      { start: 3.6, speed: 0.6, acceleration: 2, jerk: 20 },
      { start: 4.7, speed: 0, acceleration: 2, jerk: 20 },
    ],
  },
  roll: { kind: 'draws', radius: 0.03, inertia: 0.0009, runout: 0.00002 },
  follow: { radius: 'start', inertia: 1, losses: 1 },
  window: { least: 12, most: 25, from: 1.2 },
  drive: { busVoltage: 48, currentBandwidth: 4000 },
  servo: { kp: 15, ki: 40, kd: 0.4, speedFilter: 0.001, currentLimit: 8 },
  sensors: { encoder: { resolution: 0.00005 }, gauge: { bandwidth: 600, noise: 0.03, resolution: 0.01 } },
  approach: { speed: 1, acceleration: 6, jerk: 200, creepSpeed: 0.2, creepFrom: 0.06, overtravel: 0.5 },
  strategies: {
    currentClamp: { limit: 1.9 },
    sensedForce: {
      target: 18.6,
      contactForce: 2,
      kp: 0.05,
      ki: 0.3,
      deadband: 0.002,
      speedLimit: 2,
      velocity: { kp: 0.5, ki: 15 },
    },
  },
  run: { duration: 6 },
}
