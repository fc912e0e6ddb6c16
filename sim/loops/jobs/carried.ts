/**
 * What an output has before it on a spring, linear about a place: bushing and punch behind the give of ram and frame, a closure in its
 * chuck. Own linearisation of the laws in `job/press/load.ts` and `job/cap/load.ts`; units as of an output that travels.
 */
import { ELASTIC } from '../../axis/friction.ts'
import type { AxisPlant, PlantModel, PlantState, Weights } from '../axis-plant.ts'

/** The states of it, behind those of the axis: `twist` in place of `part` where nothing but the output holds it. */
export const CARRIED: readonly PlantState[] = ['part', 'partSpeed']
export const LOOSE: readonly PlantState[] = ['twist', 'partSpeed']

export interface Carried {
  /** [kg], and of the spring between output and it [N/m], [N·s/m]. */
  mass: number
  stiffness: number
  damping: number
  /** What holds it back, of its own states. */
  held: Weights
  /** Friction over which it slides; left out where bristles hold it at rest, which are a spring in `held`. */
  slides?: Sliding | undefined
}

/** A plant that the axis and what it carries make: m·v̇ = F − held − friction, F = k·(x − x_c) + c·(v − v_c), which the gauge feels. */
export function carriedPlant({ model, add }: AxisPlant, carried: Carried): PlantModel {
  const { mass, stiffness, damping, held, slides } = carried
  const loose = model.names.includes('twist')
  const way: Weights = loose ? { twist: stiffness } : { jaw: stiffness, part: -stiffness }
  const spring: Weights = { ...way, jawSpeed: damping, partSpeed: -damping }
  if (loose) add('twist', { jawSpeed: 1, partSpeed: -1 })
  else add('part', { partSpeed: 1 })
  add('jawSpeed', spring, -1 / model.jawMass)
  add('partSpeed', spring, 1 / mass)
  add('partSpeed', held, -1 / mass)
  if (slides) {
    const bending = bendingOf(slides)
    add('bristle', bending)
    add('partSpeed', { bristle: 1 }, -1 / mass)
    add('partSpeed', bending, -slides.lead / mass)
  }
  return { ...model, nearForce: spring, carried: mass }
}

/**
 * Bristles of `axis/friction.ts` that slide on at a steady speed while their level grows with the way. With y their force, L the level
 * and g(u) = α(u)·u the share of the motion by which they give way, ẏ = σ·v·(1 − g(y/L)).
 */
export interface Sliding {
  /** Level [N], stiffness of the bristles [N/m], damping over stiffness [s], speed [m/s]. */
  level: number
  stiffness: number
  lead: number
  speed: number
  /** How the level follows the states, and how it grows with the way as it slides on [N/m]. */
  follows: Weights
  grows: number
}

/**
 * δẏ = L′·δv − (σ·v·g′/L)·(δy − u·δL): they stand where they give way by 1 − L′/σ of the motion, and forget over a way of L/(σ·g′).
 */
function bendingOf({ level, stiffness, speed, follows, grows }: Sliding): Weights {
  const { share, slope } = standing(1 - grows / stiffness)
  const rate = (stiffness * speed * slope) / level
  const bending: Weights = { bristle: -rate }
  for (const [name, weight] of Object.entries(follows) as [PlantState, number][]) bending[name] = rate * share * weight
  bending.partSpeed = (bending.partSpeed ?? 0) + grows
  return bending
}

/** Where g is `wanted`: the share u of its level at which a bristle stands, and g′ there. */
function standing(wanted: number): { share: number; slope: number } {
  const at = (u: number) => {
    const w = Math.max(0, Math.min(1, (u - ELASTIC) / (1 - ELASTIC)))
    const gives = w * w * (3 - 2 * w)
    return { g: gives * u, slope: gives + (u * 6 * w * (1 - w)) / (1 - ELASTIC) }
  }
  if (!(wanted > 0)) return { share: ELASTIC, slope: 0 }
  let [low, high] = [ELASTIC, 1]
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2
    if (at(middle).g < wanted) low = middle
    else high = middle
  }
  return { share: high, slope: at(high).slope }
}
