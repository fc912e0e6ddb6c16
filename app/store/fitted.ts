/**
 * What the axis on the bench was fitted to: values with their intervals, what is left, what was not told. It is kept in the browser until
 * another fit is used, so that the report can show it; the log itself is not.
 */
import { useMemo } from 'react'
import { create } from 'zustand'
import {
  type FittedValue,
  type ResidualOf,
  type ResponseFit,
  readPath,
  type Scenario,
  type Untold,
} from '../../sim/index.ts'
import { useScenario } from './scenario.ts'

const KEY = 'jawbench.fitted'

interface Shared {
  /** What the logs are called. */
  names: string[]
  values: FittedValue[]
  untold: Untold[]
}

export type Fitting = Shared &
  (
    | { kind: 'log'; seconds: number[]; residuals: ResidualOf[] }
    | ({ kind: 'response' } & Pick<ResponseFit, 'used' | 'leftOut' | 'before' | 'after' | 'resonance'>)
  )

export const useFitting = create<{ fitting: Fitting | null }>()(() => ({ fitting: restored() }))

export function keepFitting(fitting: Fitting): void {
  useFitting.setState({ fitting })
  try {
    localStorage.setItem(KEY, JSON.stringify(fitting))
  } catch {
    // It is then forgotten with the page; the notes of the scenario still say the values.
  }
}

function restored(): Fitting | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Fitting | null
    return Array.isArray(kept?.values) ? kept : null
  } catch {
    return null
  }
}

/** Whether a fitted value still stands in a scenario as it was found; null for what is none of its quantities. */
export function stands(scenario: Scenario, { path, value }: FittedValue): boolean | null {
  const now = readPath(scenario, path)
  return typeof now === 'number' ? Object.is(now, value) : null
}

/** The fit as far as it is about a scenario: some value of it still stands there. Null: it is about another one. */
export const fittingOf = (fitting: Fitting | null, scenario: Scenario): Fitting | null =>
  fitting?.values.some((each) => stands(scenario, each) === true) ? fitting : null

export function useFittingHere(): Fitting | null {
  const fitting = useFitting((state) => state.fitting)
  const scenario = useScenario((state) => state.scenario)
  return useMemo(() => fittingOf(fitting, scenario), [fitting, scenario])
}
