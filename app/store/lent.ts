/**
 * A part of a study on the bench: its values are on loan there. The study keeps its own until the person says otherwise, so that
 * whatever is asked next is asked about the scenario that was studied, with every other change that was made on the bench since.
 */
import { useMemo } from 'react'
import { create } from 'zustand'
import { type Edit, editScenario, readPath, type Scenario } from '../../sim/index.ts'
import { useScenario } from './scenario.ts'
import { share } from './share.ts'

const KEY = 'jawbench.lent'

export interface Lent {
  /** What stands on the bench, such as "Part 17". */
  name: string
  /** The scenario that was studied. */
  of: Scenario
  /** The values on loan. */
  edits: Edit[]
}

/** Null: what is on the bench is its own. Kept in the browser, where the study is kept as well. */
export const useLent = create<{ lent: Lent | null }>()(() => ({ lent: restored() }))

export function lend(lent: Lent | null): void {
  useLent.setState({ lent })
  try {
    localStorage.setItem(KEY, JSON.stringify(lent))
  } catch {
    // It is then forgotten with the page, as the study is.
  }
}

function restored(): Lent | null {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? 'null') as Lent | null
  } catch {
    return null
  }
}

/** What a study is made of: the scenario on the bench, without what stands there on loan. */
export function useNominal(): Scenario {
  const bench = useScenario(({ scenario }) => scenario)
  const lent = useLent((state) => state.lent)
  return useMemo(() => nominalOf(bench, lent), [bench, lent])
}

/** Edits that give the values back which still stand on the bench as they were lent; none: nothing is on loan any more. */
export function back(bench: Scenario, lent: Lent | null): Edit[] {
  if (!lent || bench.name !== lent.of.name) return []
  const still = lent.edits.filter(({ path, value }) => Object.is(readPath(bench, path), value))
  return still.map(({ path }) => ({ path, value: readPath(lent.of, path) }))
}

/** The scenario on the bench with the study's own values; the studied one itself where nothing else has been changed. */
export function nominalOf(bench: Scenario, lent: Lent | null): Scenario {
  const edits = back(bench, lent)
  if (!lent || edits.length === 0) return bench
  const edited = editScenario(bench, edits)
  return edited.ok ? share(lent.of, edited.scenario) : bench
}
