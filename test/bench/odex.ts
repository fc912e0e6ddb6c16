/** The fixed-step loop against a general-purpose adaptive integrator on the same closed loop at the same accuracy. */

import { strategyOf } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { runCycle } from '../../sim/run/run.ts'
import { processorTime } from './clock.ts'
import { odexGrip } from './odex-axis.ts'
import { goal, row, summary } from './report.ts'
import { fixedStep, forceError, smoothScenario } from './smooth.ts'
import { least, median } from './stats.ts'

const GOAL = 20
/** The reference's steps in one of ours. */
const FINER = 64
const TOLERANCES = [1, -1, -2, -3, -4, -5, -6, -7, -8].map((exponent) => 10 ** exponent)
const ROUNDS = 20

export function odex(): void {
  const scenario = smoothScenario(0.1)
  const clamp = strategyOf('current-clamp')
  const substeps = modelOf(scenario, clamp).bench.axis.steps
  const reference = fixedStep(scenario, FINER)
  const error = forceError(fixedStep(scenario), reference)
  row('fixed step: rms error of the force', error.toExponential(2))
  row('odex at tolerance 1e-9: the same', forceError(odexGrip(scenario, 1e-9), reference).toExponential(2))

  const loosest = TOLERANCES.find((tolerance) => forceError(odexGrip(scenario, tolerance), reference) <= error)
  if (loosest === undefined) throw new Error('odex does not reach the accuracy of the fixed step')
  const { evaluations } = odexGrip(scenario, loosest)
  row('loosest tolerance at least as accurate', loosest.toExponential(0))
  row('odex there: rms error of the force', forceError(odexGrip(scenario, loosest), reference).toExponential(2))
  const samples = Math.round(scenario.run.duration * scenario.drive.currentRate)
  row('plant evaluations a sample, odex / fixed', `${(evaluations / samples).toFixed(1)} / ${substeps}`)

  // Timed over a longer grip, so that setting up and recording weigh no more than in use.
  const longer = smoothScenario(1)
  const ours: number[] = []
  const theirs: number[] = []
  for (let round = -5; round < ROUNDS; round++) {
    const a = processorTime(() => runCycle(modelOf(longer, clamp), { record: true }))
    const b = processorTime(() => odexGrip(longer, loosest))
    if (round < 0) continue
    ours.push(a * 1e3)
    theirs.push(b * 1e3)
  }
  row('fixed step, ms for 1 s', summary(ours, 2))
  row('odex, ms for 1 s', summary(theirs, 2))
  const ratio = least(theirs) / least(ours)
  goal('odex / fixed step, of the least', ratio.toFixed(1), `≥ ${GOAL}`, ratio >= GOAL)
  row('odex / fixed step, of the medians', (median(theirs) / median(ours)).toFixed(1))
}
