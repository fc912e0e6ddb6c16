/** Seeded noise from integer operations alone: mulberry32, four uniform draws summed to a near-normal one of unit rms. */
import { Block, State } from './block.ts'
import { nextFour, scrambled, strode, whole } from './native.ts'

const SPAN: f64 = 4294967296

class NoiseState extends State {
  /** A 32-bit integer. */
  word: f64 = 0
}

export class Noise extends Block {
  readonly state: NoiseState = new NoiseState()

  /** Uniform in [0, 1). */
  uniform(): f64 {
    const word: i32 = strode(whole(this.state.word), 1)
    this.state.word = word
    return scrambled(word) / SPAN
  }

  /** Mean 0, rms 1, bounded at ±√12. */
  normal(): f64 {
    const word: i32 = whole(this.state.word)
    this.state.word = strode(word, 4)
    return (nextFour(word) / SPAN - 2) * 1.7320508075688772
  }
}

/** A sequence of its own for a seed, a whole number. */
export function seeded(seed: f64): Noise {
  const noise = new Noise()
  noise.state.word = seed
  return noise
}
