/**
 * Robust tune: a search over gains for the best grip among those that keep their margins at every working point and hold the
 * softest, the nominal and the stiffest part. A wide grid first, then narrow ones about the two ends of the trade-off found.
 */

import type { Metrics, Verdict } from '../job/grip/result.ts'
import { analyseLoops } from '../loops/analyse.ts'
import type { LoopId } from '../loops/model.ts'
import { type Edit, editScenario, readPath, type Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { gainsFor, positionBandwidth } from './fit-axis.ts'
import { type Runner, runHere } from './runner.ts'

export type TuneObjective = 'gripTime' | 'peakForce' | 'forceRipple'

export interface TuneOptions {
  strategy: StrategyId
  objective: TuneObjective
  /** Least phase margin [deg] and highest peak sensitivity at any working point. */
  phaseMargin: number
  peakSensitivity: number
  /** Share by which the part's stiffness varies. */
  spread: number
}

export interface TuneCandidate {
  /** What it would change on the bench. */
  edits: Edit[]
  /** Bandwidth [rad/s] and damping ratio of the inner loop, factor on the force loop's gain. */
  bandwidth: number
  damping: number
  forceFactor: number
  /** Worst of the working points; null: no loop to look at. */
  phaseMargin: number | null
  peakSensitivity: number | null
  /** Worst of the three parts; null where one was not held. */
  gripTime: number | null
  peakForce: number | null
  forceRipple: number | null
  /** It keeps the margins and holds all three parts; else `miss` is what it misses first. */
  sound: boolean
  miss: Miss | null
}

/** A margin with what it is: phase margin [deg]. */
export type Miss =
  | { kind: 'range'; path: string }
  | { kind: 'unstable' }
  | { kind: 'phase margin' | 'peak sensitivity'; value: number }
  | { kind: 'part'; part: 'softest' | 'nominal' | 'stiffest'; verdict: Verdict }

export interface TuneProgress {
  candidate: TuneCandidate
  /** The gains on the bench, judged alike; its figures are there even where it misses a margin. */
  present: TuneCandidate
  done: number
  /** At most so many in all. */
  of: number
}

interface Point {
  bandwidth: number
  damping: number
  forceFactor: number
}

const WIDE = [0.35, 0.5, 0.7, 1, 1.4, 2, 2.8]
const NARROW = [0.85, 1, 1.18]
/** The parts that a candidate is tried on, in their order. */
const PARTS = ['softest', 'nominal', 'stiffest'] as const
const NARROW_FORCE = [0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.4, 1.6]

export function* tuneGains(scenario: Scenario, options: TuneOptions, run = runHere): Generator<TuneProgress> {
  const { objective, strategy } = options
  const sensed = strategy === 'sensed-force'
  const middle: Point = { bandwidth: positionBandwidth(scenario), damping: 0.8, forceFactor: 1 }
  const present = judgePresent(scenario, options, middle, run)
  const wide = grid(
    middle,
    sensed ? [0.7, 1, 1.4] : WIDE,
    sensed ? [1] : [0.7, 1, 1.3],
    sensed ? [0.25, 0.5, 1, 2, 4, 8, 16] : [1],
  )
  const about = (at: Point) =>
    grid(at, sensed ? [1] : NARROW, sensed ? [1] : [0.9, 1, 1.1], sensed ? NARROW_FORCE : [1]).filter(
      (point) => !alike(point, at),
    )
  const of = wide.length + 2 * about(middle).length
  const seen: TuneCandidate[] = []
  const judged = (point: Point): TuneProgress => {
    const candidate = judgePoint(scenario, options, point, run)
    seen.push(candidate)
    return { candidate, present, done: seen.length, of }
  }
  for (const point of wide) yield judged(point)
  const ends = new Set([objective, objective === 'gripTime' ? 'peakForce' : 'gripTime'] as const)
  for (const centre of new Set([...ends].map((end) => bestOf(seen, end))))
    if (centre) for (const point of about(centre)) yield judged(point)
}

/** Best sound candidate, or null where none is. */
export function bestOf(candidates: TuneCandidate[], objective: TuneObjective): TuneCandidate | null {
  const sound = candidates.filter((candidate) => candidate.sound && candidate[objective] !== null)
  sound.sort((a, b) => a[objective]! - b[objective]!)
  return sound[0] ?? null
}

/** Sound candidates that no other beats in both grip time and peak force, by grip time: the trade-off to choose from. */
export function tradeOff(candidates: TuneCandidate[]): TuneCandidate[] {
  const sound = candidates.filter(({ sound: ok, gripTime, peakForce }) => ok && gripTime !== null && peakForce !== null)
  sound.sort((a, b) => a.gripTime! - b.gripTime! || a.peakForce! - b.peakForce!)
  let lowest = Number.POSITIVE_INFINITY
  return sound.filter(({ peakForce }) => {
    if (peakForce! >= lowest) return false
    lowest = peakForce!
    return true
  })
}

function grid(at: Point, bandwidths: number[], dampings: number[], forces: number[]): Point[] {
  return bandwidths.flatMap((b) =>
    dampings.flatMap((d) =>
      forces.map((f) => ({
        bandwidth: at.bandwidth * b,
        damping: at.damping * d,
        forceFactor: at.forceFactor * f,
      })),
    ),
  )
}

const alike = (a: Point, b: Point) =>
  a.bandwidth === b.bandwidth && a.damping === b.damping && a.forceFactor === b.forceFactor

const unjudged = (point: Point, edits: Edit[]): TuneCandidate => ({
  bandwidth: point.bandwidth,
  damping: point.damping,
  forceFactor: point.forceFactor,
  edits,
  phaseMargin: null,
  peakSensitivity: null,
  gripTime: null,
  peakForce: null,
  forceRipple: null,
  sound: false,
  miss: null,
})

function judgePoint(scenario: Scenario, options: TuneOptions, point: Point, run: Runner): TuneCandidate {
  const edits = editsFor(scenario, options.strategy, point)
  const candidate = unjudged(point, edits)
  const tuned = editScenario(scenario, edits)
  if (!tuned.ok) return missing(candidate, { kind: 'range', path: tuned.faults[0]!.path })
  const checked = checkMargins(tuned.scenario, options, candidate)
  return checked.miss === null ? grips(tuned.scenario, options, checked, run) : checked
}

function judgePresent(scenario: Scenario, options: TuneOptions, point: Point, runner: Runner): TuneCandidate {
  const edits = editsFor(scenario, options.strategy, point).map(({ path }) => ({
    path,
    value: readPath(scenario, path),
  }))
  const checked = checkMargins(scenario, options, unjudged(point, edits))
  const { miss } = checked
  const run = grips(scenario, options, checked, runner)
  return miss === null ? run : { ...run, sound: false, miss }
}

const missing = (candidate: TuneCandidate, miss: Miss): TuneCandidate => ({ ...candidate, miss })

/** The candidate with its worst margins, and with the first that it misses. */
function checkMargins(scenario: Scenario, options: TuneOptions, before: TuneCandidate): TuneCandidate {
  const { stable, ...margins } = worstMargins(scenario, options)
  const candidate = { ...before, ...margins }
  const { phaseMargin, peakSensitivity } = margins
  if (!stable) return missing(candidate, { kind: 'unstable' })
  if (phaseMargin !== null && phaseMargin < options.phaseMargin)
    return missing(candidate, { kind: 'phase margin', value: phaseMargin })
  if (peakSensitivity !== null && peakSensitivity > options.peakSensitivity)
    return missing(candidate, { kind: 'peak sensitivity', value: peakSensitivity })
  return candidate
}

/** Gains on the bench for a point of the search. */
function editsFor(scenario: Scenario, strategy: StrategyId, { bandwidth, damping, forceFactor }: Point): Edit[] {
  const { servo, velocity } = gainsFor(scenario, scenario.actuator, bandwidth, damping)
  if (strategy !== 'sensed-force') return Object.entries(servo).map(([key, value]) => ({ path: `servo.${key}`, value }))
  const { kp, ki, kd } = scenario.strategies.sensedForce
  const force = Object.entries({ kp, ki, kd }).map(([key, value]) => ({
    path: `strategies.sensedForce.${key}`,
    value: Number((value * forceFactor).toPrecision(4)),
  }))
  const inner = Object.entries(velocity).map(([key, value]) => ({
    path: `strategies.sensedForce.velocity.${key}`,
    value,
  }))
  return [...force, ...inner]
}

function worstMargins(scenario: Scenario, { strategy, spread }: TuneOptions) {
  const loops: LoopId[] = strategy === 'sensed-force' ? ['velocity', 'force'] : ['position']
  const { loops: rows } = analyseLoops(scenario, { loops, spread })
  const figures = (pick: (row: (typeof rows)[number]) => number | null | undefined) =>
    rows.map(pick).filter((value): value is number => value !== null && value !== undefined)
  const phases = figures(({ margins }) => margins?.phaseMargin)
  const peaks = figures(({ margins }) => margins?.peakSensitivity)
  return {
    stable: rows.every(({ stable }) => stable),
    phaseMargin: phases.length > 0 ? Math.min(...phases) : null,
    peakSensitivity: peaks.length > 0 ? Math.max(...peaks) : null,
  }
}

/** The three parts, run; the candidate with the worst of each figure. */
function grips(
  scenario: Scenario,
  { strategy, spread }: TuneOptions,
  candidate: TuneCandidate,
  run: Runner,
): TuneCandidate {
  const runs = [1 - spread, 1, 1 + spread].map((factor) => {
    const part = { ...scenario.part, stiffness: scenario.part.stiffness * factor }
    return run({ ...scenario, part }, strategy).result
  })
  const lost = runs.findIndex(({ verdict }) => verdict !== 'held')
  if (lost >= 0) return missing(candidate, { kind: 'part', part: PARTS[lost]!, verdict: runs[lost]!.verdict })
  const worst = (key: keyof Metrics) => {
    const values = runs.map(({ metrics }) => metrics[key])
    return values.some((value) => value === null) ? null : Math.max(...(values as number[]))
  }
  return {
    ...candidate,
    gripTime: worst('gripTime'),
    peakForce: worst('peakForce'),
    forceRipple: worst('forceRipple'),
    sound: true,
  }
}
