/**
 * Latin hypercubes in slices (after Qian, Sliced Latin hypercube designs, J. Am. Stat. Assoc. 107, 2012): every slice is a hypercube
 * by itself, and so are all slices of a block together.
 */
import { arranged, keyOf, unitOf, wordAt } from './words.ts'

/**
 * A coordinate of point `index` along the dimension whose key is given. Each slice of `size` points has one in each of `size` equal
 * parts; the block of `slices` of them has one in each of size·slices parts.
 */
export function latin(key: number, index: number, size: number, slices: number): number {
  const place = index % size
  const slice = Math.floor(index / size) % slices
  const block = Math.floor(index / (size * slices))
  const coarse = arranged(keyOf(key, block, slice), place, size)
  const fine = arranged(keyOf(key, block, slices + coarse), slice, slices)
  return (coarse * slices + fine + unitOf(wordAt(key, index))) / (size * slices)
}
