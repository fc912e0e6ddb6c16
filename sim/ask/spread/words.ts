/** Random words that belong to a place: asked for again, in whatever order, they are the same. Integers of 32 bits throughout. */

const STRIDE = 0x9e3779b9
const SPAN = 4294967296

/** Every bit of the result depends on every bit of `word`: the finaliser of MurmurHash3 (Appleby 2011). */
function mixed(word: number): number {
  let h = word
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return h ^ (h >>> 16)
}

/** The word of a key at a place, −2³¹ … 2³¹ − 1. */
export const wordAt = (key: number, place: number): number => mixed(mixed(place ^ key) + STRIDE + key)

/** A key of its own for a list of whole numbers of up to 2⁵³. */
export const keyOf = (...path: number[]): number =>
  path.reduce((key, part) => wordAt(wordAt(key, part | 0), Math.floor(part / SPAN) | 0), STRIDE | 0)

/** In the middle of one of 2³² equal parts of 0 … 1, so never 0 nor 1. */
export const unitOf = (word: number): number => ((word >>> 0) + 0.5) / SPAN

/**
 * What stands at `place` in an arrangement of 0 … size − 1 that belongs to the key, each as likely: the exchanges of Fisher and Yates,
 * followed back from that place.
 */
export function arranged(key: number, place: number, size: number): number {
  let at = place
  for (let k = 1; k < size; k++) {
    const other = Math.floor(unitOf(wordAt(key, k)) * (k + 1))
    if (at === k) at = other
    else if (at === other) at = k
  }
  return at
}
