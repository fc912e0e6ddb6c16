/** The groups of the file that a press has and a grip has not. */
import type { Scenario } from '../../scenario/index.ts'
import type { PressGroups } from '../../scenario/schema/press/index.ts'

/** Those of a scenario whose job is `press`. */
export const pressIn = (scenario: Scenario): PressGroups => scenario as unknown as PressGroups
