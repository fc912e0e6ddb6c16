/** What friction of two pads can hold, in closed form. */
import { power } from '../../core/elementary.ts'

/**
 * Factor on the coefficients at `normal` [N] at one contact: µ = µ₀·(N/N₀)^(m−1), m = 1 on hard pads and 2/3 where a soft round
 * contact's area follows Hertz (Bowden and Tabor, The Friction and Lubrication of Solids, 1950).
 */
export function loadFactor(loadExponent: f64, referenceForce: f64, normal: f64): f64 {
  return loadExponent < 1 && normal > 0 ? power(normal / referenceForce, loadExponent - 1) : 1
}

/**
 * What pulls on the pads for each kilogram [m/s²]: the pull itself and, where the centre of mass lies `below` and `beside` their centre
 * [m], its torque over the radius r of the limit surface [m].
 */
export function pullOnPads(down: f64, side: f64, below: f64, beside: f64, radius: f64): f64 {
  const torque: f64 = (below * side - beside * down) / radius
  return Math.sqrt(down * down + side * side + torque * torque)
}

/** Force needed at each contact [N] where the axis keeps its place: `held` against sliding, and none lost under a pull along [m/s²]. */
export function heldStiffly(held: f64, part: f64, along: f64): f64 {
  return Math.max(held, (part * Math.abs(along)) / 2)
}

/**
 * The same where the axis yields to the arm and only its force is given: the pull along the grip then moves part and driven mass
 * `back` [kg] as one, and the fixed jaw feels (m + M)·a. `rest` is the pull of gravity along [m/s²], under which the jaws closed.
 * Statics; `along` is positive towards the fixed jaw.
 */
export function heldYielding(held: f64, part: f64, back: f64, along: f64, rest: f64): f64 {
  const lost: f64 = Math.max(0, back * (rest - along))
  const off: f64 = Math.max(0, -part * along)
  return Math.max(heldStiffly(held, part, along), lost + Math.max(held + off / 2, off))
}

/** Force at one of two contacts [N] whose friction, with coefficient `friction` at N₀, carries `load` [N] across the grip. */
export function holdingForce(friction: f64, loadExponent: f64, referenceForce: f64, load: f64): f64 {
  const each: f64 = load / (2 * friction)
  return loadExponent < 1 && each > 0 ? referenceForce * power(each / referenceForce, 1 / loadExponent) : each
}
