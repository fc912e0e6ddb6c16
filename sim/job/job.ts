/**
 * What a job says of itself outside the compiled core: how it is filled from a scenario, what its work asks of a strategy, and what
 * became of it. The cycle, the axis and the drive know none of it.
 */
import type { Output } from '../axis/fill.ts'
import type { Load } from '../axis/load.ts'
import type { LineFollower } from '../control/line-follower.ts'
import type { Edit, Scenario, StrategyId } from '../scenario/index.ts'
import type { JobLive } from './live.ts'
import type { LoadId } from './load-id.ts'
import type { Overload } from './ratings.ts'
import type { Requirement } from './requirements.ts'
import type { Sums } from './sums.ts'
import type { Usual } from './usual.ts'

/** A column of the record: SI unit of its values. */
export interface ChannelKind {
  id: string
  label: string
  unit: string
}

/** How a run left its rails; '' if it did not. */
export type Cause = '' | 'numbers' | 'travel' | 'position loop' | 'current loop'

/** A run as it has ended. */
export interface RunEnd<Worked extends Load = Load> {
  load: Worked
  sums: Sums
  /** Period of the current loop and integration step [s]. */
  period: number
  step: number
  /** When the strategy had halted its move or taken over [s]; NaN: it had not. */
  engaged: number
  /** When the run left its rails [s], and how; NaN: it did not. */
  left: number
  cause: Cause
  /** Fingerprint of the record, '' if there is none. */
  hash: string
}

/** What a job asks of a strategy; lengths and forces in the units of the job's output. */
export interface Work {
  /** Force of the output for each newton of effort, as the effort is wanted and measured. */
  perEffort: number
  /** Travel to first touch of the nominal work, and where the approach has to end at the latest [m]. */
  touch: number
  /** Travel at which the output's momentum meets what stops it: of a grip the part itself, of a press its shoulder [m]. */
  meets: number
  stroke: number
  /** Travel from which on the creep speed holds [m]; Infinity: nowhere. */
  creepFrom: number
  /** Travel at a place as the file names places: of a grip, at an opening between the pads. */
  travelAt(place: number): number
  /** Farthest that the output may get before a run has left its rails [m]. */
  reach: number
}

/** What became of the work: one verdict, `unstable` where the run left its rails; figures by id, null where there is none. */
export interface JobResult {
  verdict: string
  metrics: Record<string, number | null>
  /** Times [s]; null: it did not happen. */
  events: { engaged: number | null; unstable: number | null }
}

/** Why a verdict cannot be relied on: its integration step. */
export interface Doubt<Verdict = string> {
  /** `untold`: it left its rails, and whether the step did that cannot be told. */
  ground: 'verdict' | 'margin' | 'error' | 'untold'
  /** Step of the run that it was held against [s], and the verdict there; its own where that is untold. */
  step: number
  verdict: Verdict
  /** The step error of the run; null: there is none. */
  error: number | null
}

/** Errors of figures by the step [their units]; of those that have one. */
export type StepErrors<Result extends JobResult = JobResult> = Partial<Record<keyof Result['metrics'], number>>

/** What is known of the integration step. */
export interface StepCheck<Result extends JobResult = JobResult> {
  /** Largest of the errors by the step, each as a share (`run/step-error.ts`); null: there is none, or it was not computed. */
  stepError: number | null
  /** Of each figure that has one; null: the run was not held against a finer one. */
  stepErrors: StepErrors<Result> | null
  /** Figures whose error finer steps tell differently: noise, or steps of measurement, decide, and what is stated is the size of that. */
  scattered: string[]
  /** Null: none, or not asked for. */
  doubt: Doubt<Result['verdict']> | null
}

/** What a run hands out, whatever it worked on. */
export type RunResult<Result extends JobResult = JobResult> = Result & StepCheck<Result> & RunFacts

interface RunFacts {
  strategy: StrategyId
  /** Ratings of motor and drive that the run exceeds; beside the verdict. */
  overloads: Overload[]
  /** What the scenario asks of its figures; beside the verdict too. */
  requirements: Requirement[]
  /** Fingerprint of the traces; equal only where two runs agree to the last bit. */
  hash: string
  /** What went wrong in an unstable run, '' else. */
  cause: Cause
  /** Integration step [s]. */
  step: number
}

