import type { ContactLaw } from './law.ts'

/** F = K·e^1.5: rounded solid surfaces (Hertz 1882; Johnson, Contact Mechanics, 1985, ch. 4). */
export class Hertz implements ContactLaw {
  readonly proportional = false

  shape(e: number): number {
    return e * Math.sqrt(e)
  }

  slope(e: number): number {
    return 1.5 * Math.sqrt(e)
  }

  inverse(value: number): number {
    let y = value > 1 ? value : 1 // Newton on y³ = value from above
    for (let n = 0; n < 200; n++) {
      const next = y - (y * y * y - value) / (3 * y * y)
      if (!(next < y)) break
      y = next
    }
    return y * y
  }

  balance(stiffness: number, spring: number, load: number, guess: number): number {
    // With y = √e: stiffness·y³ + spring·y² = load, convex and rising, so Newton converges from the spring's own answer.
    let y = Math.sqrt(guess > 0 ? guess : load / spring)
    for (let n = 0; n < 40; n++) {
      const y2 = y * y
      const change = (stiffness * y2 * y + spring * y2 - load) / (3 * stiffness * y2 + 2 * spring * y)
      y -= change
      if (change * change <= 1e-26 * y * y) break
    }
    return y * y
  }
}
