/** A loop with all its gains so many times as large, and how far that may go. */
import type { Scenario } from '../../scenario/index.ts'
import { analyseLoops } from '../analyse.ts'
import type { LoopId, ServoLoopId } from '../model.ts'
import { type WorkingPointId, type WorkingPointOptions, workingPointsOf } from '../working-point.ts'

export function scaledGains(scenario: Scenario, loop: ServoLoopId, factor: number): Scenario {
  const { servo, strategies } = scenario
  const { sensedForce } = strategies
  const { velocity } = sensedForce
  const times = <K extends string>(gains: Record<K, number>) =>
    Object.fromEntries(Object.entries<number>(gains).map(([name, gain]) => [name, gain * factor])) as Record<K, number>
  if (loop === 'position')
    return { ...scenario, servo: { ...servo, ...times({ kp: servo.kp, ki: servo.ki, kd: servo.kd }) } }
  const scaled =
    loop === 'velocity'
      ? { velocity: times(velocity) }
      : times({ kp: sensedForce.kp, ki: sensedForce.ki, kd: sensedForce.kd })
  return { ...scenario, strategies: { ...strategies, sensedForce: { ...sensedForce, ...scaled } } }
}

export interface Reach {
  /** Lowest crossover at the working points [rad/s], 0 where no gain keeps the margin. */
  crossover: number
  /** Factor on the present gains. */
  factor: number
  /** Where the peak sensitivity is the wanted one, and at which frequency [rad/s]; null where no gain keeps it. */
  at: WorkingPointId | null
  peakFrequency: number
}

/** Largest factor tried either way, and halvings of its logarithm between one that keeps the margin and one that does not. */
const WIDEST = 1e4
const HALVINGS = 12

/**
 * The largest gains in their present ratio that keep the peak sensitivity at every working point at or below `most`, on the exact
 * sampled loop. Null for a loop without gains or without a crossover, and where even the largest gains tried keep it.
 */
export function reachOf(
  scenario: Scenario,
  loop: ServoLoopId,
  most: number,
  options: WorkingPointOptions = {},
): Reach | null {
  const look = (factor: number) => {
    const { loops } = analyseLoops(scaledGains(scenario, loop, factor), { ...options, ...asked(scenario, loop) })
    const worst = loops.reduce((a, b) => (peakOf(b) > peakOf(a) ? b : a))
    const crossovers = loops.flatMap(({ crossover }) => (crossover === null ? [] : [crossover]))
    return { worst, fits: peakOf(worst) <= most, crossover: Math.min(...crossovers) }
  }
  const present = look(1)
  if (!Number.isFinite(present.crossover)) return null
  let [kept, lost] = present.fits ? [1, 2] : [0.5, 1]
  while (present.fits ? look(lost).fits : !look(kept).fits) {
    if (lost > WIDEST) return null
    if (kept < 1 / WIDEST) return { crossover: 0, factor: 0, at: null, peakFrequency: 0 }
    kept *= present.fits ? 2 : 0.5
    lost = 2 * kept
  }
  for (let n = 0; n < HALVINGS; n++) {
    const middle = Math.sqrt(kept * lost)
    if (look(middle).fits) kept = middle
    else lost = middle
  }
  const { worst, crossover } = look(kept)
  return {
    crossover: Number.isFinite(crossover) ? crossover : 0,
    factor: kept,
    at: worst.workingPoint,
    peakFrequency: worst.margins!.peakSensitivityFrequency,
  }
}

const peakOf = ({ margins }: ReturnType<typeof analyseLoops>['loops'][number]) =>
  margins?.peakSensitivity ?? Number.POSITIVE_INFINITY

const asked = (scenario: Scenario, loop: LoopId) => ({ loops: [loop], workingPoints: workingPointsOf(scenario) })
