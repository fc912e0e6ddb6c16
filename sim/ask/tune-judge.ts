/**
 * What a set of gains is worth: margins of the loops at every working point, and grips of the softest, the nominal and the stiffest
 * part, which must be held with the wanted force, in time, and with enough to spare.
 */
import type { Metrics, Verdict } from '../job/grip/result.ts'
import { type Edit, editScenario, type Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { loopMargins } from './loop-margins.ts'
import type { Runner } from './runner.ts'
import { type HeldParts, heldShare } from './tune-share.ts'

/** A figure of the three parts, or the share of parts held as required over the spread of the file. */
export type TuneFigure = 'gripTime' | 'peakForce' | 'forceRipple'
export type TuneObjective = TuneFigure | 'share'

export interface TuneOptions {
  strategy: StrategyId
  objective: TuneObjective
  /** Least phase margin [deg] and highest peak sensitivity at any working point. */
  phaseMargin: number
  peakSensitivity: number
  /** Share by which the part's stiffness varies. */
  spread: number
  /** Least share of the force that the setting means, friction against it, that must stand before the part is moved; `REACH` if left out. */
  reach?: number | undefined
  /** Longest grip time [s]; without bound if left out. */
  within?: number | undefined
  /** Least hold margin; 0 if left out. */
  holdMargin?: number | undefined
  /** Parts that the share is taken over, the same for all gains; `SHARE_PARTS` if left out. */
  parts?: number | undefined
}

const SHARE_PARTS = 100

/** Common practice, no source. */
export const REACH = 0.9

/** The parts that gains are tried on, in their order. */
const PARTS = ['softest', 'nominal', 'stiffest'] as const
type Part = (typeof PARTS)[number]

/** A margin with what it is: phase margin [deg]; force and bound [N]; a grip time that does not exist is null [s]. */
export type Miss =
  | { kind: 'range'; path: string }
  | { kind: 'unstable' }
  | { kind: 'phase margin' | 'peak sensitivity'; value: number }
  | { kind: 'part'; part: Part; verdict: Verdict }
  | { kind: 'force'; part: Part; value: number; wanted: number }
  | { kind: 'grip time'; part: Part; value: number | null }
  | { kind: 'hold margin'; part: Part; value: number }

export interface TuneCandidate {
  /** What it would change on the bench. */
  edits: Edit[]
  /** Worst of the working points; null: no loop to look at. */
  phaseMargin: number | null
  peakSensitivity: number | null
  /** Worst of the three parts; null where one was not held, or has no such figure. */
  gripTime: number | null
  peakForce: number | null
  forceRipple: number | null
  settledForce: number | null
  holdMargin: number | null
  /** Parts held as required over the spread; null: not asked, not sound, or given up once more were lost than by the best before. */
  share: number | null
  /** It keeps the margins and grips all three parts as wanted; else `miss` is what it misses first. */
  sound: boolean
  miss: Miss | null
}

export class TuneJudge {
  private readonly scenario: Scenario
  private readonly options: TuneOptions
  private readonly run: Runner
  private readonly least: number
  private readonly parts: HeldParts

  constructor(scenario: Scenario, options: TuneOptions, run: Runner) {
    this.scenario = scenario
    this.options = options
    this.run = run
    this.parts = { strategy: options.strategy, run, order: inOrder(options.parts ?? SHARE_PARTS), fewest: Infinity }
    this.least = (options.reach ?? REACH) * strategyOf(options.strategy).forceOf(scenario).least
  }

  /** `whole`: figures of the grips even where a margin is missed. */
  judge(edits: Edit[], whole = false): TuneCandidate {
    const tuned = editScenario(this.scenario, edits)
    if (!tuned.ok) return { ...UNKNOWN, edits, miss: { kind: 'range', path: tuned.faults[0]!.path } }
    const { stable, phaseMargin, peakSensitivity } = loopMargins(
      tuned.scenario,
      this.options.strategy,
      this.options.spread,
    )
    const candidate = { ...UNKNOWN, edits, phaseMargin, peakSensitivity }
    const miss = this.marginMissed(candidate, stable)
    if (miss && !whole) return { ...candidate, miss }
    const gripped = this.grips(tuned.scenario, candidate)
    if (miss) return { ...gripped, sound: false, miss }
    if (!gripped.sound || this.options.objective !== 'share') return gripped
    return { ...gripped, share: heldShare(tuned.scenario, this.parts) }
  }

  private marginMissed({ phaseMargin, peakSensitivity }: TuneCandidate, stable: boolean): Miss | null {
    if (!stable) return { kind: 'unstable' }
    if (phaseMargin !== null && phaseMargin < this.options.phaseMargin)
      return { kind: 'phase margin', value: phaseMargin }
    return peakSensitivity !== null && peakSensitivity > this.options.peakSensitivity
      ? { kind: 'peak sensitivity', value: peakSensitivity }
      : null
  }

  private grips(scenario: Scenario, candidate: TuneCandidate): TuneCandidate {
    const { strategy, spread } = this.options
    const found: Metrics[] = []
    let missed: Miss | null = null
    for (const [n, factor] of [1 - spread, 1, 1 + spread].entries()) {
      const part = { ...scenario.part, stiffness: scenario.part.stiffness * factor }
      const { verdict, metrics } = this.run({ ...scenario, part }, strategy).result
      if (verdict !== 'held') return { ...candidate, miss: { kind: 'part', part: PARTS[n]!, verdict } }
      missed ??= this.gripMissed(metrics, PARTS[n]!)
      found.push(metrics)
    }
    const all = (key: keyof Metrics) => {
      const values = found.map((metrics) => metrics[key]).filter((value) => value !== null)
      return values.length === found.length ? values : null
    }
    const most = (key: keyof Metrics) => (all(key) ? Math.max(...all(key)!) : null)
    const least = (key: keyof Metrics) => (all(key) ? Math.min(...all(key)!) : null)
    return {
      ...candidate,
      gripTime: most('gripTime'),
      peakForce: most('peakForce'),
      forceRipple: most('forceRipple'),
      settledForce: least('settledForce'),
      holdMargin: least('holdMargin'),
      sound: missed === null,
      miss: missed,
    }
  }

  private gripMissed({ settledForce, gripTime, holdMargin }: Metrics, part: Part): Miss | null {
    const { within, holdMargin: spare = 0 } = this.options
    if ((settledForce ?? 0) < this.least) return { kind: 'force', part, value: settledForce ?? 0, wanted: this.least }
    if (within !== undefined && !(gripTime !== null && gripTime <= within))
      return { kind: 'grip time', part, value: gripTime }
    return holdMargin !== null && holdMargin < spare ? { kind: 'hold margin', part, value: holdMargin } : null
  }
}

const inOrder = (count: number) => Array.from({ length: count }, (_, index) => index)

const UNKNOWN: TuneCandidate = {
  edits: [],
  phaseMargin: null,
  peakSensitivity: null,
  gripTime: null,
  peakForce: null,
  forceRipple: null,
  settledForce: null,
  holdMargin: null,
  share: null,
  sound: false,
  miss: null,
}
