/**
 * Robust tune: a search over all gains, each free by itself and zero included, for the best runs among those that are sound
 * (`tune-judge.ts`). First gains designed from bandwidths, the gains on the bench with one of them off, and gains drawn at random;
 * then steps of one gain at a time about the two ends of the trade-off found.
 */
import { seeded } from '../core/noise.ts'
import { type Edit, readPath, type Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import { gainsFor, positionBandwidth } from './fit-axis.ts'
import { type AnyRunner, runHere } from './runner.ts'
import { type TuneCandidate, TuneJudge, type TuneObjective, type TuneOptions } from './tune-judge.ts'

export interface TuneProgress {
  candidate: TuneCandidate
  /** The gains on the bench, judged alike; its figures are there even where it misses a margin. */
  present: TuneCandidate
  done: number
  /** At most so many in all. */
  of: number
}

/** In the order of the strategy's own list. */
type Gains = readonly number[]

/** Factors on the bandwidth of the position or the velocity loop, damping ratios, and factors on the gains of the force loop. */
const WIDE = [0.35, 0.5, 0.7, 1, 1.4, 2, 2.8]
const INNER = [0.5, 1, 2]
const DAMPINGS = [0.7, 1.1]
const FORCES = [0.25, 0.5, 1, 2, 4, 8, 16]
/** Gains that are drawn, how far about the middle [ratio], and the share of them that is off. */
const DRAWN = 64
const REACHED = 12
const OFF = 0.2
/** Ratios of the steps about the ends of the trade-off, one round after another; a round that moves nowhere is not repeated. */
const STEPS = [1.8, 1.8, 1.8, 1.35, 1.15]

export function* tuneGains(
  scenario: Scenario,
  options: TuneOptions,
  run: AnyRunner = runHere as AnyRunner,
): Generator<TuneProgress, void, undefined> {
  const { objective, strategy } = options
  const paths = strategyOf(strategy).search.gains
  const judge = new TuneJudge(scenario, options, run)
  const onBench = paths.map((path) => readPath(scenario, path) as number)
  const editsFor = (gains: Gains): Edit[] => paths.map((path, n) => ({ path, value: gains[n]! }))
  const present = judge.judge(editsFor(onBench), true)
  const designs = strategyOf(strategy).sensed ? forceDesigns(scenario) : positionDesigns(scenario)
  const middle = onBench.map((gain, n) => gain || designs.middle[n]!)
  const wide = [onBench, ...designs.all, ...offOf(onBench), ...drawn(middle)]
  const ends: TuneObjective[] = [objective, objective === 'time' ? 'peak' : 'time']
  const of = wide.length + ends.length * STEPS.length * about(middle, middle, 2).length
  const seen = new Map<string, { gains: Gains; candidate: TuneCandidate }>()
  function* judged(all: Gains[]): Generator<TuneProgress, void, undefined> {
    for (const each of all) {
      const gains = each.map((gain) => Number(gain.toPrecision(4)))
      if (seen.has(gains.join())) continue
      const candidate = judge.judge(editsFor(gains))
      seen.set(gains.join(), { gains, candidate })
      yield { candidate, present, done: seen.size, of }
    }
  }
  yield* judged(wide)
  for (const end of ends)
    for (const step of STEPS) {
      const all = [...seen.values()]
      const candidates = all.map(({ candidate }) => candidate)
      const best = bestOf(candidates, end) ?? strongest(candidates)
      const found = all.find(({ candidate }) => candidate === best)
      if (found) yield* judged(about(found.gains, middle, step))
    }
}

/** Best sound candidate, or null where none is. */
export function bestOf(candidates: TuneCandidate[], objective: TuneObjective): TuneCandidate | null {
  const sound = candidates.filter((candidate) => candidate.sound && candidate[objective] !== null)
  // Of gains that do as much of the work well, those that do it sooner.
  const late = ({ time }: TuneCandidate) => time ?? Number.POSITIVE_INFINITY
  const cost = (candidate: TuneCandidate) => candidate[objective]! * (objective === 'share' ? -1 : 1)
  sound.sort((a, b) => cost(a) - cost(b) || (late(a) < late(b) ? -1 : Number(late(a) > late(b))))
  return sound[0] ?? null
}

/** Where no effort settles, gains that act more strongly come nearest to it. */
function strongest(candidates: TuneCandidate[]): TuneCandidate | null {
  const [first] = candidates.filter(({ sound }) => sound).sort((a, b) => b.settled! - a.settled!)
  return first ?? null
}

/** Sound candidates that no other beats in both time and peak, by time: the trade-off to choose from. */
export function tradeOff(candidates: TuneCandidate[]): TuneCandidate[] {
  const sound = candidates.filter(({ sound: ok, time, peak }) => ok && time !== null && peak !== null)
  sound.sort((a, b) => a.time! - b.time! || a.peak! - b.peak!)
  let lowest = Number.POSITIVE_INFINITY
  return sound.filter(({ peak }) => {
    if (peak! >= lowest) return false
    lowest = peak!
    return true
  })
}

interface Designs {
  all: Gains[]
  /** The design at the present bandwidth. */
  middle: Gains
}

/** Each with its integral and without. */
function positionDesigns(scenario: Scenario): Designs {
  const bandwidth = positionBandwidth(scenario) || UNKNOWN_BANDWIDTH
  const at = (factor: number, damping: number): Gains => {
    const { kp, ki, kd } = gainsFor(scenario, scenario.actuator, bandwidth * factor, damping).servo
    return [kp, ki, kd]
  }
  const all = WIDE.flatMap((factor) => DAMPINGS.map((damping) => at(factor, damping)))
  return { all: all.flatMap((gains) => [gains, gains.with(1, 0)]), middle: at(1, 0.8) }
}

/** Velocity loops from bandwidths, under the present force loop by factors. */
function forceDesigns(scenario: Scenario): Designs {
  const { kp, ki, kd, target, speedLimit } = scenario.strategies.sensedForce
  const bandwidth = positionBandwidth(scenario) || UNKNOWN_BANDWIDTH
  const first = kp || ki || kd ? [kp, ki, kd] : [speedLimit / Math.max(target, 1e-3) / 10, 0, 0]
  const at = (inner: number, force: number): Gains => {
    const { velocity } = gainsFor(scenario, scenario.actuator, bandwidth * inner)
    return [...first.map((gain) => gain * force), velocity.kp, velocity.ki]
  }
  const proportional = first[0]!
  // The integral acts as much as the proportional part after a tenth of a second, the derivative within a millisecond.
  const middle = [proportional, 10 * proportional, proportional / 1000, ...at(1, 1).slice(3)]
  return { all: INNER.flatMap((inner) => FORCES.map((force) => at(inner, force))), middle }
}

/** Where the bench has no proportional gain to go by: 20 Hz. */
const UNKNOWN_BANDWIDTH = 2 * Math.PI * 20

/** One gain off at a time. */
const offOf = (gains: Gains): Gains[] => gains.flatMap((gain, n) => (gain > 0 ? [gains.with(n, 0)] : []))

/** About a middle on a logarithmic scale, some of them off; the same for the same middle. */
function drawn(middle: Gains): Gains[] {
  const noise = seeded(1)
  return Array.from({ length: DRAWN }, () =>
    middle.map((gain) => (noise.uniform() < OFF ? 0 : gain * REACHED ** (2 * noise.uniform() - 1))),
  )
}

/** One gain a step up, a step down, or off; one that is off as in the middle, or a tenth of that. */
const about = (gains: Gains, middle: Gains, step: number): Gains[] =>
  gains.flatMap((gain, n) => {
    const others = gain > 0 ? [gain * step, gain / step, 0] : [middle[n]!, middle[n]! / 10]
    return others.map((other) => gains.with(n, other))
  })
