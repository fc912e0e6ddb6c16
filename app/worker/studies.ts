/** The studies that page and study worker know: what each takes and what it hands out piece by piece. */
import {
  analyseLoops,
  type ComparedAxis,
  type CounterRuns,
  compareAxes,
  counterRuns,
  type DesignOutcome,
  type DriveScales,
  designGains,
  type EnteredLoops,
  enteredLoops,
  explain,
  type Fault,
  type GainDesign,
  type GripResult,
  jobOf,
  type Lesson,
  type LessonItem,
  type Limit,
  LOOPS,
  type LoopId,
  type LoopsResult,
  limitsOf,
  outcomeOf,
  type RescueProgress,
  type Runner,
  rescues,
  runLesson,
  type Scenario,
  type Share,
  type SimulatedSteps,
  type StrategyId,
  simulatedSteps,
  strategiesOn,
  type TuneOptions,
  type TuneProgress,
  tryDesign,
  tuneGains,
  type Verdict,
  type Wanted,
  type Why,
} from '../../sim/index.ts'

/** A design with what becomes of the loop at each working point; no outcomes but faults where the scenario refuses its gains. */
export interface TriedDesign {
  design: GainDesign
  outcomes: DesignOutcome[]
  faults: Fault[]
}

export interface DesignQuestion {
  scenario: Scenario
  loop: LoopId
  wanted: Wanted
}

export interface StepQuestion {
  scenario: Scenario
  loop: LoopId
  friction: boolean
  scale: number
}

export interface DesignAnswer {
  loop: LoopId
  designs: TriedDesign[]
  /** The tightest first. */
  limits: Limit[]
}

export interface GripQuestion {
  scenario: Scenario
  strategy: StrategyId
}

/** What a reader has answered; null: only what the lesson tells before. */
export interface LessonQuestion {
  lesson: Lesson
  answer: number | null
}

/** What one strategy makes of the part. */
export interface Gripped {
  strategy: StrategyId
  result: GripResult
}

export interface Studies {
  /** The same by every strategy, one an item. */
  grips: { input: Scenario; item: Gripped }
  axes: { input: Scenario; item: ComparedAxis }
  /** All loops at all working points, with their curves. */
  loops: { input: Scenario; item: LoopsResult }
  /** Steps in the time simulation, for the linear ones to be laid over. */
  steps: { input: StepQuestion; item: SimulatedSteps }
  designs: { input: DesignQuestion; item: DesignAnswer }
  /** Of each loop the first method that gives gains, without a wish; one an item. */
  gains: { input: Scenario; item: GainDesign }
  /** The loops as a drive runs them, with its integers and at its periods. */
  entered: { input: { scenario: Scenario; scales: DriveScales }; item: EnteredLoops }
  /** The verdict is that of the run on the bench. */
  why: { input: GripQuestion & { verdict: Verdict }; item: Why }
  /** One parameter an item. */
  rescue: { input: GripQuestion & { share: Share }; item: RescueProgress }
  /** The list of counter-runs as it grows. */
  model: { input: GripQuestion; item: CounterRuns }
  /** Each run, then what the text speaks of or the judgement. */
  lesson: { input: LessonQuestion; item: LessonItem }
  /** One candidate an item. */
  tune: { input: { scenario: Scenario; options: TuneOptions }; item: TuneProgress }
}

export type StudyName = keyof Studies

const STUDIES: { [S in StudyName]: (input: Studies[S]['input'], run: Runner) => Iterable<Studies[S]['item']> } = {
  grips: (scenario, run) => gripAll(scenario, run),
  axes: compareAxes,
  loops: (scenario) => [analyseLoops(scenario, { curves: true })],
  steps: ({ scenario, loop, friction, scale }) => [simulatedSteps(scenario, loop, { friction, scale })],
  designs: (question) => [answerDesign(question)],
  gains: (scenario) => firstGains(scenario),
  entered: ({ scenario, scales }) => [enteredLoops(scenario, scales)],
  why: ({ scenario, strategy, verdict }, run) => [explain(scenario, strategy, verdict, run)],
  rescue: ({ scenario, strategy, share }, run) => rescues(scenario, strategy, run, share),
  model: ({ scenario, strategy }, run) => counterRuns(scenario, strategy, run),
  lesson: ({ lesson, answer }, run) => runLesson(lesson, answer, run),
  tune: ({ scenario, options }, run) => tuneGains(scenario, options, run),
}

function* gripAll(scenario: Scenario, run: Runner): Iterable<Gripped> {
  for (const { id } of strategiesOn(jobOf(scenario))) yield { strategy: id, result: run(scenario, id).result }
}

function* firstGains(scenario: Scenario): Iterable<GainDesign> {
  for (const loop of LOOPS) {
    const first = designGains(scenario, loop).find(({ edits }) => edits.length > 0)
    if (first) yield first
  }
}

function answerDesign({ scenario, loop, wanted }: DesignQuestion): DesignAnswer {
  const designs = designGains(scenario, loop, wanted).map((design): TriedDesign => {
    if (design.edits.length === 0) return { design, outcomes: [], faults: [] }
    const tried = tryDesign(scenario, design)
    if (!tried.ok) return { design, outcomes: [], faults: tried.faults }
    return { design, outcomes: tried.result.loops.map(outcomeOf), faults: [] }
  })
  return { loop, designs, limits: limitsOf(scenario, loop) }
}

export interface StudyRequest<S extends StudyName = StudyName> {
  study: S
  input: Studies[S]['input']
}

export type StudyAnswer = { kind: 'item'; item: unknown } | { kind: 'done' } | { kind: 'failed'; message: string }

/** Every item of one study; the worker, which only knows the name, asks through here. */
export const runStudy = <S extends StudyName>(
  { study, input }: StudyRequest<S>,
  run: Runner,
): Iterable<Studies[S]['item']> => STUDIES[study](input, run)
