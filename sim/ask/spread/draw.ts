/** The parts of a study, one by one: part `index` is the same whoever draws it, in whatever order, on whatever machine. */
import { Refusal, readPath, type Scenario, type Varied } from '../../scenario/index.ts'
import { type Variation, varying } from '../../scenario/vary.ts'
import { correlator } from './correlate.ts'
import { type Law, quantileOf } from './laws.ts'
import { pointsOf, type Sampling } from './points.ts'
import { wordAt } from './words.ts'

export interface Draws {
  sampling: Sampling
  /** Of the sample; the noise of every grip has a seed of its own from it. */
  seed: number
}

/** A scenario with one part's values, and where in its law each of them lies. */
export interface Part extends Variation {
  index: number
  /** Share of the law below each value, 0 … 1. */
  shares: Float64Array
}

/** Quantities that vary, as their entries stand in the file. */
export const variedPaths = ({ spread }: Scenario) => spread.varies.map(({ path }) => path)

/** The law that an entry of the file means. */
export function lawOf({ law, share, ...sizes }: Varied): Law {
  switch (law) {
    case 'normal': {
      // A centred process: its tolerance is three standard deviations times its capability.
      const { within } = sizes
      const cut = { share, ...(within !== undefined && { within }) }
      return { law, sd: sizes.sd ?? sizes.tolerance! / (3 * sizes.cpk!), ...cut }
    }
    case 'uniform':
      return { law, half: sizes.half!, share }
    case 'triangular':
      return { law, low: sizes.low!, mode: sizes.mode!, high: sizes.high!, share }
    case 'lognormal':
      return { law, factor: sizes.factor! }
    case 'measured':
      return { law, values: sizes.values!, share }
  }
}

/** Values of the quantities from the shares of their laws. Throws a Refusal where correlations contradict each other. */
export function valuesOf(scenario: Scenario): (shares: Float64Array) => number[] {
  const { varies, together } = scenario.spread
  const paths = variedPaths(scenario)
  const laws = varies.map(lawOf)
  const values = paths.map((path) => readPath(scenario, path) as number)
  const pairs = together.map(({ paths: [a, b], correlation }) => ({
    a: paths.indexOf(a!),
    b: paths.indexOf(b!),
    correlation,
  }))
  const joined = correlator(paths.length, pairs)
  if (joined.kind === 'contradiction') {
    const named = joined.pairs.map(({ a, b, correlation }) => `${paths[a]} with ${paths[b]} ${correlation}`)
    throw new Refusal({
      path: 'spread.together',
      given: named.join(', '),
      allowed: 'correlations that can all be true at once',
    })
  }
  return (shares) => {
    const mixed = joined.apply(shares)
    return laws.map((law, at) => quantileOf(law, values[at]!, mixed[at]!))
  }
}

/** Makes the part with given shares of the laws; `seed` is that of its noise. */
export function partsFrom(scenario: Scenario): (index: number, shares: Float64Array, seed: number) => Part {
  const valueAt = valuesOf(scenario)
  const vary = varying(scenario, [...variedPaths(scenario), 'run.seed'])
  return (index, shares, seed) => {
    const { values, cut, ...made } = vary([...valueAt(shares), seed])
    return { index, shares, ...made, values: values.slice(0, -1), cut: cut.slice(0, -1) }
  }
}

/** Throws a Refusal where correlations contradict each other. */
export function drawing(scenario: Scenario, draws: Draws): (index: number) => Part {
  const part = partsFrom(scenario)
  const points = pointsOf({ ...draws, dimension: scenario.spread.varies.length })
  return (index) => part(index, points(index), noiseSeed(draws.seed, index))
}

/** Of part `index`, a whole number of 32 bits. */
export const noiseSeed = (seed: number, index: number) => wordAt(seed, index) >>> 0
