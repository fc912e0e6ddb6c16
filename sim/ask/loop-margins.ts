/** The least margins of the loops that a strategy closes, over all working points. */
import { analyseLoops } from '../loops/analyse.ts'
import type { LoopId } from '../loops/model.ts'
import type { Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'

/** Null: there is no loop to look at, or no bound. */
export interface LoopMargins {
  stable: boolean
  /** [deg] */
  phaseMargin: number | null
  /** By how much the gain may rise [dB], and the dead time that is borne on top [s]. */
  gainMargin: number | null
  delayMargin: number | null
  /** Highest of any [1]. */
  peakSensitivity: number | null
}

/** `spread` is the share by which the part's stiffness varies. Throws a RangeError where the linear model is not finite. */
export function loopMargins(scenario: Scenario, strategy: StrategyId, spread?: number): LoopMargins {
  const loops: LoopId[] = strategyOf(strategy).sensed ? ['velocity', 'force'] : ['position']
  const rows = analyseLoops(scenario, { loops, spread }).loops
  const figures = (key: Exclude<keyof LoopMargins, 'stable'>) =>
    rows.map(({ margins }) => margins?.[key] ?? null).filter((value) => value !== null)
  const least = (values: number[]) => (values.length > 0 ? Math.min(...values) : null)
  const peaks = figures('peakSensitivity')
  return {
    stable: rows.every(({ stable }) => stable),
    phaseMargin: least(figures('phaseMargin')),
    gainMargin: least(figures('gainMargin')),
    delayMargin: least(figures('delayMargin')),
    peakSensitivity: peaks.length > 0 ? Math.max(...peaks) : null,
  }
}