/** A figure as people read it: bench, report and command line all take it from here. */
export interface Figure<Result extends JobResult = JobResult> {
  id: string
  label: string
  /** SI unit, and the unit in which it is read; left out where they are the same. */
  unit: string
  shown?: string
  /** Finest step worth reading [SI]; the figure is rounded to it. */
  grain?: number
  /** How it is computed, one sentence; its quantities as `textIn` reads them. */
  note: string
  value(result: RunResult<Result>): number | null
  /** Why there is none, one sentence. */
  missing(result: RunResult<Result>, scenario: Scenario): string
  /** What it counts as where there is none, as when nothing limits it; null: it cannot be said. */
  standsFor?(result: Result): number | null
}

/** A run as a study sees it. */
export interface Ran<Result extends JobResult = JobResult> {
  result: RunResult<Result>
  /** What the job says of the least effort while the work needed one; null: it never did. */
  weakest: number | null
}

/** `Worked` is its half in the compiled core, a type only: what is said of a job carries none of what carries it out. */
export interface Job<Result extends JobResult = JobResult, Worked extends Load = Load> {
  id: string
  label: string
  /** Its half in the compiled core. */
  load: LoadId
  /** Strategies that make no sense on it; `sim/say` says why of each. */
  refuses?: readonly StrategyId[]
  /** What moves, and what its coordinate and effort are. */
  output: { label: string; travel: 'm' | 'rad'; effort: 'N' | 'N·m' }
  /** Columns of its record behind time and before those of the axis, in the order in which the load shows them. */
  channels: readonly ChannelKind[]
  outputOf(scenario: Scenario): Output
  workOf(scenario: Scenario): Work
  fill(load: Worked, scenario: Scenario): void
  /** Where the output follows a line: how the drive does; `sensed`, with a strategy that works with the gauge. */
  follow?(follower: LineFollower, scenario: Scenario, sensed: boolean): void
  judge(scenario: Scenario, end: RunEnd<Worked>): Result
  /** All verdicts in the order of tables, and the one on work that is done well. */
  verdicts: readonly Result['verdict'][]
  well: Result['verdict']
  /** Least effort while the work needed one; null: it never did, or no job is done by keeping one up. */
  /** Columns of its record that the window is for; where it has several at once, the largest counts and the first is drawn. */
  judged: readonly [string, ...string[]]
  moments: JobMoments<Result>
  weakestOf(end: Pick<RunEnd<Worked>, 'load'>): number | null
  /**
   * Highest effort as the output first meets what stops it, from the balance of energy: all of a moving mass [kg or kg·m²] at the speed
   * that the way has there, without damping; null: nothing stops it.
   */
  impactOf(scenario: Scenario, mass: number): number | null
  /** All that is read of a run, in the order of tables, and those whose error by the step is told with them. */
  figures: readonly Figure<Result>[]
  headlines: readonly (keyof Result['metrics'])[]
  /** The largest error by the step as a share of what it is an error of; null: the run has no such figure. */
  errorShare(metrics: Result['metrics'], errors: StepErrors<Result>): number | null
  /** Whether the errors by the step are more than what is left until the verdict is another one. */
  isClose(result: Result, errors: StepErrors<Result>): boolean
  why: JobWhy<Result>
  study: JobStudy<Result>
  tune: JobTune<Result>
  rescue: JobRescue<Result>
  live: JobLive<Worked>
}

/** When the verdict on a run is in. */
export interface JobMoments<Result extends JobResult = JobResult> {
  /** When that happened which the verdict tells of [s], and the effort by then where the record has rather come near it; null: at no instant. */
  wrong(result: Result): Moment | null
  /** When a verdict without such an instant is in [s]; null: as the run ends. */
  right(scenario: Scenario, result: Result): number | null
}

export interface Moment {
  time: number
  effort: number | null
}

/** The figures by which a search for gains tells runs apart. */
export interface JobTune<Result extends JobResult = JobResult> {
  /** How soon the work is done, the highest effort, its ripple, and where it settles. */
  time: keyof Result['metrics']
  peak: keyof Result['metrics']
  ripple: keyof Result['metrics']
  settled: keyof Result['metrics']
  /** What is left to the edges of the verdict, each as a share. */
  spare: readonly (keyof Result['metrics'])[]
  /** Whether the work is there to take the effort that a setting means. */
  takes(scenario: Scenario): boolean
}

