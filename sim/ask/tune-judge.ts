/**
 * What a set of gains is worth: margins of the loops at every working point, and runs on the softest, the nominal and the stiffest
 * work, which must be done well with the wanted effort, in time, and with enough to spare.
 */
import { jobOf } from '../job/index.ts'
import type { JobTune } from '../job/job.ts'
import { loopsOf } from '../loops/jobs/index.ts'
import { type Edit, editScenario, type JobId, type Scenario } from '../scenario/index.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { loopMargins } from './loop-margins.ts'
import type { AnyRunner } from './runner.ts'
import { type HeldParts, heldShare } from './tune-share.ts'

/** A figure of the three runs (`Job.tune` says which of the job's), or the share of work done well as required over the spread of the file. */
export type TuneFigure = 'time' | 'peak' | 'ripple'
export type TuneObjective = TuneFigure | 'share'

export interface TuneOptions {
  strategy: StrategyId
  objective: TuneObjective
  /** Least phase margin [deg] and highest peak sensitivity at any working point. */
  phaseMargin: number
  peakSensitivity: number
  /** Share by which the stiffness of the work varies. */
  spread: number
  /** Least share of the effort that the setting means, friction against it, that must stand once it has settled; `REACH` if left out. */
  reach?: number | undefined
  /** Longest time until the work is done [s]; without bound if left out. */
  within?: number | undefined
  /** Least that is left to the edges of the verdict; 0 if left out. */
  spare?: number | undefined
  /** Parts that the share is taken over, the same for all gains; `SHARE_PARTS` if left out. */
  parts?: number | undefined
}

const SHARE_PARTS = 100

/** Common practice, no source. */
export const REACH = 0.9

/** The parts that gains are tried on, in their order. */
const PARTS = ['softest', 'nominal', 'stiffest'] as const
type Part = (typeof PARTS)[number]

/** A margin with what it is: phase margin [deg]; effort and bound [N or N·m]; a time that does not exist is null [s]. */
export type Miss =
  | { kind: 'range'; path: string }
  | { kind: 'unstable' }
  | { kind: 'phase margin' | 'peak sensitivity'; value: number }
  | { kind: 'part'; job: JobId; part: Part; verdict: string }
  | { kind: 'force'; job: JobId; part: Part; value: number; wanted: number }
  | { kind: 'time'; job: JobId; part: Part; value: number | null }
  | { kind: 'spare'; job: JobId; part: Part; value: number }

export interface TuneCandidate {
  /** What it would change on the bench. */
  edits: Edit[]
  /** Worst of the working points; null: no loop to look at. */
  phaseMargin: number | null
  peakSensitivity: number | null
  /** Worst of the three runs; null where one was not done well, or has no such figure. */
  time: number | null
  peak: number | null
  ripple: number | null
  settled: number | null
  spare: number | null
  /** Share of work done well as required over the spread; null: not asked, not sound, or given up once more were lost than by the best before. */
  share: number | null
  /** It keeps the margins and does all three as wanted; else `miss` is what it misses first. */
  sound: boolean
  miss: Miss | null
}

export class TuneJudge {
  private readonly scenario: Scenario
  private readonly options: TuneOptions
  private readonly run: AnyRunner
  private readonly least: number
  private readonly parts: HeldParts

  constructor(scenario: Scenario, options: TuneOptions, run: AnyRunner) {
    this.scenario = scenario
    this.options = options
    this.run = run
    this.parts = { strategy: options.strategy, run, order: inOrder(options.parts ?? SHARE_PARTS), fewest: Infinity }
    this.least = (options.reach ?? REACH) * strategyOf(options.strategy).forceOf(scenario).least
  }

  /** `whole`: figures of the runs even where a margin is missed. */
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
    const done = this.runs(tuned.scenario, candidate)
    if (miss) return { ...done, sound: false, miss }
    if (!done.sound || this.options.objective !== 'share') return done
    return { ...done, share: heldShare(tuned.scenario, this.parts) }
  }

  private marginMissed({ phaseMargin, peakSensitivity }: TuneCandidate, stable: boolean): Miss | null {
    if (!stable) return { kind: 'unstable' }
    if (phaseMargin !== null && phaseMargin < this.options.phaseMargin)
      return { kind: 'phase margin', value: phaseMargin }
    return peakSensitivity !== null && peakSensitivity > this.options.peakSensitivity
      ? { kind: 'peak sensitivity', value: peakSensitivity }
      : null
  }

  private runs(scenario: Scenario, candidate: TuneCandidate): TuneCandidate {
    const { strategy, spread } = this.options
    const { job } = scenario
    const { well, tune } = jobOf(scenario)
    const found: Figures[] = []
    let missed: Miss | null = null
    for (const [n, factor] of [1 - spread, 1, 1 + spread].entries()) {
      const part = PARTS[n]!
      const { verdict, metrics } = this.run(loopsOf(scenario).stiffened(scenario, factor), strategy).result
      if (verdict !== well) return { ...candidate, miss: { kind: 'part', job, part, verdict } }
      const figures = figuresOf(tune, metrics)
      missed ??= this.runMissed(scenario, figures, part)
      found.push(figures)
    }
    const all = (key: keyof Figures) => {
      const values = found.map((figures) => figures[key]).filter((value) => value !== null)
      return values.length === found.length ? values : null
    }
    const most = (key: keyof Figures) => (all(key) ? Math.max(...all(key)!) : null)
    const least = (key: keyof Figures) => (all(key) ? Math.min(...all(key)!) : null)
    return {
      ...candidate,
      time: most('time'),
      peak: most('peak'),
      ripple: most('ripple'),
      settled: least('settled'),
      spare: least('spare'),
      sound: missed === null,
      miss: missed,
    }
  }

  private runMissed(scenario: Scenario, { settled, time, spare }: Figures, part: Part): Miss | null {
    const { within, spare: wanted = 0 } = this.options
    const { job } = scenario
    if (jobOf(scenario).tune.takes(scenario) && (settled ?? 0) < this.least)
      return { kind: 'force', job, part, value: settled ?? 0, wanted: this.least }
    if (within !== undefined && !(time !== null && time <= within)) return { kind: 'time', job, part, value: time }
    return spare !== null && spare < wanted ? { kind: 'spare', job, part, value: spare } : null
  }
}

type Figures = Record<TuneFigure | 'settled' | 'spare', number | null>

function figuresOf(tune: JobTune, metrics: Record<string, number | null>): Figures {
  const at = (id: string) => metrics[id] ?? null
  const spares = tune.spare.map(at).filter((value) => value !== null)
  return {
    time: at(tune.time),
    peak: at(tune.peak),
    ripple: at(tune.ripple),
    settled: at(tune.settled),
    spare: spares.length > 0 ? Math.min(...spares) : null,
  }
}

const inOrder = (count: number) => Array.from({ length: count }, (_, index) => index)

const UNKNOWN: TuneCandidate = {
  edits: [],
  phaseMargin: null,
  peakSensitivity: null,
  time: null,
  peak: null,
  ripple: null,
  settled: null,
  spare: null,
  share: null,
  sound: false,
  miss: null,
}
