/**
 * What is kept of a study as its batches come in. All of it is counts, exact sums and outcomes by index, so that the same batches give
 * the same tally to the last bit, in whatever order and through however many pieces they came.
 */
import type { JobId } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { type Batch, failedAt, figureAt } from './batch.ts'
import { ExactSum, type SumText } from './exact-sum.ts'
import { demandsOf, type Fate, fatesOf, figuresOf, isFit } from './outcome.ts'
import { BATCH, SCRAMBLINGS, scramblingOf } from './points.ts'
import { Sketch, type SketchJson } from './quantiles.ts'

/** Parts that are remembered as the worst. */
const WORST = 20

/** A part by its place among the worst: the less it has to spare, the worse. */
export interface Worst {
  index: number
  spare: number
}

/** One strategy's runs of one job. */
export interface Tally {
  job: JobId
  strategy: StrategyId
  /** Which batches are in. */
  batches: Set<number>
  /** A character a part in the order of indices, its place in the job's fates as a letter, a capital where it met everything; ' ' is not run. */
  fates: string[]
  /** Of each fate, and of those that met everything, in each scrambling. */
  byFate: number[][]
  fit: number[]
  sizes: number[]
  /** Of each demand, in each scrambling. */
  failed: number[][]
  /** Of each figure: its values in each scrambling, and all of them in a sketch. */
  sums: ExactSum[][]
  sketches: Sketch[]
  worst: Worst[]
  /** Of each quantity that varies, how many parts have it cut. */
  cut: number[]
}

const zeros = () => Array.from({ length: SCRAMBLINGS }, () => 0)

export const emptyTally = (job: JobId, strategy: StrategyId, quantities: number): Tally => ({
  job,
  strategy,
  batches: new Set(),
  fates: [],
  byFate: fatesOf(job).map(zeros),
  fit: zeros(),
  sizes: zeros(),
  failed: demandsOf(job).map(zeros),
  sums: figuresOf(job).map(() => zeros().map(() => new ExactSum())),
  sketches: figuresOf(job).map(() => new Sketch()),
  worst: [],
  cut: Array.from({ length: quantities }, () => 0),
})

/** Adds a batch that is not yet in. */
export function count(tally: Tally, batch: Batch): void {
  const { job } = tally
  const [fates, demands] = [fatesOf(job), demandsOf(job)]
  const scrambling = scramblingOf(batch.batch * BATCH)
  tally.batches.add(batch.batch)
  tally.fates[batch.batch] = lettersOf(job, batch)
  for (const [row, place] of batch.fates.entries()) {
    const failed = failedAt(demands, batch, row)
    tally.sizes[scrambling]!++
    tally.byFate[place]![scrambling]!++
    for (const demand of failed) tally.failed[demands.indexOf(demand)]![scrambling]!++
    if (isFit(job, { fate: fates[place]!, failed })) tally.fit[scrambling]!++
    for (const figure of tally.sketches.keys()) {
      const value = figureAt(batch, row, figure)
      if (!Number.isFinite(value)) continue
      tally.sums[figure]![scrambling]!.add(value)
      tally.sketches[figure]!.add(value)
    }
    const spare = batch.spare[row]!
    if (!Number.isNaN(spare)) keepWorst(tally, [{ index: batch.batch * BATCH + row, spare }])
  }
  for (const [at, parts] of batch.cut.entries()) tally.cut[at]! += parts
}

const lettersOf = (job: JobId, { fates, failed }: Batch) => {
  const names = fatesOf(job)
  return Array.from(fates, (place, row) => {
    const letter = String.fromCharCode(97 + place)
    return failed[row] === 0 && isFit(job, { fate: names[place]!, failed: [] }) ? letter.toUpperCase() : letter
  }).join('')
}

/** What became of part `index`; null: it has not been run. */
export function fateAt(tally: Tally, index: number): { fate: Fate; fit: boolean } | null {
  const letter = tally.fates[Math.floor(index / BATCH)]?.[index % BATCH]
  if (letter === undefined) return null
  return { fate: fatesOf(tally.job)[letter.toLowerCase().charCodeAt(0) - 97]!, fit: letter !== letter.toLowerCase() }
}

function keepWorst(tally: Tally, more: Worst[]): void {
  const limit = tally.worst.length < WORST ? Number.POSITIVE_INFINITY : tally.worst.at(-1)!.spare
  if (more.every(({ spare }) => spare > limit)) return
  tally.worst = [...tally.worst, ...more].sort((a, b) => a.spare - b.spare || a.index - b.index).slice(0, WORST)
}

/** Adds all of `other`, which shares no batch with `tally`. */
export function joinTally(tally: Tally, other: Tally): void {
  const add = (into: number[], from: number[]) => {
    for (const [at, value] of from.entries()) into[at]! += value
  }
  for (const batch of other.batches) {
    tally.batches.add(batch)
    tally.fates[batch] = other.fates[batch]!
  }
  for (const [at, counts] of other.byFate.entries()) add(tally.byFate[at]!, counts)
  for (const [at, counts] of other.failed.entries()) add(tally.failed[at]!, counts)
  add(tally.fit, other.fit)
  add(tally.sizes, other.sizes)
  add(tally.cut, other.cut)
  for (const [figure, sums] of other.sums.entries())
    for (const [at, sum] of sums.entries()) tally.sums[figure]![at]!.join(sum)
  for (const [figure, sketch] of other.sketches.entries()) tally.sketches[figure]!.join(sketch)
  keepWorst(tally, other.worst)
}

/** As a file holds it: plain JSON. The job is that of the study beside it. */
export interface TallyText {
  strategy: StrategyId
  /** The fates of each batch that is in, by its number. */
  fates: [batch: number, letters: string][]
  byFate: number[][]
  fit: number[]
  sizes: number[]
  failed: number[][]
  sums: SumText[][]
  sketches: SketchJson[]
  worst: Worst[]
  cut: number[]
}

export const tallyText = ({ job: _, batches, fates, sums, sketches, ...plain }: Tally): TallyText => ({
  ...plain,
  fates: [...batches].sort((a, b) => a - b).map((batch) => [batch, fates[batch]!]),
  sums: sums.map((each) => each.map((sum) => sum.toJSON())),
  sketches: sketches.map((sketch) => sketch.toJSON()),
})

export function tallyFrom(job: JobId, { fates, sums, sketches, ...plain }: TallyText): Tally {
  const letters: string[] = []
  for (const [batch, text] of fates) letters[batch] = text
  return {
    job,
    ...structuredClone(plain),
    batches: new Set(fates.map(([batch]) => batch)),
    fates: letters,
    sums: sums.map((each) => each.map((sum) => ExactSum.from(sum))),
    sketches: sketches.map((sketch) => Sketch.from(sketch)),
  }
}
