import type { ContactLaw } from './law.ts'

/** F = K·e: a shell, a block, a foam. */
export const linear: ContactLaw = {
  exponent: 1,
  shape: (e) => e,
  slope: () => 1,
  inverse: (value) => value,
  balance: (stiffness, spring, load) => load / (stiffness + spring),
}
