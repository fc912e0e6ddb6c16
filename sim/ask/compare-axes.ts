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

export function* compareAxes(scenario: Scenario, run = runHere): Generator<ComparedAxis> {
  yield { id: 'own', title: 'On the bench', report: reportAxis(scenario, scenario.actuator, run) }
  for (const { id, title, actuator } of axesFor(scenario.job))
    yield { id, title, report: reportAxis(scenario, actuator, run) }
}
