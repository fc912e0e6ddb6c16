/** What was fitted to the axis beside, in words: by what rule, to which force, and what came of it key by key. */
import { jobOf, readPath, type Scenario, strategiesOn, wantedEffort } from '../../../sim/index.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { differingPaths } from '../scenario/changes.ts'
import { settingLabel, settingText } from '../scenario/setting.ts'
import { effortQuantity, quantityUnit, type UnitSystem } from '../units.ts'

/** Settings are rounded for the drive; so much of an effort counts as all of it. */
export const CLOSE = 0.995

/** `own`: the scenario on the bench, `fitted`: the same with the axis beside. */
export function fittedSentences(own: Scenario, fitted: Scenario, units: UnitSystem): string[] {
  const { symbol, toShown } = quantityUnit(effortQuantity(own), units)
  const say = (effort: number) => withUnit(formatFigure(toShown(effort)), symbol)
  const wanted = wantedEffort(own)
  const asked = (of: Scenario) => strategiesOn(jobOf(of)).map((each) => ({ each, force: each.forceOf(of).expected }))
  const most = Math.min(...asked(fitted).map(({ force }) => force))
  const others = asked(own).filter(({ force }) => Math.abs(force - wanted) > (1 - CLOSE) * wanted)
  return [
    `Its gains follow its moving ${turns(own) ? 'inertia' : 'mass'} by rule, not by trial; every setting asks for the ${say(wanted)} that are wanted on the bench.`,
    ...(most < CLOSE * wanted ? [`At its current limit it gives ${say(most)} of them.`] : []),
    ...others.map(({ each, force }) => `On the bench ${each.label} is set to ask for ${say(force)}.`),
  ]
}

/** Whether its output turns, so that what it moves has inertia. */
const turns = (scenario: Scenario) => jobOf(scenario).output.travel === 'rad'

export interface FittedSetting {
  path: string
  label: string
  /** On the bench, and on the axis beside. */
  own: string
  fitted: string
}

/** Every gain, limit and setting in which the two differ. */
export function fittedSettings(own: Scenario, fitted: Scenario, units: UnitSystem): FittedSetting[] {
  const { kind } = own.actuator
  return differingPaths([own, fitted])
    .filter((path) => !path.startsWith('actuator.') && path !== 'name')
    .map((path) => ({
      path,
      label: settingLabel(kind, path, own.job),
      own: settingText(own, path, readPath(own, path), units),
      fitted: settingText(fitted, path, readPath(fitted, path), units),
    }))
}
