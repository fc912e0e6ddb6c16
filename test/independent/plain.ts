/** A complete scenario without friction, noise and steps, written out by hand: the laws need no check of the format. */
type Tree = { [key: string]: unknown }

const PLAIN: Tree = {
  actuator: {
    kind: 'direct',
    motor: {
      resistance: 1,
      inductance: 0.001,
      forceConstant: 10,
      movingMass: 0.3,
      cogging: { amplitude: 0, period: 0.01 },
      ripple: { share: 0, period: 0.01 },
      endLoss: 0,
      thermal: {
        windingResistance: 5,
        windingTime: 20,
        housingResistance: 10,
        housingTime: 600,
        ambient: 25,
        magnetCoefficient: 0,
      },
    },
    transmission: {
      carriageMass: 0.1,
      coulomb: 0,
      breakaway: 0,
      stribeckSpeed: 0.001,
      viscous: 0,
      bristleStiffness: 1e5,
      stiffness: 1e6,
      damping: 100,
      backlash: 0,
    },
  },
  jaws: {
    layout: 'mirrored',
    mass: 0.1,
    opening: 0.074,
    stroke: 0.03,
    padStiffness: 1e5,
    padLength: 0.02,
    padRadius: 0.01,
    friction: { static: 0.3, sliding: 0.3, loadExponent: 1, referenceForce: 20 },
  },
  part: {
    width: 0.07,
    mass: 0.5,
    centre: { up: 0, across: 0 },
    stiffness: 1e5,
    exponent: 1,
    damping: 0,
    relaxation: { fraction: 0, time: 1 },
  },
  drive: {
    busVoltage: 48,
    currentRate: 8000,
    currentBandwidth: 2000,
    currentResolution: 0,
    currentNoise: 0,
    currentOffset: 0,
    backEmfFeedforward: 1,
  },
  servo: {
    rate: 4000,
    kp: 3000,
    ki: 0,
    kd: 40,
    speedFilter: 0.0003,
    velocityFeedforward: 0,
    accelerationFeedforward: 0,
    currentLimit: 6,
  },
  sensors: {
    encoder: { resolution: 0 },
    gauge: { bandwidth: 3000, gainError: 0, offset: 0, drift: 0, noise: 0, resolution: 0, fingerMass: 0 },
  },
  approach: { speed: 0.02, acceleration: 3, jerk: 300, creepSpeed: 0.01, creepFrom: 0, overtravel: 0.01 },
  strategies: {
    thresholdStop: { threshold: 1, confirmTime: 0.002, filter: 0.001, afterwards: 'hold' },
    currentClamp: { limit: 2.5, from: 2 },
    sensedForce: {
      target: 10,
      contactForce: 1,
      rate: 1000,
      kp: 0.001,
      ki: 0,
      kd: 0,
      deadband: 0,
      speedLimit: 0.02,
      velocity: { kp: 80, ki: 4000 },
    },
  },
  arm: { gravity: 'none', lift: null, moves: [] },
  events: { powerLoss: null, release: null },
  run: { duration: 0.6, step: null, cycle: null, seed: 1 },
}

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && !Array.isArray(value)

function over(below: Tree, above: Tree): Tree {
  const merged: Tree = { ...below }
  for (const [key, value] of Object.entries(above)) {
    const under = below[key]
    merged[key] = isTree(value) && isTree(under) ? over(under, value) : value
  }
  return merged
}

/** The plain scenario with changes. */
export const plain = (...changes: Tree[]): object => changes.reduce(over, PLAIN)
