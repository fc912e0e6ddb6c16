/** The groups of the file that a closure has and a grip has not. */
import type { Scenario } from '../../scenario/index.ts'
import type { CapGroups } from '../../scenario/schema/cap/index.ts'

/** Those of a scenario whose job is `cap`. */
export const capIn = (scenario: Scenario): CapGroups => scenario as unknown as CapGroups
