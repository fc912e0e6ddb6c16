/** The format of a lesson: one data file, SI units, no code. Figures in its prose are placeholders that the simulator fills. */
import Type from 'typebox'
import { CAP_VERDICTS } from '../../job/cap/result.ts'
import { VERDICTS } from '../../job/grip/result.ts'
import { JOBS } from '../../job/index.ts'
import { PRESS_VERDICTS } from '../../job/press/result.ts'
import { WEB_VERDICTS } from '../../job/web/result.ts'
import { channelsOf } from '../../run/channels.ts'
import { ALL_PRESETS } from '../../scenario/index.ts'
import { optional } from '../../scenario/quantity.ts'
import { STRATEGIES } from '../../strategy/index.ts'
import type { StrategyId } from '../../strategy/strategy.ts'

const text = (most: number) => Type.String({ minLength: 1, maxLength: most })
const word = <W extends string>(words: readonly W[]) => Type.Unsafe<W>({ type: 'string', enum: words })
const id = Type.String({
  pattern: '^[a-z][a-zA-Z0-9]*$',
  maxLength: 24,
  allowed: 'a short name of letters and digits that starts with a small letter',
})
const paragraphs = Type.Array(text(700), { minItems: 1, maxItems: 8 })
const range = { minimum: -1e12, maximum: 1e12 }
const edits = Type.Unsafe<Record<string, unknown>>({
  type: 'object',
  default: {},
  allowed: 'an object of scenario paths',
})

const bound = optional(
  Type.Union([Type.Number(), Type.String()], { allowed: 'a number (SI) or a figure such as "slow.peakForce"' }),
)

/** Verdicts and channels of any job; which of them fit is a matter of the preset. */
const ANY_VERDICT: string[] = [...new Set([...VERDICTS, ...PRESS_VERDICTS, ...CAP_VERDICTS, ...WEB_VERDICTS])]
const ANY_CHANNEL = [...new Set(Object.values(JOBS).flatMap((job) => channelsOf(job).map(({ id }) => id)))]

/** What must be true of a figure; bounds are numbers or other figures. */
const condition = Type.Object(
  {
    figure: text(80),
    above: bound,
    below: bound,
    is: optional(word(ANY_VERDICT)),
  },
  { additionalProperties: false },
)
const conditions = Type.Array(condition, { minItems: 1, maxItems: 12 })

const run = Type.Object(
  {
    id,
    /** Short enough for the end of a line. */
    label: text(60),
    strategy: word<StrategyId>(STRATEGIES.map((strategy) => strategy.id)),
    set: edits,
    /** Run before the question is answered, so that the text may speak of it. */
    given: Type.Boolean({ default: false }),
    /** Grips so many parts besides, as `spread.varies` of the run's scenario says. */
    parts: optional(Type.Integer({ minimum: 20, maximum: 200 })),
  },
  { additionalProperties: false },
)

/** How a figure is made of others. `range` is the largest less the least. */
export const TAKES = ['ratio', 'difference', 'range', 'largest', 'least', 'mean'] as const

const derived = Type.Object(
  {
    id,
    label: text(60),
    take: word(TAKES),
    of: Type.Array(text(80), { minItems: 2, maxItems: 6 }),
    /** Unit in which it is read, if not that of the first: `%` for a ratio that is a share. */
    shown: optional(word(['%', 'ms', 'mm'] as const)),
  },
  { additionalProperties: false },
)

const span = { min: Type.Number(range), max: Type.Number(range), start: Type.Number(range) }

/** The three kinds of question. */
const QUESTIONS = {
  number: Type.Object(
    {
      kind: Type.Literal('number'),
      ask: text(400),
      label: text(60),
      figure: text(80),
      /** Share of the expected value by which an answer may be off. */
      tolerance: Type.Number({ minimum: 0.005, maximum: 0.5 }),
      ...span,
    },
    { additionalProperties: false },
  ),
  choice: Type.Object(
    {
      kind: Type.Literal('choice'),
      ask: text(400),
      choices: Type.Array(
        Type.Object({ text: text(200), when: conditions, say: text(500) }, { additionalProperties: false }),
        { minItems: 2, maxItems: 6 },
      ),
    },
    { additionalProperties: false },
  ),
  slider: Type.Object(
    {
      kind: Type.Literal('slider'),
      ask: text(400),
      /** The parameter that the reader sets in every run that is not given. */
      path: text(80),
      goal: conditions,
      ...span,
    },
    { additionalProperties: false },
  ),
}

export type QuestionKind = keyof typeof QUESTIONS

const lessonOf = <Q extends Type.TSchema>(question: Q) =>
  Type.Object(
    {
      format: Type.Literal('jawbench-lesson', { default: 'jawbench-lesson' }),
      version: Type.Literal(1, { default: 1 }),
      title: text(60),
      minutes: Type.Integer({ minimum: 1, maximum: 15 }),
      /** Where a hand can be hurt. */
      caution: optional(text(400)),
      text: paragraphs,
      preset: word(ALL_PRESETS.map(({ id }) => id)),
      set: edits,
      runs: Type.Array(run, { minItems: 1, maxItems: 4 }),
      figures: Type.Array(derived, { default: [], maxItems: 12 }),
      question,
      traces: Type.Array(word(ANY_CHANNEL), { default: ['force'], minItems: 1, maxItems: 3 }),
      /** Read after the first miss, before the answer is told. */
      hint: text(400),
      right: text(500),
      wrong: text(500),
      explanation: paragraphs,
    },
    { additionalProperties: false },
  )

export const LESSON_SCHEMAS = {
  number: lessonOf(QUESTIONS.number),
  choice: lessonOf(QUESTIONS.choice),
  slider: lessonOf(QUESTIONS.slider),
}

export type Condition = Type.Static<typeof condition>
export type LessonRunSpec = Type.Static<typeof run>
export type DerivedFigure = Type.Static<typeof derived>
type Of<K extends QuestionKind> = Type.Static<(typeof LESSON_SCHEMAS)[K]>
export type Lesson = Of<'number'> | Of<'choice'> | Of<'slider'>
export type Question = Lesson['question']
export type SliderQuestion = Type.Static<(typeof QUESTIONS)['slider']>