/** Where a search for what would save the work looks on the work's own side, and how it tells verdicts apart. */
export interface JobRescue<Result extends JobResult = JobResult> {
  /** Quantities that can be changed alone, in the order in which they are told. */
  parameters: readonly OwnParameter[]
  creep(scenario: Scenario): CreepZone
  /** Least way that a profile is let end beyond first touch, as the size of the work may be off by so much [m or rad]. */
  clear: number
  /** Verdicts that come of the like, by a word for it: between two of a kind no border is looked for. */
  alike: Partial<Record<Result['verdict'], string>>
  /** Verdicts that may become worse until the run ends. */
  worsens: ReadonlySet<Result['verdict']>
  /** Whether the work is lost where the output comes only when the support has gone. */
  supported: boolean
}

export interface OwnParameter {
  path: string
  /** Made anew for the work, or another machine. */
  cost: 'setting' | 'tooling' | 'mechanics'
  /** What the rules ask to be changed along with a value. */
  along?(scenario: Scenario, value: number): Edit[]
  /** A first value that is felt, where it stands at 0 or below. */
  first?: number
}

/** The place at which creeping begins, as the file tells it: where the zone has no length, and where it is the whole way. */
export interface CreepZone {
  none: number
  most: number
  /** The shortest zone that is proposed and the shortest that is tried, and one that is sensible where there is none. */
  shortest: number
  tried: number
  sensible: number
}

/** What a study of many runs has to know of a job. */
export interface JobStudy<Result extends JobResult = JobResult> {
  /** Figures whose quantiles it tells first, and, in the unit of the effort, those whose histogram lies in the window. */
  told: readonly (keyof Result['metrics'])[]
  histograms: readonly (keyof Result['metrics'])[]
  /** How far a run is from the edges of its verdict, each as a share of what it must stand: below 0 beyond it. Null: no such edge. */
  margins(scenario: Scenario, result: Result): readonly (number | null)[]
  /** The nearest of these edges; null: what there is to spare cannot be said. */
  spare(scenario: Scenario, result: Result): number | null
  /** Efforts between which the work is done [N or N·m], null: no such edge; and from when on the least is asked for [s], left out: all along. */
  window(scenario: Scenario): { least: number | null; most: number | null; from?: number }
  /** Quantities that a map goes over before others, where the scenario has them. */
  mapped: readonly string[]
  /** Spreads of its own quantities that are sensible to begin with. */
  usual: readonly Usual[]
}

/** What `explain` has to know of a job to take an effort of its apart. */
export interface JobWhy<Result extends JobResult = JobResult> {
  /** Figures that can be taken apart; of a verdict the first that tells of it. */
  figures: readonly WhyFigure<Result>[]
  /** Verdicts on runs without an effort that could be taken apart. */
  forceless: ReadonlySet<Result['verdict']>
  /** Edits of work that cannot be lost or broken, since that would end the effort that is to be taken apart. */
  unlosable: readonly Edit[]
  /** Causes that are the work's own. */
  causes: readonly JobCause[]
  /** The edit after which the output creeps from so far before first touch of the nominal work on. */
  creepBefore(scenario: Scenario, distance: number): Edit
  /** Edits by which events of the work itself come later [s], where the touch is put off. */
  later?(scenario: Scenario, delay: number): Edit[]
  /** The work under an effort: its stiffness against the output, and the output's travel since first touch. */
  pressed(scenario: Scenario, effort: number): { stiffness: number; travel: number }
}

export interface WhyFigure<Result extends JobResult = JobResult> {
  id: string
  /** Whether it is this figure that a verdict makes one ask about. */
  tells(verdict: Result['verdict']): boolean
  /** The effort that is taken apart; null: the run has none. */
  take(ran: Ran<Result>): number | null
  /** What the effort is held against, null or infinite where there is nothing; `run` is the grip itself, made when it is asked for. */
  bound(scenario: Scenario, run: () => Ran<Result>): number | null
}

/** A cause that can be taken away: what it is called, how that is done, and the edits that do it; none where it cannot act. */
export interface JobCause {
  cause: string
  label: string
  without: string
  edits(scenario: Scenario): Edit[]
}
