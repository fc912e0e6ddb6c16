/** Every generic axis and the one on the bench under one scenario, a report at a time. */
import { axesFor, type Scenario } from '../scenario/index.ts'
import { type AxisReport, reportAxis } from './actuators.ts'
import { runHere } from './runner.ts'

export interface ComparedAxis {
  /** Id of the generic axis, or 'own' for the one on the bench. */
  id: string
  title: string
  report: AxisReport
}

/** `only`: the id of one generic axis, if no other is asked about. */
export function* compareAxes(scenario: Scenario, run = runHere, only?: string): Generator<ComparedAxis> {
  yield { id: 'own', title: 'On the bench', report: reportAxis(scenario, scenario.actuator, run) }
  for (const { id, title, actuator } of axesFor(scenario.job))
    if (only === undefined || id === only) yield { id, title, report: reportAxis(scenario, actuator, run) }
}
