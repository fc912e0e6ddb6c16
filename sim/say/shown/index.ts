/** The registry of how each job is shown to others. */
import type { JobResult } from '../../job/job.ts'
import type { JobId, Scenario } from '../../scenario/index.ts'
import { capShown } from './cap.ts'
import { gripShown } from './grip.ts'
import { pressShown } from './press.ts'
import type { Shown, TextAt } from './shown.ts'
import { webShown } from './web.ts'

const SHOWN: Record<JobId, Shown> = {
  grip: gripShown as unknown as Shown,
  press: pressShown as unknown as Shown,
  cap: capShown as unknown as Shown,
  web: webShown as unknown as Shown,
}

/** How the job of a scenario is shown. */
export const shownAs = <R extends JobResult>({ job }: Pick<Scenario, 'job'>) => SHOWN[job] as unknown as Shown<R>

/** What the simulation takes for granted, in short sentences with the figures of the scenario: of the work, then of motor and drive. */
export const assumedOf = (scenario: Scenario, at: TextAt): string[] => [
  ...shownAs(scenario).assumed(scenario, at),
  'Axis friction is a bristle model with constant coefficients: no wear, dirt, run-in or temperature in it.',
  'The amplifier is an ideal voltage source up to its bus voltage; no saturation of iron.',
  `Heat in two nodes, winding and housing, ${
    scenario.run.cycle === null ? 'from cold' : `in the steady state of a ${at('run.cycle')} cycle`
  }.`,
]

/** What all of them are held against before anybody relies on a simulated figure. */
export const CAUTION =
  'These figures come from a simulation: no measurement, no safety function, no proof. Enter settings at reduced force and speed first, with hands out of reach. The risk assessment of the machine, the standards in force and licensed practice decide; where they say something else, they are right.'
