/**
 * From one sample to the next with odex (extrapolation of the midpoint rule with order and step control: Hairer, Nørsett, Wanner,
 * Solving Ordinary Differential Equations I, II.9). Where the equations change, it starts anew.
 */
import { Outcome, Solver } from 'odex'
import type { Plant } from './plant.ts'

/** Sees the state after each accepted step. */
export type Watch = (time: number, y: number[]) => void

export class Integrator {
  private readonly plant: Plant
  private readonly tolerance: number
  private readonly solvers = new Map<number, Solver>()
  evaluations = 0

  constructor(plant: Plant, tolerance: number) {
    this.plant = plant
    this.tolerance = tolerance
  }

  /** The state at the time `to` [s] from that at `from`. */
  run(start: number[], from: number, to: number, watch: Watch): number[] {
    const { plant } = this
    const solver = this.solverOf(start.length)
    const { derivative } = plant
    let state = start
    let time = from
    while (time < to) {
      const begin = time
      const length = to - begin
      let reached = 0
      const { y, outcome, nEval } = solver.solve(
        (x, at) => derivative(begin + x, at),
        0,
        state,
        length,
        (step, _old, x, at) => {
          if (step === 1) return true
          reached = x
          const changed = plant.settle(begin + x, at)
          watch(begin + x, at)
          return !(changed && x < length)
        },
      )
      this.evaluations += nEval
      if (outcome === Outcome.MaxStepsExceeded) throw new Error(`odex: too many steps at ${begin} s`)
      state = y
      time = outcome === Outcome.EarlyReturn ? begin + reached : to
    }
    return state
  }

  private solverOf(size: number): Solver {
    const known = this.solvers.get(size)
    if (known) return known
    const solver = new Solver(size)
    const { scale } = this.plant
    solver.relativeTolerance = scale.map(() => this.tolerance)
    solver.absoluteTolerance = scale.map((one) => this.tolerance * one)
    solver.maxSteps = 1e6
    this.solvers.set(size, solver)
    return solver
  }
}
