/** The groups of the file that a web has and a grip has not. */
import type { Scenario } from '../../scenario/index.ts'
import type { WebGroups } from '../../scenario/schema/web/index.ts'

/** Those of a scenario whose job is `web`. */
export const webIn = (scenario: Scenario): WebGroups => scenario as unknown as WebGroups
