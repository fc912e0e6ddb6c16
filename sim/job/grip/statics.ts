/**
 * A grip as springs, on the contact law itself: each contact is a pad in series with half of the part, whose flattening e follows
 * F = K·f(e). No damping, no relaxation.
 */
import type { Scenario } from '../../scenario/index.ts'
import type { ContactLaw } from './contact/law.ts'
import { lawOf } from './contact/laws.ts'
import { contactsOf } from './geometry.ts'

type Gripped = Pick<Scenario, 'part' | 'jaws'>

/** Stiffness of two springs one behind the other [N/m]. */
export const inSeries = (a: number, b: number) => (a * b) / (a + b)

/** One contact at a force: squeeze of pad and half the part [m], tangents of half the part, of the pad and of both in series [N/m]. */
export interface Springs {
  squeeze: number
  part: number
  pad: number
  stiffness: number
}

/** Under `force` [N] the part is flattened as `elastic` [N] flattens it, which is more for one that has relaxed. */
export function springsAt({ part, jaws }: Gripped, force: number, elastic = force): Springs {
  const law = lawOf(part.exponent)
  const flattening = law.inverse(elastic / part.stiffness)
  const half = 2 * part.stiffness * law.slope(flattening)
  const pad = jaws.padStiffness
  return { squeeze: flattening / 2 + force / pad, part: half, pad, stiffness: inSeries(half, pad) }
}

/** Of the jaw against both contacts of a mirrored pair, or against the part on its anvil [N/m of jaw travel]. */
export const jawStiffness = (scenario: Pick<Scenario, 'jaws'>, contact: Pick<Springs, 'stiffness'>) =>
  contactsOf(scenario) === 2 ? 2 * contact.stiffness : contact.stiffness / 2

/**
 * Highest force at one contact [N] of a rigid mass [kg] that meets the part at `speed` [m/s], from the balance of energy: half of
 * m·v² goes into two pads, F²/(2·k_p) each, and into the part, K·∫f de; a part held between springs moves with them.
 */
export function impactForce({ part, jaws }: Gripped, mass: number, speed: number): number {
  const law = lawOf(part.exponent)
  const energy = (mass * speed * speed) / 2
  const K = part.stiffness
  if (energy === 0) return 0
  const left = (e: number) => {
    const force = K * law.shape(e)
    return (force * force) / jaws.padStiffness + K * areaUnder(law, e) - energy
  }
  const grows = (e: number) => K * law.shape(e) * ((2 * K * law.slope(e)) / jaws.padStiffness + 1)
  let e = 1
  while (left(e) < 0) e *= 2
  // It rises and is convex: Newton from above comes down to it.
  for (let n = 0; n < 200; n++) {
    const next = e - left(e) / grows(e)
    if (!(next < e)) break
    e = next
  }
  return K * law.shape(e)
}

/** Places and weights of Gauss and Legendre on −1 … 1, five of them, from the middle (Abramowitz and Stegun, table 25.4). */
const GAUSS = [
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
] as const

/** ∫f from 0 to e, with u = e·t² so that a law with a root in it is smooth in t; exact for e, e^1.5 and e². */
function areaUnder(law: ContactLaw, e: number): number {
  const part = (t: number) => law.shape(e * t * t) * 2 * t
  const places = GAUSS.flatMap(([place, weight]) =>
    place === 0
      ? [[0, weight]]
      : [
          [place, weight],
          [-place, weight],
        ],
  )
  return places.reduce((sum, [place, weight]) => sum + (weight! / 2) * part((1 + place!) / 2), 0) * e
}
