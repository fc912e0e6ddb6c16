/** What drives the failures of a study: the grips that the indices take, and what they answer. */
import type { StrategyId } from '../../strategy/strategy.ts'
import type { SpreadStudy } from './batch.ts'
import { noiseSeed, variedPaths } from './draw.ts'
import { type Driver, designOf, driversOf, partsOf } from './drivers.ts'
import type { Outcome } from './outcome.ts'
import type { Crew, Placed } from './tasks.ts'

/** By the index of a sample, what its parts have to spare; below 0 they fail. */
export type DriverRows = Map<number, number[]>

export interface Drivers {
  /** What is driven: whether a part fails, or, where too few or too many fail, how much it has to spare. */
  of: 'failing' | 'spare'
  drivers: (Driver & { path: string })[]
}

/** A share of failures from which on they rank the quantities by themselves. */
const COMMON = 0.05

/** Grips what the given samples take. Part 0 of each is the very part of the study, its noise included. */
export async function runDrivers(
  study: SpreadStudy,
  strategy: StrategyId,
  crew: Crew,
  indices: number[],
  told: (done: number) => boolean = () => true,
): Promise<DriverRows> {
  const itemAt = sampling(study)
  const rows: DriverRows = new Map()
  await crew.work('placed', { scenario: study.scenario, strategy }, indices.map(itemAt), (outcomes, at) => {
    rows.set(indices[at]!, rowOf(outcomes))
    return told(rows.size / indices.length)
  })
  return rows
}

/** The parts that a sample takes, each with its noise. */
function sampling({ scenario, sampling: kind, seed }: SpreadStudy): (index: number) => Placed {
  const dimension = scenario.spread.varies.length
  const design = designOf({ sampling: kind, dimension, seed })
  const parts = Array.from({ length: partsOf(dimension) }, (_, part) => part)
  return (index) => ({
    shares: parts.map((part) => design(index, part)),
    seeds: parts.map((part) => noiseSeed(part === 0 ? seed : seed ^ (part * 0x9e3779b1), index)),
  })
}

const rowOf = (outcomes: Outcome[]) => outcomes.map(({ spare }) => (Number.isNaN(spare) ? 0 : spare))

/** Null: nothing varies in what was gripped, or too little was. `rows` are those of samples 0, 1, 2 … without a gap. */
export function driversAnswer({ scenario }: SpreadStudy, rows: DriverRows): Drivers | null {
  const ordered = [...rows].sort(([a], [b]) => a - b).map(([, row]) => row)
  const failing = ordered.map((row) => row.map((spare) => (spare < 0 ? 1 : 0)))
  const share = failing.flat().reduce<number>((sum, each) => sum + each, 0) / Math.max(1, failing.flat().length)
  const common = share >= COMMON && share <= 1 - COMMON
  const found = driversOf(common ? failing : ordered)
  if (!found) return null
  const paths = variedPaths(scenario)
  return { of: common ? 'failing' : 'spare', drivers: found.map((driver, at) => ({ path: paths[at]!, ...driver })) }
}
