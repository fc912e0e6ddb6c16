/** Reads a lesson: holds it against its schema and against what its keys demand of each other, and says every fault by its path. */
import { jobOf } from '../../job/index.ts'
import { channelsOf } from '../../run/channels.ts'
import { type Fault, quantityAt, type Scenario, show } from '../../scenario/index.ts'
import { schemaFaults } from './faults.ts'
import { placeholdersOf, type Source, sourceOf } from './figures.ts'
import { type Condition, LESSON_SCHEMAS, type Lesson, type QuestionKind } from './format.ts'
import { lessonScenario, runScenario } from './scenarios.ts'

export type CheckedLesson = { ok: true; lesson: Lesson } | { ok: false; faults: Fault[] }

interface Piece {
  path: string
  text: string
}

const list = (path: string, texts: string[]): Piece[] => texts.map((text, n) => ({ path: `${path}[${n}]`, text }))

/** Texts that are read before the answer is told: they may speak of the scenario and of given runs only. */
const before = ({ text, caution, question, runs, hint }: Lesson): Piece[] => [
  ...list('text', text),
  ...(caution === undefined ? [] : [{ path: 'caution', text: caution }]),
  ...runs.map(({ label }, n) => ({ path: `runs[${n}].label`, text: label })),
  { path: 'question.ask', text: question.ask },
  { path: 'hint', text: hint },
  ...(question.kind === 'choice'
    ? question.choices.map(({ text }, n) => ({ path: `question.choices[${n}].text`, text }))
    : []),
]

const after = ({ right, wrong, explanation, question }: Lesson): Piece[] => [
  { path: 'right', text: right },
  { path: 'wrong', text: wrong },
  ...list('explanation', explanation),
  ...(question.kind === 'choice'
    ? question.choices.map(({ say }, n) => ({ path: `question.choices[${n}].say`, text: say }))
    : []),
]

export const beforeTexts = (lesson: Lesson) => before(lesson).map(({ text }) => text)
/** With the texts before: after the answer all of them stand on the page. */
export const afterTexts = (lesson: Lesson) => [...before(lesson), ...after(lesson)].map(({ text }) => text)

/** Placeholders that are figures of the answer itself. */
const OWN: Record<QuestionKind, string[]> = {
  number: ['answer', 'expected', 'off'],
  choice: [],
  slider: ['answer', 'nearest'],
}
const RESERVED = ['scenario', 'window', 'gravity', 'question', 'answer', 'expected', 'off', 'nearest']

/** `input` is any value that JSON can hold, parsed; it is left untouched. */
export function checkLesson(input: unknown): CheckedLesson {
  if (!isRecord(input)) return refuse('', show(input), 'an object with "format": "jawbench-lesson"')
  const kind = isRecord(input.question) ? input.question.kind : undefined
  if (typeof kind !== 'string' || !Object.hasOwn(LESSON_SCHEMAS, kind))
    return refuse('question.kind', show(kind), Object.keys(LESSON_SCHEMAS).map(show).join(', '))
  const schema = LESSON_SCHEMAS[kind as QuestionKind]
  const lesson = defaulted(schema as Node, structuredClone(input)) as Lesson
  const faults = schemaFaults(schema, lesson)
  if (faults.length === 0) faults.push(...idFaults(lesson), ...meaningFaults(lesson))
  return faults.length > 0 ? { ok: false, faults } : { ok: true, lesson }
}

/** What is read of a schema to fill in its defaults. */
interface Node {
  default?: unknown
  items?: Node
  properties?: Record<string, Node>
}

/** A value with the defaults of what its schema knows; where it is not what the schema says it is left as it is. */
function defaulted(node: Node, value: unknown): unknown {
  if (value === undefined) return structuredClone(node.default)
  const { items, properties } = node
  if (items && Array.isArray(value)) return value.map((each) => defaulted(items, each))
  if (!properties || !isRecord(value)) return value
  const filled = Object.entries(properties).map(
    ([key, inner]) => [key, defaulted(inner, Object.hasOwn(value, key) ? value[key] : undefined)] as const,
  )
  return { ...value, ...Object.fromEntries(filled.filter(([, each]) => each !== undefined)) }
}

/** Runs are told apart by their labels, and everything by its id. */
function idFaults({ runs, figures }: Lesson): Fault[] {
  const named = [
    ...runs.map(({ id }, n) => ({ id, path: `runs[${n}].id` })),
    ...figures.map(({ id }, n) => ({ id, path: `figures[${n}].id` })),
  ]
  const labels = runs.flatMap(({ label }, n) =>
    runs.slice(0, n).some((other) => other.label === label)
      ? [{ path: `runs[${n}].label`, given: show(label), allowed: 'a label that no other run has' }]
      : [],
  )
  const ids = named.flatMap(({ id, path }, n) => {
    const taken = RESERVED.includes(id) || named.slice(0, n).some((other) => other.id === id)
    return taken ? [{ path, given: show(id), allowed: 'a name that nothing else has' }] : []
  })
  return [...ids, ...labels]
}

