/** What is said of a job: one file each, and one line in `others.ts`. */
import type { MissedRun, Why } from '../ask/why.ts'
import type { JobResult, RunResult } from '../job/job.ts'
import type { WorkBound, WorkingPointId } from '../loops/jobs/job.ts'
import type { Scenario, StrategyId } from '../scenario/index.ts'
import type { LiveWords } from './live.ts'
import type { Wording } from './wording.ts'

export type Judged<R extends JobResult = JobResult> = Pick<RunResult<R>, 'verdict' | 'metrics' | 'events' | 'cause'>

/** A run that kept to its rails. */
export type Kept<R extends JobResult = JobResult> = Judged<R> & { verdict: Exclude<R['verdict'], 'unstable'> }

export interface JobWords<R extends JobResult = JobResult> {
  /** What the command that carries it out prints, in one phrase. */
  does: string
  /** What the effort is held against, a line each, as the command line prints it above the figures [SI]. */
  window(scenario: Scenario): string[]
  /** The same as it stands over the verdicts. */
  frame(scenario: Scenario, words: Wording): WindowWords
  /** The outcome in one sentence: a number, a limit, a time. */
  outcome(scenario: Scenario, result: Kept<R>, words: Wording): string
  /** What a verdict says of the work: the part is held. */
  state(verdict: R['verdict']): string
  /** Why a strategy makes no sense on it, a sentence for each that the job refuses. */
  refuses?: Partial<Record<StrategyId, string>>
  why: WhyWords<R>
  study: StudyWords<R>
  axes: AxesWords
  live: LiveWords
  rescue: RescueWords<R>
  loops: LoopWords
  log: LogWords
}

/** What the effort is held against: what it is called, one sentence behind that, and its edges in a few words. */
export interface WindowWords {
  title: string
  sentence: string
  span: string
  /** No effort does the work and spares what it works on. */
  empty: boolean
}

/** How a measured log speaks of what the output meets. */
interface LogWords {
  /** What is asked: "A part stands between the jaws"; and how a log lies: "onto the part", or "in free air". */
  meets: string
  onto: string
  free: string
  /** Where the way of the output begins, and what is met on it: "open", "touches the part". */
  start: string
  touches: string
  /** What is told by the travel where a position reads 0, one sentence. */
  origin: string
  /** What would tell more than the axis: "from a touch the stiffness of the part". */
  tells: string
  /** Where a hand must not be while it is recorded: "the jaws". */
  hands: string
}

/** How the loops speak of what the output presses on. */
interface LoopWords {
  /** Where a working point is, as it stands behind "unstable": "on the softest part". */
  at: Readonly<Partial<Record<WorkingPointId, string>>>
  /** What the gauge feels before anything is touched, and, of that, what the force loop answers to. */
  feels: string
  inertia: string
  /** What is soft or stiff: "part". */
  gives: string
  /** What gives way slowly, and where its stiffness is told: "the part", " at one contact". */
  relaxes: string
  contact: string
  /** What would calm the swing in contact. */
  calmer: string
  /** What a trial met that the linear model does not know. */
  met: Readonly<Record<WorkBound, string>>
  /** What a drive counts: "jaw travel". */
  travel: string
  /** Its two directions: "closing", "opening". */
  onwards: string
  back: string
  /** How the drive is commissioned, step by step, and how it can hurt. */
  commissioning: readonly string[]
  cautions: readonly string[]
}

interface RescueWords<R extends JobResult> {
  /** What new tooling is, and what happens to the work by verdict, as it follows "at 5 mm/s". */
  tooling: string
  happens: Readonly<Record<R['verdict'], string>>
  /** The same of work that is missed as the output comes only when the support has gone. */
  late: string
  /** What is said of it as a whole: "the part". */
  of: string
}

/** How a comparison of axes speaks of the work. */
interface AxesWords {
  /** As a question: "Which axis suits the part?" */
  asks: string
  /** The effort that is wanted: "grip force"; and as it stands behind "Force", where it has to be said: "at one contact". */
  wanted: string
  where: string
  /** What a strategy does as it is set, or does not: "presses", "press". */
  does: string
  act: string
  /** What its most is: "damage limit". */
  limit: string
  /** What is met first, and how: one sentence. */
  impact: string
  /** What would drive the axis back without current: "a force on the jaws". */
  back: string
  /** Axes by which every strategy does it well: "every strategy holding the part"; and those without power: "hold kept at power loss". */
  well: string
  kept: string
}

/** How a study of many speaks of work that is done well. */
interface StudyWords<R extends JobResult> {
  /** Of one part, of many, and as it stands before "as required": "holds", "hold", "held". */
  one: string
  many: string
  done: string
  /** As what a part counts of which nobody knows. */
  counted: string
  /** What a change does with more parts than before: "holds". */
  does: string
  /** Of many as a question: "do most parts hold". */
  asks: string
  /** What is done to each, what it has been, and what carried-out work is called, one and many: "grip", "gripping", "gripped", "grip", "grips". */
  act: string
  acting: string
  acted: string
  run: string
  runs: string
  /** What lies behind a histogram of efforts. */
  band: string
  /** What a strategy is told to bring: "force". */
  effort: string
  /** What is driven, by verdict: "the drops". */
  subjects: Readonly<Record<R['verdict'], string>>
}

interface WhyWords<R extends JobResult> {
  /** By the id of a figure that can be taken apart. */
  figures: Readonly<Record<string, WhyFigureWords>>
  /** What the figure was, `whole` of it on work that cannot be lost, beside what it is held against. */
  outcome(scenario: Scenario, why: Why<R>, whole: number, words: Wording): string
  /** Why a run that is `forceless`, and did not leave its rails, has no such figure. */
  missed(run: MissedRun<R>, words: Wording): string
  /** The same of a run that has one only as long as the work may be lost. */
  lost: string
}

export interface WhyFigureWords {
  /** Its name, that of what it is held against, and what causes are a share of. */
  whole: string
  bound: string
  share: string
  /** Whether there should be at least as much as it is held against, instead of at most. */
  least: boolean
}
