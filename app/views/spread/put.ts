/** Puts what a study has gripped on the bench, with its own noise; undo brings the one before back. */
import type { Scenario } from '../../../sim/index.ts'
import { lentOf } from '../../store/lend.ts'
import { lend } from '../../store/lent.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'

/** `name` as it begins a sentence; `of` is the scenario that was studied, to which "reset" goes back. */
export function putOnBench(name: string, scenario: Scenario, of: Scenario): void {
  const { load, beside } = useScenario.getState()
  load(scenario, of, beside)
  lend(lentOf(name, scenario, of))
  useView.setState({ view: 'bench' })
  useResults.getState().say(`${name} is on the bench; undo brings back the one before.`)
}
