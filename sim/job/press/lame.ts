/**
 * Pressure and stresses of a press fit of two rings (Lamé's thick-walled cylinders: Budynas and Nisbett, Shigley's Mechanical Engineering
 * Design, 9th ed., sections 3-14 and 3-16, eq. 3-56; the same in DIN 7190-1). SI units.
 */

/** Radii of the inner ring's bore, of the joint, of the outer ring's outside [m]; moduli [Pa] and Poisson's ratios of both. */
export interface Fit {
  inside: number
  joint: number
  outside: number
  inner: { modulus: number; poisson: number }
  outer: { modulus: number; poisson: number }
}

/** (R² + r²)/(R² − r²): hoop stress over pressure at the pressed face of a ring between two radii. */
const hoop = (small: number, large: number) => (large * large + small * small) / (large * large - small * small)

/** Pressure in the joint for each metre of radial interference [Pa/m]. */
export function pressurePerOverlap({ inside, joint, outside, inner, outer }: Fit): number {
  const wall = (hoop(joint, outside) + outer.poisson) / outer.modulus
  const bush = (hoop(inside, joint) - inner.poisson) / inner.modulus
  return 1 / (joint * (wall + bush))
}

/** Hoop stress in the wall at the joint [Pa] under a pressure [Pa]. */
export const boreHoop = ({ joint, outside }: Fit, pressure: number): number => pressure * hoop(joint, outside)

/** Pressure at which the wall around the joint begins to flow [Pa]: (1 − Q²)/√3 of its yield stress, Q = d/D (DIN 7190-1, eq. 15). */
export function yieldPressure({ joint, outside }: Fit, yieldStress: number): number {
  const q = joint / outside
  return ((1 - q * q) / Math.sqrt(3)) * yieldStress
}
