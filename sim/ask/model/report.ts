/** How far off the model can be: all that is known of every simplification, for a scenario and a strategy. */
import type { Figure } from '../../job/job.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { runHere } from '../runner.ts'
import { type CounterRun, type CounterRuns, counterRuns, type Outcome, simplificationsOf, toldOf } from './index.ts'
import type { Simplification } from './simplification.ts'

/** All that is known of one simplification for a scenario and a strategy; figures in SI. */
export interface ModelRow {
  id: string
  element: string
  title: string
  how: string
  /** Formula and basis, what was changed, or what to measure. */
  basis: string
  figures: { label: string; value: number | null; unit: string }[]
  runs: CounterRun[]
}

export interface ModelReport {
  strategy: StrategyId
  /** What the outcomes tell, in this order; efforts are those whose unit is that of the output. */
  told: Pick<Figure, 'id' | 'label' | 'unit' | 'shown'>[]
  base: Outcome
  simplifications: ModelRow[]
}

/** Throws a RangeError where the scenario cannot be simulated. */
export function modelReport(scenario: Scenario, strategy: StrategyId, run = runHere): ModelReport {
  const { base, runs } = [...counterRuns(scenario, strategy, run)].at(-1) as CounterRuns
  const simplifications = simplificationsOf(scenario.job).map((each): ModelRow => {
    const { id, element, title, bound } = each
    const own = runs.filter((run) => run.id === id)
    return { id, element, title, how: bound.how, basis: basisOf(each), figures: figuresOf(each), runs: own }
  })
  const told = toldOf(scenario).map(({ id, label, unit, shown }) => ({ id, label, unit, ...(shown && { shown }) }))
  return { strategy, told, base, simplifications }

  function figuresOf({ bound }: Simplification) {
    return bound.how === 'formula'
      ? bound.figures(scenario, strategy).map(({ label, value, unit }) => ({ label, value, unit }))
      : []
  }
}

const basisOf = ({ bound }: Simplification) =>
  bound.how === 'formula' ? `${bound.formula}. ${bound.basis}` : bound.how === 'runs' ? bound.basis : bound.measure
