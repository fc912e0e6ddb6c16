/** Presses of the tests: an ideal axis that is strong enough for the examples of handbooks. */
import { checkScenario, faultLine, type Scenario } from '../../../sim/index.ts'
import type { Fit } from '../../../sim/job/press/lame.ts'
import { merge, type Tree } from '../../checks/support.ts'

/** [Pa], from the pound-force and the inch. */
export const PSI = 6894.757293168361

interface Rings {
  inside: number
  joint: number
  outside: number
  /** Of the bushing and of the hub. */
  moduli: [number, number]
  poisson?: [number, number]
}

export const ringsOf = ({ inside, joint, outside, moduli, poisson = [0.3, 0.3] }: Rings): Fit => ({
  inside,
  joint,
  outside,
  inner: { modulus: moduli[0], poisson: poisson[0] },
  outer: { modulus: moduli[1], poisson: poisson[1] },
})

export function pressOf(...parts: Tree[]): Scenario {
  const checked = checkScenario(parts.map((part) => structuredClone(part)).reduce(merge, { job: 'press' }))
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

/** A direct drive without friction, noise and steps that carries `mass` [kg] and pushes up to 80 kN. */
const IDEAL_PRESS: Tree = {
  actuator: {
    kind: 'direct',
    motor: {
      movingMass: 5,
      forceConstant: 1000,
      inductance: 0.004,
      continuousCurrent: 80,
      peakCurrent: 80,
      cogging: { amplitude: 0 },
    },
    transmission: {
      carriageMass: 5,
      coulomb: 0,
      breakaway: 0,
      viscous: 0,
      bristleStiffness: 1000,
      stiffness: 2e9,
      damping: 50_000,
    },
  },
  drive: { busVoltage: 2000, currentResolution: 0, currentNoise: 0 },
  servo: { kp: 20_000, ki: 200_000, kd: 100, currentLimit: 80 },
  sensors: { encoder: { resolution: 0 } },
  arm: { gravity: 'none' },
}

/** Ø 50 in Ø 80, 40 µm, 200 GPa, 40 mm long, µ 0.15, pressed by depth, through a bore without shoulder. */
export const run50 = (...parts: Tree[]): Scenario =>
  pressOf(
    IDEAL_PRESS,
    {
      bushing: {
        diameter: 0.05,
        innerDiameter: 0,
        length: 0.04,
        interference: 40e-6,
        modulus: 2e11,
        poisson: 0.3,
        chamfer: { angle: 0.2, length: 0.003 },
        mass: 2,
      },
      bore: { outerDiameter: 0.08, modulus: 2e11, poisson: 0.3, shoulder: null },
      joint: { friction: { pressing: 0.15, static: 0.15 }, stiffness: 2e9 },
      ram: { mass: 5, gap: 0.005, stroke: 0.1, stiffness: 1e9, damping: 20_000 },
      window: { depth: { least: 0.035 } },
      approach: { speed: 0.05, acceleration: 2, jerk: 100, overtravel: 0.0395 },
      strategies: { thresholdStop: { threshold: 79 }, currentClamp: { limit: 80 } },
      run: { duration: 1.6 },
    },
    ...parts,
  )
