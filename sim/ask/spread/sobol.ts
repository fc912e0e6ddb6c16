/** The Sobol' sequence in Gray-code order (Antonov and Saleev 1979), any point of it by its number, and its scrambling after Owen. */
import { STARTS } from './directions.ts'
import { unitOf, wordAt } from './words.ts'

const BITS = 32
export const MOST_DIMENSIONS = STARTS.length + 1

/** Direction numbers of a dimension, the most significant first (Bratley and Fox 1988). */
function directionsOf(dimension: number): Uint32Array {
  const directions = new Uint32Array(BITS)
  const [inner = 0, ...starts] = dimension === 0 ? [] : STARTS[dimension - 1]!
  const degree = starts.length
  for (let k = 0; k < BITS; k++) {
    if (degree === 0) directions[k] = 1 << (BITS - 1 - k)
    else if (k < degree) directions[k] = starts[k]! << (BITS - 1 - k)
    else {
      let next = directions[k - degree]! ^ (directions[k - degree]! >>> degree)
      for (let j = 1; j < degree; j++) if ((inner >>> (degree - 1 - j)) & 1) next ^= directions[k - j]!
      directions[k] = next
    }
  }
  return directions
}

const DIRECTIONS = Array.from({ length: MOST_DIMENSIONS }, (_, dimension) => directionsOf(dimension))

/** Coordinate of point `index`, 0 … 2³² − 1, along `dimension`, counted from 0, as a 32-bit word. */
export function sobolWord(index: number, dimension: number): number {
  const directions = DIRECTIONS[dimension]!
  let word = 0
  for (let gray = (index ^ (index >>> 1)) >>> 0, k = 0; gray !== 0; gray >>>= 1, k++) {
    if (gray & 1) word ^= directions[k]!
  }
  return word >>> 0
}

/** Point `index` of the sequence as it is, the first at the origin, in [0, 1). */
export const sobol = (index: number, dimension: number): Float64Array =>
  Float64Array.from({ length: dimension }, (_, k) => sobolWord(index, k) / 2 ** BITS)

/**
 * Nested uniform scrambling (Owen 1995): every digit is turned or not by a throw of its own for each of the digits above it. What is
 * balanced stays balanced, and each point by itself is uniform.
 */
export function owen(word: number, key: number): number {
  let turned = 0
  for (let k = 0; k < BITS; k++) {
    const above = k === 0 ? 1 : (word >>> (BITS - k)) | (1 << k)
    turned |= (wordAt(key, above) >>> 31) << (BITS - 1 - k)
  }
  return unitOf(word ^ turned)
}
