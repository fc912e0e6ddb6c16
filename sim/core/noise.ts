/** Seeded noise from integer operations alone: mulberry32, four uniform draws summed to a near-normal one of unit rms. */
import { Block, State } from './block.ts'
import { product, unsigned, whole } from './native.ts'

const STRIDE: i32 = 0x6d2b79f5
const SPAN: f64 = 4294967296

/** One of the numbers 0 … 2³² − 1. */
function scrambled(word: i32): f64 {
  let t: i32 = product(word ^ (word >>> 15), 1 | word)
  t = (t + product(t ^ (t >>> 7), 61 | t)) ^ t
  return unsigned(t ^ (t >>> 14))
}

class NoiseState extends State {
  /** A 32-bit integer. */
  word: f64 = 0
}

export class Noise extends Block {
  readonly state: NoiseState = new NoiseState()

  /** Uniform in [0, 1). */
  uniform(): f64 {
    const word: i32 = (whole(this.state.word) + STRIDE) | 0
    this.state.word = word
    return scrambled(word) / SPAN
  }

  /** Mean 0, rms 1, bounded at ±√12. */
  normal(): f64 {
    const a: i32 = (whole(this.state.word) + STRIDE) | 0
    const b: i32 = (a + STRIDE) | 0
    const c: i32 = (b + STRIDE) | 0
    const d: i32 = (c + STRIDE) | 0
    this.state.word = d
    return ((scrambled(a) + scrambled(b) + scrambled(c) + scrambled(d)) / SPAN - 2) * 1.7320508075688772
  }
}

/** A sequence of its own for a seed, a whole number. */
export function seeded(seed: f64): Noise {
  const noise = new Noise()
  noise.state.word = seed
  return noise
}
