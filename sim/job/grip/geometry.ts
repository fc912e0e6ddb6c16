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

/** Radius of gyration of the part about the grip axis [m]: as named, or that of a disc as wide. */
export const gyrationOf = ({ gyration, width }: Scenario['part']): number => gyration ?? width / Math.sqrt(8)

/** Radius of the face of a pad [m]: as named, or half of its length. */
export const padRadiusOf = ({ padRadius, padLength }: Scenario['jaws']): number => padRadius ?? padLength / 2
