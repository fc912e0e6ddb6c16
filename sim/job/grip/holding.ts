/** What friction of two pads can hold, in closed form. */
import { power } from '../../core/elementary.ts'

/**
 * Factor on the coefficients at `normal` [N] at one contact: µ = µ₀·(N/N₀)^(m−1), m = 1 on hard pads and 2/3 where a soft round
 * contact's area follows Hertz (Bowden and Tabor, The Friction and Lubrication of Solids, 1950).
 */
export function loadFactor(loadExponent: f64, referenceForce: f64, normal: f64): f64 {
  return loadExponent < 1 && normal > 0 ? power(normal / referenceForce, loadExponent - 1) : 1
}

/** Force at one of two contacts [N] whose friction, with coefficient `friction` at N₀, carries `load` [N] across the grip. */
export function holdingForce(friction: f64, loadExponent: f64, referenceForce: f64, load: f64): f64 {
  const each: f64 = load / (2 * friction)
  return loadExponent < 1 && each > 0 ? referenceForce * power(each / referenceForce, 1 / loadExponent) : each
}
