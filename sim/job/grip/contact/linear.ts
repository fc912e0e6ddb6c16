import { ContactLaw } from './law.ts'

/** F = K·e: a shell, a block, a foam. */
export class Linear extends ContactLaw {
  proportional(): bool {
    return true
  }

  shape(e: f64): f64 {
    return e
  }

  slope(_e: f64): f64 {
    return 1
  }

  inverse(value: f64): f64 {
    return value
  }

  balance(stiffness: f64, spring: f64, load: f64, _guess: f64): f64 {
    return load / (stiffness + spring)
  }
}
