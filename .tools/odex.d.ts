// The package ships its TypeScript source, which does not pass our compiler's settings; this is the part of it that we use.
/** The derivative y′ at x, a new array each time. */
export type Derivative = (x: number, y: number[]) => number[]

/** Called after each step; return false to stop. The interpolator is there when denseOutput is on. */
export type OutputFunction = (
  step: number,
  xOld: number,
  x: number,
  y: number[],
  interpolate?: (component: number, x: number) => number,
) => unknown

export enum Outcome {
  Converged,
  MaxStepsExceeded,
  EarlyReturn,
}

export class Solver {
  constructor(n: number)
  maxSteps: number
  initialStepSize: number
  maxStepSize: number
  denseOutput: boolean
  relativeTolerance: number | number[]
  absoluteTolerance: number | number[]
  grid(dt: number, out: (x: number, y: number[]) => unknown): OutputFunction
  solve(
    f: Derivative,
    x: number,
    y: number[],
    xEnd: number,
    output?: OutputFunction,
  ): { y: number[]; outcome: Outcome; nStep: number; xEnd: number; nAccept: number; nReject: number; nEval: number }
}
