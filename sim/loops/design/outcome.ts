/** What a loop really does with a design's gains, from the linear model with all its delays. */
import type { LoopAnalysis } from '../analyse.ts'
import type { WorkingPointId } from '../working-point.ts'

export interface DesignOutcome {
  workingPoint: WorkingPointId
  stable: boolean
  /** [rad/s] */
  crossover: number | null
  bandwidth: number | null
  /** Of the answer to a step of the set point, over its size; null where the closed loop does not follow a slow set point. */
  overshoot: number | null
  /** [deg], [dB] */
  phaseMargin: number | null
  gainMargin: number | null
  peakSensitivity: number | null
}

/** How near 1 the closed loop's answer to the slowest set point lies where the loop is said to follow it. */
const FOLLOWS = 0.02

/** `analysis` with its step response. */
export function outcomeOf({ workingPoint, stable, crossover, margins, step }: LoopAnalysis): DesignOutcome {
  const follows = margins !== null && step !== null && Math.abs(margins.slowAnswer - 1) < FOLLOWS
  return {
    workingPoint,
    stable,
    crossover,
    bandwidth: margins?.bandwidth ?? null,
    overshoot: follows ? Math.max(0, step.value.reduce((most, value) => Math.max(most, value)) - 1) : null,
    phaseMargin: margins?.phaseMargin ?? null,
    gainMargin: margins?.gainMargin ?? null,
    peakSensitivity: margins?.peakSensitivity ?? null,
  }
}
