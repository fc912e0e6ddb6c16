/** What stands beside the force window: where its lower edge depends on whether the axis keeps its place, and what its upper one means. */
import type { Scenario } from '../scenario/index.ts'

/** `stiff`: from where on an axis holds that keeps its place, already in words; null: from nothing on. */
export const stiffWords = (stiff: string | null): string =>
  `The lower edge is that of an axis that yields to the arm, as one at its current limit or without power does; one that keeps its place holds ${stiff === null ? 'with any force' : `from ${stiff}`}.`

/** What the lowest of the part's damage limits means. */
export function damageWord({
  part: { markForce = Infinity, yieldForce = Infinity, crackForce = Infinity },
}: Pick<Scenario, 'part'>): string {
  if (crackForce <= Math.min(markForce, yieldForce)) return 'breaks'
  return yieldForce <= markForce ? 'dents' : 'marks'
}
