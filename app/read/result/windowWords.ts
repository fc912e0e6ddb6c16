import { jobWords, type Scenario, type WindowWords, wordingOf } from '../../../sim/index.ts'
import type { UnitSystem } from '../units.ts'

/** What the effort is held against, in the units of the page. */
export const windowWords = (scenario: Scenario, units: UnitSystem): WindowWords =>
  jobWords(scenario).frame(scenario, wordingOf(units))
