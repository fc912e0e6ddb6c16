/**
 * How often the limits that a study states of 95 % hold the truth, over repeated studies of something whose truth is a closed form or one
 * integral: what drives a figure, what drives failures, and rare shares. Shares of parts and means are held in `npm test`.
 */
import { type Driver, designOf, driversOf } from '../../sim/ask/spread/drivers.ts'
import { SAMPLINGS, type Sampling } from '../../sim/ask/spread/points.ts'
import { limitsOf, rareShare } from '../../sim/ask/spread/rare.ts'
import { goal, row } from './report.ts'

const STUDIES = 2000
/** Samples of a study's drivers, each of one grip a quantity and two more. */
const SAMPLES = [200, 1000]
/** 95 ± 2 % of the repeats; where the truth is an end of what can be, limits that stop there miss on one side only, and no most is asked. */
const [LEAST, MOST] = [0.93, 0.97]

interface Case {
  name: string
  figure(u: Float64Array): number
  /** Shares of the variance by quantity. */
  first: number[]
  total: number[]
}

/** Ishigami and Homma 1990, a = 7, b = 0.1. */
const ISHIGAMI: Case = {
  name: 'a figure (Ishigami)',
  figure: (u) => {
    const [x, y, z] = Array.from(u, (each) => Math.PI * (2 * each - 1)) as [number, number, number]
    return Math.sin(x) + 7 * Math.sin(y) ** 2 + 0.1 * z ** 4 * Math.sin(x)
  },
  first: [0.313905, 0.442411, 0],
  total: [0.557589, 0.442411, 0.243684],
}

/** A part fails where u + v/2 is below the edge, 0 < u, v < 1; the third quantity does nothing. By hand: what is left once one is known is linear. */
function failures(edge: number): Case {
  // P(fail | u) = 2(edge − u) and P(fail | v) = edge − v/2, within 0 … 1; edge ≤ 1/2.
  const share = edge * edge
  const variance = share * (1 - share)
  const ofU = 4 * (edge ** 3 / 3) - share ** 2
  const ofV = (2 * edge ** 3) / 3 - share ** 2
  return {
    name: `failures, ${(100 * share).toFixed(1)} %`,
    figure: (u) => (u[0]! + u[1]! / 2 < edge ? 1 : 0),
    first: [ofU / variance, ofV / variance, 0],
    total: [1 - ofV / variance, 1 - ofU / variance, 0],
  }
}

const CASES = [ISHIGAMI, failures(0.5), failures(0.22)]
/** β of a linear limit state: Φ(−β) = 1 in 4,299 and 1 in 294,319 (table of the normal law). */
const RARE: [number, number][] = [
  [3.5, 2.326291e-4],
  [4.5, 3.397673e-6],
]

export async function coverage(): Promise<void> {
  for (const each of CASES)
    for (const samples of SAMPLES) for (const sampling of SAMPLINGS) drivers(each, samples, sampling)
  for (const [beta, share] of RARE) for (const dimension of [2, 6]) await rare(beta, share, dimension)
}

function drivers({ name, figure, first, total }: Case, samples: number, sampling: Sampling): void {
  const dimension = first.length
  const truths = [...first, ...total]
  const held = truths.map(() => 0)
  let told = 0
  for (let seed = 0; seed < STUDIES; seed++) {
    const design = designOf({ sampling, dimension, seed })
    const rows = Array.from({ length: samples }, (_, index) =>
      Float64Array.from({ length: dimension + 2 }, (_, part) => figure(design(index, part))),
    )
    const found = driversOf(rows)
    if (!found) continue
    told++
    for (const [k, truth] of truths.entries()) {
      const { low, high } = indexOf(found, k, dimension)
      // Where the truth is an end of the range, rounding must not decide.
      if (low <= truth + 1e-6 && truth <= high + 1e-6) held[k]!++
    }
  }
  const shares = held.map((count) => count / told)
  const label = `${name}, ${samples} ${sampling}`
  const said = shares.map((share) => (100 * share).toFixed(1)).join(' ')
  const fair = (share: number, k: number) => share >= LEAST && (share <= MOST || truths[k] === 0)
  goal(label, `${said} % of ${told}`, '93 to 97 (of 0: 93 or more)', shares.every(fair))
}

const indexOf = (found: readonly Driver[], k: number, dimension: number) =>
  k < dimension ? found[k]!.first : found[k - dimension]!.total

async function rare(beta: number, truth: number, dimension: number): Promise<void> {
  const state = (z: Float64Array) => beta - z.reduce((sum, one) => sum + one, 0) / Math.sqrt(z.length)
  let held = 0
  let told = 0
  const logs: number[] = []
  for (let seed = 0; seed < STUDIES; seed++) {
    const answer = await rareShare(async (points) => points.map(state), { dimension, seed })
    if (answer.kind !== 'share') continue
    told++
    logs.push(Math.log(answer.share / truth))
    const { low, high } = limitsOf(answer.share, answer.variation)
    if (low <= truth && truth <= high) held++
  }
  const share = held / told
  const label = `rare, 1 in ${Math.round(1 / truth).toLocaleString('en')}, of ${dimension} quantities`
  goal(label, `${(100 * share).toFixed(1)} % of ${told}`, '93 to 97', share >= LEAST && share <= MOST)
  const mean = logs.reduce((sum, each) => sum + each, 0) / logs.length
  row('  mean of share over truth', Math.exp(mean).toFixed(3))
}
