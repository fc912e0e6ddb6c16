/** An axis under known values, integrated anew, and the file before its fit. */
import { checkScenario } from '../../sim/index.ts'
import { logged, moved, type Way } from '../independent/log.ts'
import { normals } from './normals.ts'

export const TRUTH = {
  mass: 1,
  constant: 20,
  resistance: 2,
  inductance: 0.001,
  coulomb: 5,
  viscous: 12,
  offset: 0.03,
  late: 0.0007,
}

/** The file before the fit: everything that is free is wrong. */
const checked = checkScenario({
  format: 'jawbench-scenario',
  version: 2,
  actuator: {
    kind: 'direct',
    motor: {
      forceConstant: TRUTH.constant,
      movingMass: 0.5,
      resistance: TRUTH.resistance,
      inductance: TRUTH.inductance,
      continuousCurrent: 5,
      peakCurrent: 20,
      thermal: { magnetCoefficient: 0 },
    },
    transmission: {
      carriageMass: 0.25,
      coulomb: 8,
      breakaway: 8,
      viscous: 5,
      bristleStiffness: 1e6,
      stiffness: 2e6,
      damping: 300,
    },
  },
  jaws: { layout: 'anvil', mass: 0.1, opening: 0.2, stroke: 0.1 },
  part: { width: 0.01 },
  drive: { busVoltage: 60, currentRate: 10000, currentBandwidth: 3000 },
  servo: {
    rate: 2000,
    kp: 3000,
    ki: 20000,
    kd: 50,
    speedFilter: 0.0005,
    currentLimit: 20,
    setpointWeights: { derivative: 0.5 },
  },
  strategies: { sensedForce: { rate: 500 } },
  arm: { gravity: 'none' },
  run: { step: 2e-5 },
})
if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
export const { scenario } = checked

const T = 'actuator.transmission.'
export const FREE: Record<string, number> = {
  [`${T}carriageMass`]: TRUTH.mass - 0.5 - 0.1,
  [`${T}coulomb`]: TRUTH.coulomb,
  [`${T}viscous`]: TRUTH.viscous,
  'drive.currentOffset': TRUTH.offset,
  'log.delay': TRUTH.late,
}

/** A move of least jerk (Flash and Hogan 1985), from 0 to 1 over its time. */
function leastJerk(time: number, start: number, duration: number) {
  const u = Math.min(1, Math.max(0, (time - start) / duration))
  return {
    travel: u ** 3 * (10 - 15 * u + 6 * u * u),
    speed: (30 * u * u * (1 - u) ** 2) / duration,
    acceleration: (60 * u * (1 - u) * (1 - 2 * u)) / duration ** 2,
  }
}

/** Out quickly, back slowly. */
const way: Way = (time) => {
  const [out, back] = [leastJerk(time, 0.01, 0.15), leastJerk(time, 0.17, 0.25)]
  return {
    travel: 0.05 * (out.travel - back.travel),
    speed: 0.05 * (out.speed - back.speed),
    acceleration: 0.05 * (out.acceleration - back.acceleration),
  }
}

/** The same in every log: only the recorder is subject to chance. */
const MOVE = moved(
  {
    mass: TRUTH.mass,
    constant: TRUTH.constant,
    resistance: TRUTH.resistance,
    inductance: TRUTH.inductance,
    friction: {
      coulomb: TRUTH.coulomb,
      coulombBack: TRUTH.coulomb,
      breakaway: TRUTH.coulomb,
      stribeckSpeed: 0.002,
      viscous: TRUTH.viscous,
      viscousBack: TRUTH.viscous,
      bristleStiffness: 1e6,
    },
    drive: { period: 1e-4, voltage: 60, bandwidth: 3000, resolution: 0, noise: 0, offset: TRUTH.offset, backEmf: 1 },
    servo: {
      every: 5,
      period: 5e-4,
      kp: 3000,
      ki: 20000,
      kd: 50,
      filter: 0.0005,
      velocityFeedforward: 0,
      accelerationFeedforward: 0,
      proportionalWeight: 1,
      derivativeWeight: 0.5,
      limit: 20,
      resolution: 0,
    },
  },
  way,
  0.45,
)

export const logOf = (seed: number) => {
  const { time, ...channels } = logged(MOVE, way, {
    rate: 1000,
    late: TRUTH.late,
    noise: 0.05,
    currentStep: 0.01,
    positionStep: 1e-6,
    normal: normals(seed),
  })
  return { time, channels }
}
