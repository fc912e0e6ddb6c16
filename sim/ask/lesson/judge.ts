/** Runs a lesson and judges an answer to its question: every figure and the right answer come from these runs. */
import type { GripResult } from '../../job/grip/result.ts'
import { jobOf } from '../../job/index.ts'
import type { Traces } from '../../run/channels.ts'
import { exponentOf } from '../../scenario/exponent.ts'
import { type Edit, faultLine, quantityAt, type Scenario } from '../../scenario/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'
import { type Runner, runHere } from '../runner.ts'
import { answerOf, type ShareOf } from '../spread/answer.ts'
import { batchesOf, batchRunner, type SpreadStudy } from '../spread/batch.ts'
import { count, emptyTally } from '../spread/tally.ts'
import { afterTexts, beforeTexts } from './check.ts'
import { figureOf, type LessonFigure, placeholdersOf, type Ran, type Source, sourceOf } from './figures.ts'
import type { Condition, Lesson, LessonRunSpec, SliderQuestion } from './format.ts'
import { lessonScenario, runScenario } from './scenarios.ts'

export interface LessonRun {
  id: string
  /** May hold placeholders. */
  label: string
  given: boolean
  strategy: StrategyId
  scenario: Scenario
  result: GripResult
  traces: Traces
  /** Of many parts, those that are held as required; null: only the one was gripped. */
  parts: ShareOf | null
}

/** One condition of a slider's goal, as the runs have it. */
export interface Goal {
  figure: LessonFigure
  above: LessonFigure | null
  below: LessonFigure | null
  /** The verdict wanted. */
  is: string | null
  met: boolean
}

export interface Judgement {
  right: boolean
  /** Figures of every placeholder, by name. */
  figures: Record<string, LessonFigure>
  /** Number: what the simulator says, and by what share of it the answer lies above. */
  expected: LessonFigure | null
  off: number | null
  /** Choice: the one that the runs bear out. */
  rightChoice: number | null
  /** Slider: what was asked for, and the setting nearest to a wrong one that does it; null: the answer is right, or none does. */
  goals: Goal[]
  nearest: number | null
}

export type LessonItem =
  | { kind: 'run'; run: LessonRun }
  /** All that the text before the question speaks of, and in what an answer is given; null for a choice. */
  | { kind: 'told'; figures: Record<string, LessonFigure>; asked: LessonFigure | null; scenario: Scenario }
  | { kind: 'judged'; judgement: Judgement }

/**
 * The given runs alone where `answer` is null, else every run and the judgement. `answer` is the number (SI), the index of the
 * choice, or the value of the slider (SI). Throws for a lesson whose question the runs do not decide.
 */
export function* runLesson(lesson: Lesson, answer: number | null, runner = runHere): Generator<LessonItem> {
  const base = soundScenario(lesson)
  const slider = lesson.question.kind === 'slider' ? lesson.question : null
  const edits = slider ? [{ path: slider.path, value: answer ?? slider.start }] : []
  const scenarios = scenariosOf(lesson, base, edits)
  const ran = new Map<string, Ran>()
  for (const spec of lesson.runs) {
    if (answer === null && !spec.given) continue
    const run = runOnce(spec, scenarios.get(spec.id)!, runner)
    ran.set(spec.id, ranOf(run))
    yield { kind: 'run', run }
  }
  const read = (name: string) => figureOf(source(name, lesson, scenarios), ran)
  if (answer === null) {
    const asked = askedOf(lesson, base, scenarios)
    yield { kind: 'told', figures: figuresIn(beforeTexts(lesson), read), asked, scenario: base }
  } else yield { kind: 'judged', judgement: judge(lesson, base, answer, ran, read, runner) }
}

/** The figure that is asked for, without its value but with what it takes to write one. */
function askedOf(lesson: Lesson, base: Scenario, scenarios: Map<string, Scenario>): LessonFigure | null {
  const { question } = lesson
  if (question.kind === 'choice') return null
  if (question.kind === 'slider') return setting(base, question.path, question.start)
  return figureOf({ ...source(question.figure, lesson, scenarios), read: () => null }, new Map())
}

/** The judgement alone. */
export function judgeLesson(lesson: Lesson, answer: number, runner = runHere): Judgement {
  for (const item of runLesson(lesson, answer, runner)) if (item.kind === 'judged') return item.judgement
  throw new Error(`lesson "${lesson.title}": not judged`)
}

/** The values that a slider is searched at, as a person would set them: even on the scale, two digits. */
export function sliderValues({ min, max }: Pick<SliderQuestion, 'min' | 'max'>, count = 40): number[] {
  const even = (n: number) => (min > 0 ? min * (max / min) ** (n / count) : min + ((max - min) * n) / count)
  const values = Array.from({ length: count + 1 }, (_, n) => Number(even(n).toPrecision(2)))
  return [...new Set(values)].filter((value) => value >= min && value <= max)
}

type Read = (name: string) => LessonFigure

