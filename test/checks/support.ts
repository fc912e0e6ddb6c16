/** What the checks share: scenarios without friction and noise, open-loop strategies, exact linear solutions. */
import { Matrix } from 'ml-matrix'
import { type Derivative, Outcome, Solver } from 'odex'
import { Bench } from '../../sim/cycle/bench.ts'
import {
  checkScenario,
  faultLine,
  type GripResult,
  type Scenario,
  type StrategyKind,
  strategyOf,
  type Traces,
  travelToContact,
} from '../../sim/index.ts'
import { GripLoad } from '../../sim/job/grip/load.ts'
import { judgeEnd } from '../../sim/job/grip/verdict.ts'
import type { RunEnd } from '../../sim/job/job.ts'
import { type Model, modelOf } from '../../sim/model/model.ts'
import { tracesOf } from '../../sim/run/channels.ts'
import { endOf } from '../../sim/run/end.ts'
import { runCycle } from '../../sim/run/run.ts'
import { Machine } from '../../sim/strategy/machine.ts'

export type Tree = { [key: string]: unknown }

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && !Array.isArray(value)

/** Lays `from` over `into`, which it changes. */
export function merge(into: Tree, from: Tree): Tree {
  for (const [key, value] of Object.entries(from)) {
    const at = into[key]
    into[key] = isTree(value) ? merge(isTree(at) ? at : {}, value) : value
  }
  return into
}

/** A scenario from partial ones, the later over the earlier; throws with every fault. */
export function scenarioOf(...parts: Tree[]): Scenario {
  const checked = checkScenario(parts.reduce(merge, {}))
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}

export const FRICTIONLESS = { coulomb: 0, breakaway: 0, viscous: 0 }

/** Measuring without steps, noise or heat, so that a closed form can be met. */
export const IDEAL: Tree = {
  drive: { currentResolution: 0, currentNoise: 0 },
  sensors: { encoder: { resolution: 0 } },
  arm: { gravity: 'none' },
}

/** Two mirrored jaws of `mass` [kg] together that a motor without friction and of hardly any mass drives with 1 N/A. */
export const bareJaws = (mass: number): Tree => ({
  ...IDEAL,
  drive: { currentResolution: 0, currentNoise: 0, busVoltage: 2000 },
  actuator: {
    kind: 'direct',
    motor: { movingMass: 1e-5, forceConstant: 1, inductance: 0.004, peakCurrent: 1000 },
    transmission: { ...FRICTIONLESS, carriageMass: 0, bristleStiffness: 1000, stiffness: 1e5, damping: 1 },
  },
  jaws: { mass: mass / 2, padStiffness: 1e9, opening: 0.074 },
  part: { damping: 0 },
})

/** A strategy that asks for a current [A], whatever happens. */
class OpenLoop extends Machine {
  private readonly current: (time: number) => number

  constructor(current: (time: number) => number) {
    super()
    this.current = current
  }

  begin(): void {}
  settle(): void {}
  saturated = () => 0
  measuredSpeed = () => 0
  tick = (time: number) => this.current(time)
}

export interface Run extends Pick<GripResult, 'metrics' | 'events' | 'cause'> {
  traces: Traces
  /** At the end [°C]. */
  temperatures: { winding: number; housing: number }
}

export function runModel(model: Model): Run {
  const { bench, columns, hash } = runCycle(model, { record: true })
  const end = endOf(bench, hash) as RunEnd<GripLoad>
  const { winding, housing } = bench.axis.heat.state
  const { metrics, events } = judgeEnd(model.scenario, end)
  return { metrics, events, cause: end.cause, traces: tracesOf(columns ?? []), temperatures: { winding, housing } }
}

/** The usual run of a strategy, its step divided further. */
export function runOf(scenario: Scenario, strategy: StrategyKind, finer = 1): Run {
  const model = modelOf(scenario, strategy)
  if (finer === 1) return runModel(model)
  const step = model.bench.axis.step / finer
  return runModel(modelOf({ ...scenario, run: { ...scenario.run, step } }, strategy))
}

export function runOpenLoop(scenario: Scenario, current: (time: number) => number): Run {
  const kind = { ...strategyOf('current-clamp'), fill: () => {} }
  return runModel(modelOf(scenario, kind, { make: () => new Bench(new GripLoad(), new OpenLoop(current)) }))
}

/**
 * Jaws pushed to about `speed` [m/s] within 10 ms, which then coast onto the part and off it. Up to 2000 samples of the current
 * loop the traces hold every one of them.
 */
export function coastOnto(mass: number, speed: number, ...parts: Tree[]) {
  const scenario = scenarioOf(
    bareJaws(mass),
    { events: { powerLoss: { time: 0.01, windings: 'open' } }, run: { duration: 0.1 } },
    ...parts,
  )
  const run = runOpenLoop(scenario, () => (mass * speed) / 0.01)
  const { travel, speed: speeds, force, time } = run.traces
  const contactTime = run.metrics.contactTime!
  const off = force.findIndex(
    (value, k) => time[k]! > contactTime && value === 0 && travel[k]! < travelToContact(scenario),
  )
  const exitSpeed = -speeds[off]!
  // Off the part the jaws coast, so the end of contact lies on the straight line through this sample.
  const exit = time[off]! + 1 / scenario.drive.currentRate - (travelToContact(scenario) - travel[off]!) / exitSpeed
  return {
    run,
    contactSpeed: run.metrics.contactSpeed!,
    exitSpeed,
    contactTime: exit - contactTime,
    peak: run.metrics.peakForce!,
  }
}

/** Exponential of a square matrix: Taylor series after halving until its norm is below 1/2, then squared back. */
export function expm(matrix: Matrix): Matrix {
  const size = Math.max(...matrix.to2DArray().map((row) => row.reduce((sum, value) => sum + Math.abs(value), 0)))
  const squarings = Math.max(0, Math.ceil(Math.log2(size)) + 1)
  const small = Matrix.mul(matrix, 2 ** -squarings)
  let term = Matrix.eye(matrix.rows)
  let sum = Matrix.eye(matrix.rows)
  for (let n = 1; n <= 20; n++) {
    term = term.mmul(small).div(n)
    sum = Matrix.add(sum, term)
  }
  for (let n = 0; n < squarings; n++) sum = sum.mmul(sum)
  return sum
}

/** Solution of s' = A s + b held constant over `time` from `start`, exact. */
export function held(a: number[][], b: number[], time: number) {
  const n = b.length
  const augmented = Matrix.zeros(n + 1, n + 1)
  a.forEach((row, i) => {
    for (const [j, value] of row.entries()) augmented.set(i, j, value * time)
    augmented.set(i, n, b[i]! * time)
  })
  const whole = expm(augmented)
  return {
    /** e^(A·time) s + (∫ e^(A·t) dt) b·input */
    next: (state: number[], input: number) =>
      state.map((_, i) => state.reduce((sum, value, j) => sum + whole.get(i, j) * value, whole.get(i, n) * input)),
  }
}

/** Integrates with ODEX (Hairer, Nørsett, Wanner) at tight tolerance; `out` sees every multiple of `grid`. */
export function integrate(
  f: Derivative,
  start: number[],
  end: number,
  grid: number,
  out: (t: number, y: number[]) => void,
) {
  const solver = new Solver(start.length)
  solver.relativeTolerance = 1e-9
  solver.absoluteTolerance = 1e-12
  solver.denseOutput = true
  solver.maxSteps = 1e8
  const solution = solver.solve(f, 0, start, end, solver.grid(grid, out))
  if (solution.outcome !== Outcome.Converged) throw new Error(`odex: outcome ${solution.outcome}`)
}
