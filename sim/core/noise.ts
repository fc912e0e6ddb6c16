/** Seeded noise from integer operations alone: mulberry32, four uniform draws summed to a near-normal one of unit rms. */
import { Block, State } from './block.ts'
import { product, unsigned } from './native.ts'

class NoiseState extends State {
  /** A 32-bit integer. */
  word: f64 = 0
}

export class Noise extends Block {
  readonly state: NoiseState = new NoiseState()

  /** Uniform in [0, 1). */
  uniform(): f64 {
    const word: i32 = ((this.state.word as i32) + 0x6d2b79f5) | 0
    this.state.word = word
    let t: i32 = product(word ^ (word >>> 15), 1 | word)
    t = (t + product(t ^ (t >>> 7), 61 | t)) ^ t
    return unsigned(t ^ (t >>> 14)) / 4294967296
  }

  /** Mean 0, rms 1, bounded at ±√12. */
  normal(): f64 {
    return (this.uniform() + this.uniform() + this.uniform() + this.uniform() - 2) * 1.7320508075688772
  }
}

/** A sequence of its own for a seed, a whole number. */
export function seeded(seed: f64): Noise {
  const noise = new Noise()
  noise.state.word = seed
  return noise
}