function judge(
  lesson: Lesson,
  base: Scenario,
  answer: number,
  ran: Map<string, Ran>,
  read: Read,
  runner: Runner,
): Judgement {
  const { question } = lesson
  const judgement: Judgement = {
    right: false,
    figures: {},
    expected: null,
    off: null,
    rightChoice: null,
    goals: [],
    nearest: null,
  }
  const own: Record<string, LessonFigure> = {}
  if (question.kind === 'number') {
    const expected = read(question.figure)
    if (typeof expected.value !== 'number' || expected.value === 0)
      throw new Error(`lesson "${lesson.title}": the runs have no ${question.figure}`)
    judgement.expected = expected
    judgement.off = (answer - expected.value) / Math.abs(expected.value)
    judgement.right = Math.abs(judgement.off) <= question.tolerance
    own.expected = expected
    own.answer = { ...expected, value: answer, exact: true }
    own.off = { ...expected, value: Math.abs(answer - expected.value) }
  } else if (question.kind === 'choice') {
    const right = question.choices.flatMap(({ when }, index) =>
      when.every((each) => goalOf(each, read).met) ? [index] : [],
    )
    if (right.length !== 1) throw new Error(`lesson "${lesson.title}": ${right.length} of its choices are right`)
    judgement.rightChoice = right[0]!
    judgement.right = right[0] === answer
  } else {
    judgement.goals = question.goal.map((each) => goalOf(each, read))
    judgement.right = judgement.goals.every(({ met }) => met)
    own.answer = setting(base, question.path, answer)
    if (!judgement.right) judgement.nearest = nearestOf(lesson, question, base, answer, ran, runner)
    own.nearest = { ...own.answer, value: judgement.nearest }
  }
  judgement.figures = figuresIn(afterTexts(lesson), (name) => own[name] ?? read(name))
  return judgement
}

function goalOf({ figure, above, below, is }: Condition, read: Read): Goal {
  const found = read(figure)
  const bound = (value: number | string | undefined): LessonFigure | null =>
    value === undefined ? null : typeof value === 'number' ? { ...found, value, exact: true } : read(value)
  const goal = { figure: found, above: bound(above), below: bound(below), is: is ?? null }
  const less = (a: LessonFigure | null, b: LessonFigure | null) =>
    !a || !b || (typeof a.value === 'number' && typeof b.value === 'number' && a.value < b.value)
  const met = less(goal.above, found) && less(found, goal.below) && (is === undefined || found.value === is)
  return { ...goal, met }
}

function setting(base: Scenario, path: string, value: number): LessonFigure {
  const { title, unit, shown } = quantityAt(base, path)!
  return { label: title, value, unit, shown: shown ?? unit, exponent: exponentOf(base), exact: true }
}

/** The setting nearest to the reader's that meets the goal. */
function nearestOf(
  lesson: Lesson,
  question: SliderQuestion,
  base: Scenario,
  answer: number,
  ran: Map<string, Ran>,
  runner: Runner,
) {
  const distance = (value: number) => (question.min > 0 ? Math.abs(Math.log(value / answer)) : Math.abs(value - answer))
  const values = sliderValues(question).sort((a, b) => distance(a) - distance(b))
  return values.find((value) => meets(lesson, question, base, value, ran, runner)) ?? null
}

function meets(
  lesson: Lesson,
  { path, goal }: SliderQuestion,
  base: Scenario,
  value: number,
  given: Map<string, Ran>,
  runner: Runner,
) {
  const scenarios = scenariosOf(lesson, base, [{ path, value }])
  const ran = new Map(given)
  for (const spec of lesson.runs) {
    if (spec.given) continue
    ran.set(spec.id, ranOf(runOnce(spec, scenarios.get(spec.id)!, runner)))
  }
  return goal.every((each) => goalOf(each, (name) => figureOf(source(name, lesson, scenarios), ran)).met)
}

const runOnce = (spec: LessonRunSpec, scenario: Scenario, runner: Runner): LessonRun => ({
  id: spec.id,
  label: spec.label,
  given: spec.given,
  strategy: spec.strategy,
  scenario,
  ...runner(scenario, spec.strategy, { traces: true }),
  parts: spec.parts === undefined ? null : heldOf(spec.parts, scenario, spec.strategy, runner),
})

const ranOf = ({ scenario, result, traces, parts }: LessonRun): Ran => ({
  scenario,
  result,
  finalForce: (traces as unknown as Record<string, Float64Array>)[jobOf(scenario).channels[0]!.id]?.at(-1) ?? 0,
  parts,
})

/** Random parts, the same ones for every run that has the same quantities vary. */
function heldOf(grips: number, scenario: Scenario, strategy: StrategyId, runner: Runner): ShareOf {
  const study: SpreadStudy = { scenario, strategies: [strategy], grips, seed: scenario.run.seed, sampling: 'random' }
  const tally = emptyTally(scenario.job, strategy, scenario.spread.varies.length)
  const next = batchRunner(study, runner)
  for (let batch = 0; batch < batchesOf(grips); batch++) count(tally, next(batch, strategy))
  return answerOf(scenario, study.sampling, tally).fit
}

function soundScenario(lesson: Lesson): Scenario {
  const checked = lessonScenario(lesson)
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('; '))
  return checked.scenario
}

/** The scenario of each run by its id, and the lesson's own under ''. */
function scenariosOf(lesson: Lesson, base: Scenario, edits: Edit[]): Map<string, Scenario> {
  const scenarios = new Map([['', base]])
  for (const spec of lesson.runs) {
    const checked = runScenario(base, spec, edits)
    if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('; '))
    scenarios.set(spec.id, checked.scenario)
  }
  return scenarios
}

function source(name: string, lesson: Lesson, scenarios: Map<string, Scenario>): Source {
  const found = sourceOf(name, lesson, scenarios)
  if (!found) throw new Error(`lesson "${lesson.title}": unknown figure ${name}`)
  return found
}

const figuresIn = (texts: string[], read: Read) =>
  Object.fromEntries(texts.flatMap(placeholdersOf).map((name) => [name, read(name)]))
