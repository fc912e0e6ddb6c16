/** Margins, curves and step responses of the four loops at the working points, from a scenario and nothing else. */
import { isOpenLoop } from '../axis/reflect.ts'
import type { Scenario } from '../scenario/index.ts'
import { anglesFor } from './angles.ts'
import { Cascade } from './cascade.ts'
import { type Complex, rootOf } from './complex.ts'
import { type Examined, examine } from './examine.ts'
import type { Margins } from './margins.ts'
import { LOOPS, type LoopId } from './model.ts'
import { type DryFriction, dryFriction, type LoopRemark, remarksOn } from './remarks.ts'
import { type Curves, curvesOf } from './response.ts'
import type { Stability } from './stability.ts'
import { type StepResponse, stepOf, stepSpan } from './step-response.ts'
import {
  type WorkingPoint,
  type WorkingPointId,
  type WorkingPointOptions,
  workingPoint,
  workingPointsOf,
} from './working-point.ts'

export interface LoopAnalysis {
  loop: LoopId
  workingPoint: WorkingPointId
  /** Sample period of the loop [s]. */
  period: number
  /** All closed poles inside the unit circle; `stability` also knows those on it. */
  stable: boolean
  stability: Stability
  /** Closed poles in the z plane of `polePeriod` [s], the slowest first: those of the current loop have the servo's period. */
  poles: Complex[]
  polePeriod: number
  /** Highest frequency at which the loop gain falls through 1 [rad/s]; a property of the loop gain, so also of an unstable loop. */
  crossover: number | null
  /** Null for a loop that is not stable, whose distances from −1 mean nothing. */
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
  const points = (options.workingPoints ?? workingPointsOf(scenario)).map((id) => workingPoint(scenario, id, options))
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
  const examined = examine(cascade, loop)
  const { period, polePeriod, closed: poles, stability, margins } = examined
  const stable = stability === 'stable'
  return {
    loop,
    workingPoint: point.id,
    period,
    stable,
    stability,
    poles,
    polePeriod,
    crossover: margins.crossover,
    margins: stable ? margins : null,
    remarks: remarksOn(scenario, loop, point, examined),
    curves: curves ? curvesFrom(examined, count) : null,
    step: curves ? stepOf(cascade, loop, stepSpan(period, margins.crossover), STEP_SAMPLES) : null,
  }
}

/** From a decade below the slowest closed pole or crossover on. */
function curvesFrom({ response, closed, open, period, polePeriod, margins }: Examined, count: number): Curves {
  const fast = (poles: readonly Complex[]) => poles.map((pole) => rootOf(pole, Math.round(polePeriod / period)))
  const lowest = Math.min(...margins.crossings) * period
  return curvesOf(response, anglesFor(fast(closed), fast(open), count, lowest), period)
}
