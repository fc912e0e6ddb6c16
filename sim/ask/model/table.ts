/** How far off the model can be, as the command line prints it. */
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { runHere } from '../runner.ts'
import { type CounterRun, type CounterRuns, counterRuns, type Outcome, SIMPLIFICATIONS } from './index.ts'
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
  base: Outcome
  simplifications: ModelRow[]
}

/** Throws a RangeError where the scenario cannot be simulated. */
export function modelReport(scenario: Scenario, strategy: StrategyId, run = runHere): ModelReport {
  const { base, runs } = [...counterRuns(scenario, strategy, run)].at(-1) as CounterRuns
  const simplifications = SIMPLIFICATIONS.map((each): ModelRow => {
    const { id, element, title, bound } = each
    const own = runs.filter((run) => run.id === id)
    return { id, element, title, how: bound.how, basis: basisOf(each), figures: figuresOf(each), runs: own }
  })
  return { strategy, base, simplifications }

  function figuresOf({ bound }: Simplification) {
    return bound.how === 'formula'
      ? bound.figures(scenario, strategy).map(({ label, value, unit }) => ({ label, value, unit }))
      : []
  }
}

const basisOf = ({ bound }: Simplification) =>
  bound.how === 'formula' ? `${bound.formula}. ${bound.basis}` : bound.how === 'runs' ? bound.basis : bound.measure

const figure = (value: number | null) => (value === null ? '—' : String(Number(value.toPrecision(3))))

const change = (value: number | null, from: number | null) =>
  value === null || from === null || from === 0
    ? '—'
    : `${value >= from ? '+' : ''}${figure(100 * (value / from - 1))} %`

export function modelTable({ base, simplifications }: ModelReport): string {
  const lines = [
    `${base.verdict}: peak ${figure(base.peakForce)} N, settled ${figure(base.settledForce)} N, on an unbreakable part`,
  ]
  for (const { element, title, how, basis, figures, runs } of simplifications) {
    lines.push('', `${element}: ${title}`)
    if (how === 'unknown') lines.push(`  not known. ${basis}`)
    else if (figures.length + runs.length === 0) lines.push('  does not apply here')
    else lines.push(`  ${basis}`)
    for (const { label, value, unit } of figures) lines.push(`  ${label}: ${figure(value)} ${unit}`.trimEnd())
    for (const run of runs) lines.push(`  ${run.label}: ${outcomeText(run, base)}`)
  }
  return lines.join('\n')
}

function outcomeText({ outcome, refused }: CounterRun, base: Outcome): string {
  if (!outcome) return `not possible here (${refused})`
  const parts = [
    `peak ${figure(outcome.peakForce)} N (${change(outcome.peakForce, base.peakForce)})`,
    `settled ${figure(outcome.settledForce)} N (${change(outcome.settledForce, base.settledForce)})`,
  ]
  if (outcome.holdMargin !== base.holdMargin)
    parts.push(`to spare ${figure(outcome.holdMargin === null ? null : 100 * outcome.holdMargin)} %`)
  if (outcome.windingTemperature !== base.windingTemperature)
    parts.push(`winding ${figure(outcome.windingTemperature)} °C`)
  return `${outcome.verdict}, ${parts.join(', ')}`
}
