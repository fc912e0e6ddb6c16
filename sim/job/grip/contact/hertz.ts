import { ContactLaw } from './law.ts'

/** F = K·e^1.5: rounded solid surfaces (Hertz 1882; Johnson, Contact Mechanics, 1985, ch. 4). */
export class Hertz extends ContactLaw {
  proportional(): bool {
    return false
  }

  shape(e: f64): f64 {
    return e * Math.sqrt(e)
  }

  slope(e: f64): f64 {
    return 1.5 * Math.sqrt(e)
  }

  inverse(value: f64): f64 {
    let y: f64 = value > 1 ? value : 1 // Newton on y³ = value from above
    for (let n: i32 = 0; n < 200; n++) {
      const next: f64 = y - (y * y * y - value) / (3 * y * y)
      if (!(next < y)) break
      y = next
    }
    return y * y
  }

  balance(stiffness: f64, spring: f64, load: f64, guess: f64): f64 {
    // With y = √e: stiffness·y³ + spring·y² = load, convex and rising, so Newton converges from the spring's own answer.
    let y: f64 = Math.sqrt(guess > 0 ? guess : load / spring)
    for (let n: i32 = 0; n < 40; n++) {
      const y2: f64 = y * y
      const change: f64 = (stiffness * y2 * y + spring * y2 - load) / (3 * stiffness * y2 + 2 * spring * y)
      y -= change
      if (change * change <= 1e-26 * y * y) break
    }
    return y * y
  }
}
