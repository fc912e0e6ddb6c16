/** The points of a study: parts of every quantity's law, 0 < u < 1, from integers alone, so the same on every machine. */
import { latin } from './hypercube.ts'
import { MOST_DIMENSIONS, owen, sobolWord } from './sobol.ts'
import { keyOf, unitOf, wordAt } from './words.ts'

export const SAMPLINGS = ['sobol', 'hypercube', 'random'] as const
export type Sampling = (typeof SAMPLINGS)[number]

/** So many consecutive samples belong to one scrambling, and are computed together. */
export const BATCH = 20
/** Independent randomisations of the same points, between which the error is measured. */
export const SCRAMBLINGS = 10
/** Batches of a scrambling that make a larger hypercube together. */
const SLICES = 5

export interface Sampled {
  sampling: Sampling
  /** Quantities that scatter; a Sobol' sequence goes to MOST_DIMENSIONS of them. */
  dimension: number
  /** A whole number. */
  seed: number
}

const batchOf = (index: number) => Math.floor(index / BATCH)

/** Which scrambling a sample belongs to: batches go round. */
export const scramblingOf = (index: number): number => batchOf(index) % SCRAMBLINGS

/** Which of its scrambling's points a sample is. */
const placeOf = (index: number) => BATCH * Math.floor(batchOf(index) / SCRAMBLINGS) + (index % BATCH)

/**
 * Sample `index` = 0, 1, 2 … of a study: the same whatever was asked before and however many follow, and its first coordinates are
 * those of the same study of fewer quantities. Throws a RangeError for more dimensions than the sampling has.
 */
export function pointsOf({ sampling, dimension, seed }: Sampled): (index: number) => Float64Array {
  if (sampling === 'sobol' && dimension > MOST_DIMENSIONS) {
    throw new RangeError(`A Sobol' sequence has ${MOST_DIMENSIONS} dimensions here, not ${dimension}.`)
  }
  const keys = Array.from({ length: SCRAMBLINGS }, (_, scrambling) =>
    Int32Array.from({ length: dimension }, (_, k) => keyOf(SAMPLINGS.indexOf(sampling), seed, scrambling, k)),
  )
  const coordinate = COORDINATES[sampling]
  return (index) => {
    const own = keys[scramblingOf(index)]!
    const place = placeOf(index)
    const point = new Float64Array(dimension)
    for (let k = 0; k < dimension; k++) point[k] = coordinate(own[k]!, place, k)
    return point
  }
}

/** By the key of scrambling and dimension, the point's place in its scrambling and the dimension. */
const COORDINATES: Record<Sampling, (key: number, place: number, dimension: number) => number> = {
  sobol: (key, place, dimension) => owen(sobolWord(place, dimension), key),
  hypercube: (key, place) => latin(key, place, BATCH, SLICES),
  random: (key, place) => unitOf(wordAt(key, place)),
}
