/** Margins, curves and step responses of the four loops at the four working points, from a scenario and nothing else. */
import { isOpenLoop } from '../axis/reflect.ts'
import type { Scenario } from '../scenario/index.ts'
import { Cascade } from './cascade.ts'
import { type Complex, magnitude } from './complex.ts'
import { type Margins, marginsOf } from './margins.ts'
import { LOOPS, type LoopId, ownPoles } from './model.ts'
import { type DryFriction, dryFriction, type LoopRemark, remarksOn } from './remarks.ts'
import { anglesFor, type Curves, curvesOf, LoopResponse } from './response.ts'
import { type StepResponse, stepResponse, stepSpan } from './step-response.ts'
import {
  WORKING_POINTS,
  type WorkingPoint,
  type WorkingPointId,
  type WorkingPointOptions,
  workingPoint,
} from './working-point.ts'

export interface LoopAnalysis {
  loop: LoopId
  workingPoint: WorkingPointId
  /** Sample period of the loop [s]. */
  period: number
  /** All closed poles inside the unit circle. */
  stable: boolean
  /** Closed poles in the z plane, the slowest first. */
  poles: Complex[]
  /** Highest frequency at which the loop gain falls through 1 [rad/s]; a property of the loop gain, so also of an unstable loop. */
  crossover: number | null
  /** Null for an unstable loop, whose distances from −1 mean nothing. */
  margins: Margins | null
  /** What the figures do not say by themselves. */
  remarks: LoopRemark[]
  /** Asked for with `curves`. */
  curves: Curves | null
  step: StepResponse | null
}

export interface AnalysisOptions extends WorkingPointOptions {
  loops?: readonly LoopId[] | undefined
  workingPoints?: readonly WorkingPointId[] | undefined
  /** Also give curves and step responses. */
  curves?: boolean | undefined
  /** Frequencies of the logarithmic grid. */
  count?: number | undefined
}

export interface LoopsResult {
  workingPoints: WorkingPoint[]
  /** Loop by loop, working point by working point. */
  loops: LoopAnalysis[]
  /** What a linear margin does not see. */
  friction: DryFriction
  /** Loops are missing as the step motor has none of them. */
  openLoop: boolean
}

const COUNT = 240
const STEP_SAMPLES = 240

/** Throws a RangeError for a spread or a working force out of range, or a scenario whose linear model is not finite. */
export function analyseLoops(scenario: Scenario, options: AnalysisOptions = {}): LoopsResult {
  const wanted = options.loops ?? LOOPS
  const loops = isOpenLoop(scenario) ? wanted.filter((loop) => loop === 'current') : wanted
  const points = (options.workingPoints ?? WORKING_POINTS).map((id) => workingPoint(scenario, id, options))
  const cascades = points.map((point) => new Cascade(scenario, point))
  return {
    workingPoints: points,
    loops: loops.flatMap((loop) => points.map((point, i) => analyse(scenario, loop, point, cascades[i]!, options))),
    friction: dryFriction(scenario),
    openLoop: loops.length < wanted.length,
  }
}

function analyse(
  scenario: Scenario,
  loop: LoopId,
  point: WorkingPoint,
  cascade: Cascade,
  { count = COUNT, curves = false }: AnalysisOptions,
): LoopAnalysis {
  const model = cascade.loop(loop)
  const poles = ownPoles(cascade.closedPoles(loop), model).sort((p, q) => magnitude(q) - magnitude(p))
  const open = ownPoles(model.openPoles, model)
  const response = new LoopResponse(poles, open)
  const angles = anglesFor(poles, open, count)
  const margins = marginsOf(response, angles, model.period)
  const stable = magnitude(poles[0]!) < 1
  const integrators = open.filter(({ re, im }) => Math.hypot(re - 1, im) < 1e-4).length
  return {
    loop,
    workingPoint: point.id,
    period: model.period,
    stable,
    poles,
    crossover: margins.crossover,
    margins: stable ? margins : null,
    remarks: remarksOn(scenario, loop, point, poles, model.period, margins),
    curves: curves ? curvesOf(response, angles, model.period, integrators) : null,
    step: curves ? stepResponse(model, stepSpan(model.period, margins.crossover), STEP_SAMPLES) : null,
  }
}
