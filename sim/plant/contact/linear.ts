import type { ContactLaw } from './law.ts'

/** F = K·e: a shell, a block, a foam. */
export class Linear implements ContactLaw {
  readonly proportional = true

  shape(e: number): number {
    return e
  }

  slope(_e: number): number {
    return 1
  }

  inverse(value: number): number {
    return value
  }

  balance(stiffness: number, spring: number, load: number, _guess: number): number {
    return load / (stiffness + spring)
  }
}
