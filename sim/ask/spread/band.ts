/** Between which values the traces of many parts run: quantiles in each of a fixed number of equal intervals of time. */

import type { Channel, Traces } from '../../run/channels.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import type { AnyRunner } from '../runner.ts'
import { batchesOf, rangeOf, type SpreadStudy } from './batch.ts'
import { BEYOND } from './beyond.ts'
import { drawing } from './draw.ts'
import type { Crew } from './tasks.ts'

/** Intervals of time over the whole run. */
const INTERVALS = 300

/** The least and the greatest of each interval, so that no peak falls between two instants: a row a part and channel, NaN where nothing was run. */
export interface Envelopes {
  least: Float32Array
  most: Float32Array
}

export interface TraceBand {
  /** Middles of the intervals [s]. */
  time: Float64Array
  /** By channel [SI]: BEYOND of the parts have their least of the interval below `low`, as many their greatest above `high`. */
  low: Partial<Record<Channel, Float64Array>>
  high: Partial<Record<Channel, Float64Array>>
}

export interface BandStudy extends SpreadStudy {
  channels: Channel[]
}

/** Grips the parts of a batch by one strategy and keeps their envelopes. */
export function envelopeRunner(study: BandStudy, run: AnyRunner): (batch: number, strategy: StrategyId) => Envelopes {
  const draw = drawing(study.scenario, study)
  return (batch, strategy) => {
    const [first, end] = rangeOf(batch, study.grips)
    const size = (end - first) * study.channels.length * INTERVALS
    const envelopes = { least: new Float32Array(size).fill(Number.NaN), most: new Float32Array(size).fill(Number.NaN) }
    for (let index = first; index < end; index++) {
      const { scenario, faults } = draw(index)
      const traces = faults.length > 0 ? null : tracesOf(scenario, strategy, run)
      for (const [at, channel] of study.channels.entries())
        if (traces)
          enclose(traces, channel, scenario.run.duration, envelopes, (index - first) * study.channels.length + at)
    }
    return envelopes
  }
}

/** Null: the grip would take more steps than a run may. */
function tracesOf(scenario: Scenario, strategy: StrategyId, run: AnyRunner): Traces | null {
  try {
    return run(scenario, strategy, { traces: true }).traces
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

function enclose(traces: Traces, channel: Channel, duration: number, { least, most }: Envelopes, row: number): void {
  const { time, [channel]: values } = traces
  for (const [at, value] of values.entries()) {
    const place = row * INTERVALS + Math.min(INTERVALS - 1, Math.floor((time[at]! / duration) * INTERVALS))
    // The first of an interval replaces what is no number.
    if (!(least[place]! <= value)) least[place] = value
    if (!(most[place]! >= value)) most[place] = value
  }
}

/**
 * The band of one strategy. `told` hears of the share that is done and returns whether to go on; null: it was stopped. Rejects with a
 * Refusal where the correlations of the scenario contradict each other.
 */
export async function runBand(
  study: BandStudy,
  strategy: StrategyId,
  crew: Crew,
  told: (done: number) => boolean = () => true,
): Promise<TraceBand | null> {
  const pieces: Envelopes[] = []
  const items = Array.from({ length: batchesOf(study.grips) }, (_, batch) => ({ batch, strategy }))
  let going = true
  await crew.work('envelopes', study, items, (envelopes) => {
    pieces.push(envelopes)
    going = told(pieces.length / items.length)
    return going
  })
  return going ? bandOf(study, pieces) : null
}

function bandOf({ channels, scenario }: BandStudy, pieces: readonly Envelopes[]): TraceBand {
  const step = scenario.run.duration / INTERVALS
  const time = Float64Array.from({ length: INTERVALS }, (_, at) => (at + 0.5) * step)
  const over = (share: number, of: keyof Envelopes) =>
    Object.fromEntries(
      channels.map((channel, at) => [
        channel,
        time.map((_, interval) => quantileOver(pieces, { of, at, interval, channels: channels.length, share })),
      ]),
    )
  return { time, low: over(BEYOND, 'least'), high: over(1 - BEYOND, 'most') }
}

interface Column {
  of: keyof Envelopes
  /** Which channel, and of how many. */
  at: number
  channels: number
  interval: number
  share: number
}

/** Of what all parts have in one interval; by a straight line between neighbours (Hyndman and Fan 1996, type 7). NaN of nothing. */
function quantileOver(pieces: readonly Envelopes[], { of, at, channels, interval, share }: Column): number {
  const found: number[] = []
  for (const { [of]: rows } of pieces)
    for (let place = at * INTERVALS + interval; place < rows.length; place += channels * INTERVALS)
      if (!Number.isNaN(rows[place]!)) found.push(rows[place]!)
  const sorted = Float64Array.from(found).sort()
  const rank = share * (sorted.length - 1)
  const below = Math.floor(rank)
  const [low, high] = [sorted[below] ?? Number.NaN, sorted[Math.min(below + 1, sorted.length - 1)] ?? Number.NaN]
  return low + (rank - below) * (high - low)
}
