import { power } from '../../../core/elementary.ts'
import { ContactLaw } from './law.ts'

/** F = K·e^n, n between 1 and 2: between a shell and a point. */
export class PowerLaw extends ContactLaw {
  exponent: f64 = 1

  proportional(): bool {
    return false
  }

  shape(e: f64): f64 {
    return e > 0 ? power(e, this.exponent) : 0
  }

  slope(e: f64): f64 {
    return e > 0 ? this.exponent * power(e, this.exponent - 1) : 0
  }

  inverse(value: f64): f64 {
    return value > 0 ? power(value, 1 / this.exponent) : 0
  }

  balance(stiffness: f64, spring: f64, load: f64, guess: f64): f64 {
    // Convex and rising, so Newton converges from above: from the smaller of what spring and part would do alone.
    const most: f64 = Math.min(load / spring, this.inverse(load / stiffness))
    let e: f64 = guess > 0 && guess < most ? guess : most
    for (let n: i32 = 0; n < 40; n++) {
      const shape: f64 = this.shape(e)
      const change: f64 = (stiffness * shape + spring * e - load) / ((stiffness * this.exponent * shape) / e + spring)
      e -= change
      if (change * change <= 1e-26 * e * e) break
    }
    return e
  }
}
