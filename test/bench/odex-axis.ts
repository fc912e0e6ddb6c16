/**
 * The closed loop of the basic screw axis and a current clamp with the plant integrated by odex (extrapolation of the midpoint
 * rule with order and step control: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.9). The drive is that
 * of the real loop. Its voltage stands still between two samples, so odex is asked for one sample after the other.
 */
import { type Derivative, Outcome, Solver } from 'odex'
import { LOAD_DAMPING, LOAD_REACH } from '../../sim/axis/flanks.ts'
import { ELASTIC } from '../../sim/axis/friction.ts'
import { CurrentLoop } from '../../sim/control/current-loop.ts'
import { axisOf, type Scenario, strategyOf, travelToContact } from '../../sim/index.ts'
import { jawMassOf } from '../../sim/job/grip/geometry.ts'
import { machineFor } from '../strategy/drive.ts'

/** State: current, motor side, jaw, part and the two bristles. */
const SIZE = 9
/** What counts as one of each [A, m, m/s, m, m/s, m, m/s, m, m]: amounts that matter to the grip force. */
const SCALE = [1, 1e-4, 0.05, 1e-4, 0.05, 1e-4, 0.05, 1e-6, 1e-6]

export interface Sampled {
  /** Force at the near contact [N] and current [A] at the end of each sample of the current loop. */
  force: Float64Array
  current: Float64Array
  evaluations: number
}

/** Runs the scenario's duration; `tolerance` is relative, and absolute in units of SCALE. */
export function odexGrip(scenario: Scenario, tolerance: number): Sampled {
  const { actuator, drive, servo, run } = scenario
  const period = 1 / drive.currentRate
  const samples = Math.round(run.duration / period)
  const perServo = Math.round(drive.currentRate / servo.rate)
  const { resistance, inductance } = actuator.motor
  const axis = axisOf(actuator)
  const currentLoop = new CurrentLoop()
  currentLoop.set(resistance, inductance, drive.currentBandwidth, period)
  currentLoop.voltageLimit = drive.busVoltage
  currentLoop.backEmf = drive.backEmfFeedforward * axis.forcePerAmpere
  const strategy = machineFor(scenario, strategyOf('current-clamp'))
  const plant = plantOf(scenario)

  const solver = new Solver(SIZE)
  solver.relativeTolerance = SCALE.map(() => tolerance)
  solver.absoluteTolerance = SCALE.map((one) => tolerance * one)
  solver.initialStepSize = period
  const force = new Float64Array(samples)
  const current = new Float64Array(samples)
  let state = new Array<number>(SIZE).fill(0)
  let evaluations = 0
  let command = 0
  let nextVoltage = 0
  for (let k = 0; k < samples; k++) {
    const time = k * period
    if (k % perServo === 0) command = strategy.tick(time, state[1]!, 0)
    plant.voltage = nextVoltage
    nextVoltage = currentLoop.tick(command, state[0]!, strategy.measuredSpeed())
    const solution = solver.solve(plant.derivative, 0, state, period)
    if (solution.outcome !== Outcome.Converged) throw new Error(`odex: outcome ${solution.outcome} at ${time} s`)
    state = solution.y
    evaluations += solution.nEval
    force[k] = plant.nearForce(state)
    current[k] = state[0]!
  }
  return { force, current, evaluations }
}

/** Rate of an elasto-plastic bristle bent by `z` of its `reach` [m]: elastic up to a share of it, and wherever it springs back. */
function bristleRate(z: number, v: number, reach: number): number {
  if (z * v <= 0) return v
  const u = Math.min(1, Math.max(0, (Math.abs(z) / reach - ELASTIC) / (1 - ELASTIC)))
  return v - (u * u * (3 - 2 * u) * Math.abs(v) * z) / reach
}

/** Differential equations of the plant as design and sources state them, written for any integrator. */
function plantOf(scenario: Scenario) {
  const { actuator, jaws, part } = scenario
  const { coulomb, breakaway, stribeckSpeed, viscous, bristleStiffness, stiffness, damping } = actuator.transmission
  const { resistance, inductance } = actuator.motor
  const { mass, forcePerAmpere, raise, lower } = axisOf(actuator)
  const jawMass = jawMassOf(scenario)
  const gap = travelToContact(scenario)
  const bristleDamping = Math.sqrt(bristleStiffness * mass)
  // Pad and half the part in series; the damping belongs to the part's share of the squeeze.
  const contact = (part.stiffness * jaws.padStiffness) / (part.stiffness + 0.5 * jaws.padStiffness)
  const swallowed = (2 * part.damping * jaws.padStiffness) / (jaws.padStiffness + 2 * part.stiffness)
  const press = (squeeze: number, rate: number) =>
    squeeze > 0 ? Math.max(0, contact * squeeze * (1 + swallowed * rate)) : 0

  const derivative: Derivative = (_t, y) => {
    const current = y[0]!
    const v = y[2]!
    const jawX = y[3]!
    const jawV = y[4]!
    const partX = y[5]!
    const partV = y[6]!
    const z = y[7]!
    const zl = y[8]!
    const link = stiffness * (y[1]! - jawX) + damping * (v - jawV)
    const near = press(jawX - gap - partX, jawV - partV)
    const far = press(jawX - gap + partX, jawV + partV)
    const slope = v / stribeckSpeed
    const level = coulomb + (breakaway - coulomb) / (1 + slope * slope)
    const bristle = bristleRate(z, v, level / bristleStiffness)
    const loadBristle = bristleRate(zl, v, LOAD_REACH)
    const share = (zl * link > 0 ? raise : lower) * Math.abs(link)
    const friction =
      bristleStiffness * z +
      bristleDamping * bristle +
      viscous * v +
      (share / LOAD_REACH) * (zl + LOAD_DAMPING * loadBristle)
    return [
      (plant.voltage - resistance * current - forcePerAmpere * v) / inductance,
      v,
      (forcePerAmpere * current - link - friction) / mass,
      jawV,
      (link - near - far) / jawMass,
      partV,
      (near - far) / part.mass,
      bristle,
      loadBristle,
    ]
  }
  const nearForce = (y: number[]) => press(y[3]! - gap - y[5]!, y[4]! - y[6]!)
  const plant = { voltage: 0, derivative, nearForce }
  return plant
}
