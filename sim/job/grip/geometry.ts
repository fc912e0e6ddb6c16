/** Where jaws and part stand to each other. */
import type { Scenario } from '../../scenario/index.ts'

type Jaws = Pick<Scenario, 'jaws'>

/** Contacts whose force the drive carries: both of a mirrored pair, one against an anvil. */
export const contactsOf = ({ jaws }: Jaws) => (jaws.layout === 'mirrored' ? 2 : 1)

/** Mass of the driven jaws [kg]. */
export const jawMassOf = (scenario: Jaws) => contactsOf(scenario) * scenario.jaws.mass

/** Travel of a jaw from the open position to first touch of the nominal part [m]. */
export const travelToContact = (scenario: Pick<Scenario, 'jaws' | 'part'>) =>
  (scenario.jaws.opening - scenario.part.width) / contactsOf(scenario)
