/** Another axis under the same work: the one way for every view. */
import {
  axesFor,
  fitAxis,
  type JobId,
  jobOf,
  readPath,
  type Scenario,
  strategiesOn,
  wantedEffort,
} from '../../../sim/index.ts'
import { useResults } from '../../store/results.ts'
import { type Axis, useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { CLOSE } from '../axes/fitted.ts'
import { effortQuantity, quantityUnit, type UnitSystem } from '../units.ts'
import { differingPaths } from './changes.ts'
import { settingLabel, settingText } from './setting.ts'

/** The generic axis that stands for a family. */
export const axisOfFamily = (kind: string, family: string, job: JobId = 'grip') =>
  axesFor(job).find(({ actuator }) => actuator.kind === kind && actuator.family === family)

/**
 * Puts an axis with all its own data under the part, gains matched to its mass and settings to the effort that the clamp meant
 * before; says what changed. One undo takes it back. False: it does not go together with the rest, and why has been said.
 * What stands beside stays there, unless it is told.
 */
export function putAxis({ title, actuator }: Axis, beside = useScenario.getState().beside): boolean {
  const { scenario, base, load } = useScenario.getState()
  const { say } = useResults.getState()
  const { units } = useView.getState()
  const fitted = fitAxis(scenario, actuator)
  if (!fitted.ok) {
    const { path, given, allowed } = fitted.faults[0]!
    const label = settingLabel(actuator.kind, path, scenario.job)
    say(`${title} does not go on the bench: ${label} would be ${given}, allowed is ${allowed}. The bench is as it was.`)
    return false
  }
  const next = { ...fitted.scenario, name: axisName(scenario.name, title) }
  const { actuator: own, servo, strategies } = next
  load(next, { ...base, actuator: own, servo, strategies }, beside)
  say(...told(scenario, next, title, units))
  return true
}

/** The name says which axis it is; that of a preset named its own. */
export const axisName = (name: string, title: string) => `${name.replace(AXIS, '')}, axis: ${title}`.slice(0, 200)
const AXIS = /, axis: [^,].*$/

function told(before: Scenario, after: Scenario, title: string, units: UnitSystem): [string, string[]] {
  const { symbol, toShown } = quantityUnit(effortQuantity(before), units)
  const say = (effort: number) => withUnit(formatFigure(toShown(effort)), symbol)
  const job = jobOf(before)
  const force = wantedEffort(before)
  const changes = differingPaths([before, after])
    .filter((path) => !UNSAID.includes(path))
    .flatMap((path) => change(before, after, path, units))
  const most = Math.min(...strategiesOn(job).map((strategy) => strategy.forceOf(after).expected))
  const short = most < CLOSE * force ? `; at its current limit this axis gives ${say(most)} of them` : ''
  return [
    `On the bench now: ${title}, with its own motor, transmission, friction and heat. Gains follow its moving ${job.output.travel === 'rad' ? 'inertia' : 'mass'}; every setting asks for the ${say(force)} that were wanted${short}. Undo takes all of it back.`,
    changes,
  ]
}

/** Said by the sentence itself. */
const UNSAID = ['name', 'actuator.kind', 'actuator.family']
/** A key in words; one that the new axis does not have is left out. */
function change(before: Scenario, after: Scenario, path: string, units: UnitSystem): string[] {
  const [old, next] = [readPath(before, path), readPath(after, path)]
  if (next === undefined) return []
  const now = settingText(after, path, next, units)
  const label = settingLabel(after.actuator.kind, path, after.job)
  return [old === undefined ? `${label}: ${now}` : `${label}: ${settingText(before, path, old, units)} → ${now}`]
}
