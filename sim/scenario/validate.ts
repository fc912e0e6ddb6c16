/**
 * Reading a scenario: fills in defaults, holds it against the schema and against the rules between keys, and reports
 * every fault at once with its path, what was given and what is allowed.
 */
import type Type from 'typebox'
import { type Fault, show, UNKNOWN } from './fault.ts'
import { fill } from './fill.ts'
import { FIRST_SCHEMAS, lift, pathBefore, pathNow, versionOf } from './migrate.ts'
import { rulesOf } from './rules.ts'
import { FIRST_JOB, type GripKind, JOBS, type Scenario } from './schema/index.ts'

const FORMAT = 'jawbench-scenario'

export type Checked = { ok: true; scenario: Scenario } | { ok: false; faults: Fault[] }

/** Longest scenario text that is read, in characters: notes of full length, every one escaped, leave room for the rest. */
export const LONGEST_FILE = 200_000

/** `text` is the content of a scenario file; a byte-order mark before it is passed over. */
export function parseScenario(text: string): Checked {
  if (text.length > LONGEST_FILE)
    return refuse('', `a text of ${text.length} characters`, `at most ${LONGEST_FILE} characters`)
  try {
    return checkScenario(JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text))
  } catch (error) {
    if (error instanceof RangeError)
      return refuse('', 'a text nested too deeply to be read', 'a JSON object as the format describes it')
    const why = error instanceof Error ? error.message : String(error)
    return refuse('', `no JSON (${why})`, 'a JSON object; JSON knows no NaN, Infinity or comments')
  }
}

/**
 * `input` is any value that JSON can hold, parsed; it is left untouched. Keys left out take their defaults. A file of version 1 is
 * held against the keys of its own version and lifted.
 */
export function checkScenario(input: unknown): Checked {
  if (!isRecord(input)) return refuse('', show(input), 'an object with "format": "jawbench-scenario"')
  const { format = FORMAT, actuator, job } = input
  if (format !== FORMAT) return refuse('format', show(format), quote(FORMAT))
  const version = versionOf(input)
  if (version === null) return refuse('version', show(input.version), '1 or 2')
  const known = version === 1 || job === undefined ? FIRST_JOB : job
  if (!isKeyOf(JOBS, known)) return refuse('job', show(known), Object.keys(JOBS).map(quote).join(', '))
  // A kind that is left out is the first that the job knows; one that turns its output moves no jaw, and the other way round.
  const kinds: Partial<Record<string, Type.TSchema>> = JOBS[known]
  const kind = isRecord(actuator) && actuator.kind !== undefined ? actuator.kind : Object.keys(kinds)[0]
  const schema = isKeyOf(kinds, kind) ? kinds[kind] : undefined
  if (!schema) return refuse('actuator.kind', show(kind), Object.keys(kinds).map(quote).join(', '))
  const { filled, faults } = hold(version === 1 ? FIRST_SCHEMAS[kind as GripKind] : schema, input)
  const scenario = version === 1 ? hold(schema, lift(filled)).filled : filled
  const written = version === 1 ? pathBefore : (path: string) => path
  const broken = [...new Set(faults.map(({ path }) => (version === 1 ? pathNow(path) : path)))]
  for (const { reads, check } of rulesOf(known)) {
    if (reads.some((path) => broken.some((bad) => covers(bad, path)) || !isThere(scenario, path))) continue
    faults.push(...check(scenario as Scenario).map((fault) => ({ ...fault, path: written(fault.path) })))
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, scenario: scenario as Scenario }
}

/** The input with defaults filled in, and its faults against a schema. */
function hold(schema: Type.TSchema, input: unknown): { filled: unknown; faults: Fault[] } {
  const { value: filled, faults } = fill(schema, input)
  return { filled, faults: faults.map(withNewPlace) }
}

/** A key that version 1 had where version 2 does not have it is told where it went. */
function withNewPlace(fault: Fault): Fault {
  const now = pathNow(fault.path)
  const moved = now !== fault.path && fault.given === UNKNOWN
  return moved ? { ...fault, allowed: `${now}, where version 2 has it` } : fault
}

const refuse = (path: string, given: string, allowed: string): Checked => ({
  ok: false,
  faults: [{ path, given, allowed }],
})

/** A fault at `bad` makes the value at `path` unreadable: one lies on or under the other. */
const covers = (bad: string, path: string) => {
  const inside = (outer: string, inner: string) =>
    outer === '' || inner === outer || inner.startsWith(`${outer}.`) || inner.startsWith(`${outer}[`)
  return inside(bad, path) || inside(path, bad)
}

/** Whether a scenario has a key at all: the file of each job has its own. */
const isThere = (scenario: unknown, path: string) => read(scenario, path.split('.')) !== undefined

function read(value: unknown, keys: string[]): unknown {
  let at = value
  for (const key of keys) at = isRecord(at) || Array.isArray(at) ? (at as Record<string, unknown>)[key] : undefined
  return at
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isKeyOf = <T extends object>(object: T, key: unknown): key is keyof T =>
  typeof key === 'string' && Object.hasOwn(object, key)

const quote = (text: string) => `"${text}"`