/** Faults of scenarios, and, where those are sound, of everything that names a figure. */
function meaningFaults(lesson: Lesson): Fault[] {
  const base = lessonScenario(lesson)
  if (!base.ok) return base.faults.map((fault) => ({ ...fault, path: `set.${fault.path}` }))
  const faults: Fault[] = []
  const scenarios = new Map([['', base.scenario]])
  for (const [n, run] of lesson.runs.entries()) {
    const checked = runScenario(base.scenario, run)
    if (checked.ok && run.parts !== undefined && checked.scenario.spread.varies.length === 0)
      faults.push({ path: `runs[${n}].parts`, given: show(run.parts), allowed: 'none where nothing varies' })
    if (checked.ok) scenarios.set(run.id, checked.scenario)
    else faults.push(...checked.faults.map((fault) => ({ ...fault, path: `runs[${n}].set.${fault.path}` })))
  }
  if (faults.length > 0) return faults
  return [
    ...traceFaults(lesson, base.scenario),
    ...figureFaults(lesson, scenarios),
    ...rangeFaults(lesson, base.scenario),
    ...textFaults(lesson, scenarios),
  ]
}

/** Each job records channels of its own. */
function traceFaults({ traces }: Lesson, base: Scenario): Fault[] {
  const known = channelsOf(jobOf(base)).map(({ id }) => id)
  return traces.flatMap((channel, n) =>
    known.includes(channel)
      ? []
      : [{ path: `traces[${n}]`, given: show(channel), allowed: known.map(show).join(', ') }],
  )
}

const FIGURE = 'a figure such as "slow.peakForce", of a run or of this lesson'

function figureFaults(lesson: Lesson, scenarios: Map<string, Scenario>): Fault[] {
  const { question, figures } = lesson
  const unknown = (name: string, path: string, wanted: (source: Source) => boolean, allowed: string): Fault[] => {
    const source = sourceOf(name, lesson, scenarios)
    return source && wanted(source) ? [] : [{ path, given: show(name), allowed }]
  }
  const number = (name: string, path: string) => unknown(name, path, ({ word }) => !word, FIGURE)
  const conditions = (list: Condition[], path: string) =>
    list.flatMap(({ figure, above, below, is }, n) => [
      ...(is === undefined
        ? number(figure, `${path}[${n}].figure`)
        : unknown(figure, `${path}[${n}].figure`, ({ word }) => word === true, 'a verdict such as "slow.verdict"')),
      ...(typeof above === 'string' ? number(above, `${path}[${n}].above`) : []),
      ...(typeof below === 'string' ? number(below, `${path}[${n}].below`) : []),
      ...(is === undefined && above === undefined && below === undefined
        ? [{ path: `${path}[${n}]`, given: 'no bound', allowed: 'above, below or is' }]
        : []),
    ])
  return [
    ...figures.flatMap(({ of }, f) => of.flatMap((name, n) => number(name, `figures[${f}].of[${n}]`))),
    ...(question.kind === 'number' ? number(question.figure, 'question.figure') : []),
    ...(question.kind === 'slider' ? conditions(question.goal, 'question.goal') : []),
    ...(question.kind === 'choice'
      ? question.choices.flatMap(({ when }, n) => conditions(when, `question.choices[${n}].when`))
      : []),
  ]
}

/** An answer must have somewhere to go, and a slider only where the scenario takes it. */
function rangeFaults({ question, runs }: Lesson, base: Scenario): Fault[] {
  if (question.kind === 'choice') return []
  const { min, max, start } = question
  if (!(min < max)) return [{ path: 'question.max', given: show(max), allowed: `more than ${min}` }]
  if (start < min || start > max) return [{ path: 'question.start', given: show(start), allowed: `${min} to ${max}` }]
  if (question.kind === 'number') return []
  if (!quantityAt(base, question.path))
    return [
      { path: 'question.path', given: show(question.path), allowed: 'the path of a quantity, such as "servo.kp"' },
    ]
  if (runs.every(({ given }) => given))
    return [{ path: 'runs', given: 'given runs only', allowed: 'a run that takes what the reader sets' }]
  return (['min', 'max'] as const).flatMap((end) =>
    runs.flatMap((run) => {
      const checked = runScenario(base, run, [{ path: question.path, value: question[end] }])
      return checked.ok ? [] : checked.faults.map(({ given, allowed }) => ({ path: `question.${end}`, given, allowed }))
    }),
  )
}

function textFaults(lesson: Lesson, scenarios: Map<string, Scenario>): Fault[] {
  const given = lesson.runs.filter((run) => run.given).map(({ id }) => id)
  const faultsOf = ({ path, text }: Piece, own: string[], early: boolean): Fault[] =>
    placeholdersOf(text).flatMap((name) => {
      if (own.includes(name)) return []
      const source = sourceOf(name, lesson, scenarios)
      if (!source) return [{ path, given: show(`{${name}}`), allowed: [FIGURE, ...own].join(', ') }]
      const late = source.needs.find((run) => !given.includes(run))
      if (!early || late === undefined) return []
      return [{ path, given: show(`{${name}}`), allowed: `figures of given runs before the answer; "${late}" is none` }]
    })
  return [
    ...before(lesson).flatMap((piece) => faultsOf(piece, [], true)),
    ...after(lesson).flatMap((piece) => faultsOf(piece, OWN[lesson.question.kind], false)),
  ]
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const refuse = (path: string, given: string, allowed: string): CheckedLesson => ({
  ok: false,
  faults: [{ path, given, allowed }],
})
