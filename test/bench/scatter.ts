/**
 * What a study of many parts costs: grips for a rare failure and points for a mean force against plain random ones, by counts; the cost
 * of a part as a study grows, and the memory of a million parts, told with stand-ins for the grips, which are the same at any size.
 */
import type { Runner } from '../../sim/ask/runner.ts'
import { normalQuantile } from '../../sim/ask/spread/distributions.ts'
import { runSpread } from '../../sim/ask/spread/run.ts'
import { runRare } from '../../sim/ask/spread/run-rare.ts'
import type { Tally } from '../../sim/ask/spread/tally.ts'
import { crewHere } from '../../sim/ask/spread/tasks.ts'
import { usualSpreads } from '../../sim/ask/spread/usual.ts'
import { run } from '../../sim/cli/core.ts'
import { PRESETS, type Scenario } from '../../sim/index.ts'
import { METRIC_IDS } from '../../sim/job/grip/result.ts'
import { clampFor } from '../checks/strength.ts'
import { goal, row } from './report.ts'

const TIMES_RARE = 50
const TIMES_MEAN = 5
/** Cost of a part of 10^5 over one of 10^3; a heap that grows is walked more often. */
const LINEAR = 1.3
const MEGABYTES = 300

const strategy = 'current-clamp' as const

export async function scatter(): Promise<void> {
  await rareGrips()
  await meanForce()
  await size()
}

const RARE = 1e-4

/** Against the grips of plain random sampling with the same error, of the search's own statement or of what it missed Φ by, if that is more. */
async function rareGrips(): Promise<void> {
  const scenario = clampFor(normalQuantile(1 - RARE))
  const found: { share: number; variation: number; grips: number }[] = []
  for (const seed of [1, 2, 3]) {
    const { rare, grips } = await runRare(scenario, { strategy, seed, size: 300 }, crewHere(run))
    if (rare.kind === 'share') found.push({ ...rare, grips })
  }
  const mean = (of: (each: (typeof found)[number]) => number) =>
    found.reduce((sum, each) => sum + of(each), 0) / found.length
  row('shares of a 1-in-10,000 failure', found.map(({ share }) => share.toExponential(2)).join(', '))
  const stated = mean(({ variation }) => variation ** 2)
  const missed = mean(({ share }) => (share / RARE - 1) ** 2)
  const grips = mean((each) => each.grips)
  row('coefficient of variation, stated / seen', `${Math.sqrt(stated).toFixed(3)} / ${Math.sqrt(missed).toFixed(3)}`)
  const times = (1 - RARE) / (RARE * Math.max(stated, missed)) / grips
  row('grips of a search', grips.toFixed(0))
  const met = found.length === 3 && times >= TIMES_RARE
  goal('grips saved against random ones', `${times.toFixed(0)} x`, `>= ${TIMES_RARE} x`, met)
}

/** Studies, of ten scramblings each, between whose means the error shows. */
const STUDIES = 3
const POINTS = 1000

async function meanForce(): Promise<void> {
  const { scenario } = PRESETS[0]!
  const varies = usualSpreads(scenario).map(({ varied }) => varied)
  for (const figure of ['peakForce', 'settledForce'] as const) {
    let [within, between, freedom] = [0, 0, 0]
    for (let seed = 1; seed <= STUDIES; seed++) {
      const study = { scenario: { ...scenario, spread: { varies, together: [] } }, strategies: [strategy], seed }
      const [tally] = await runSpread({ ...study, grips: POINTS, sampling: 'sobol' }, crewHere(run))
      const sums = tally!.sums[METRIC_IDS.indexOf(figure)]!
      const means = sums.map(({ mean }) => mean)
      const mean = means.reduce((sum, each) => sum + each, 0) / means.length
      between += means.reduce((sum, each) => sum + (each - mean) ** 2, 0)
      freedom += means.length - 1
      // Of random points the means of scramblings would scatter as one part does, over the root of their number.
      within += sums.reduce((sum, each) => sum + each.sd ** 2, 0) / sums.length / (POINTS / sums.length) / STUDIES
    }
    const times = (within * freedom) / between
    goal(`points for a mean ${figure}`, `${times.toFixed(1)} x fewer`, `>= ${TIMES_MEAN} x`, times >= TIMES_MEAN)
  }
}

/** Grips that cost nothing: figures from the mass of the part alone. */
const standIn = (({ part }: Scenario) => {
  const metrics = Object.fromEntries(METRIC_IDS.map((id, at) => [id, part.mass * (at + 1)]))
  return { result: { verdict: 'held', metrics, requirements: [], overloads: [] } }
}) as unknown as Runner

async function size(): Promise<void> {
  const costs: number[] = []
  const kept: Tally[] = []
  for (const grips of [1e3, 1e3, 1e4, 1e5, 1e6]) {
    kept.length = 0
    const before = process.cpuUsage()
    const study = { scenario: clampFor(3), strategies: [strategy], grips, seed: 1, sampling: 'sobol' as const }
    kept.push(...(await runSpread(study, crewHere(standIn))))
    const { user, system } = process.cpuUsage(before)
    costs.push((user + system) / grips)
    row(`${grips} parts, stand-ins for the grips`, `${costs.at(-1)!.toFixed(1)} us a part`)
  }
  // The first thousand is the engine's own start.
  const ratio = costs[3]! / costs[1]!
  goal('cost of a part of 10^5 over one of 10^3', ratio.toFixed(2), `<= ${LINEAR}`, ratio <= LINEAR)
  globalThis.gc?.()
  const { heapUsed, arrayBuffers } = process.memoryUsage()
  const used = (heapUsed + arrayBuffers) / 1e6
  row('parts kept', String(kept[0]!.sizes.reduce((sum, each) => sum + each, 0)))
  goal('memory of 10^6 parts', `${used.toFixed(0)} MB`, `< ${MEGABYTES} MB`, used < MEGABYTES)
}
