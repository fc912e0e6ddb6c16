/**
 * Reading a scenario: fills in defaults, holds it against the schema and against the rules between keys, and reports
 * every fault at once with its path, what was given and what is allowed.
 */
import type Type from 'typebox'
import { Errors } from 'typebox/schema'
import { Settings } from 'typebox/system'
import { fill } from './fill.ts'
import { FIRST_SCHEMAS, lift, pathBefore, pathNow, versionOf } from './migrate.ts'
import { RULES } from './rules.ts'
import { FIRST_JOB, type GripKind, JOBS, type Scenario } from './schema/index.ts'

// Every fault at once: the library stops at eight unless told otherwise.
Settings.Set({ maxErrors: 1000 })

export interface Fault {
  /** Path of the key, e.g. `arm.moves[0].start`; '' for the file as a whole. */
  path: string
  given: string
  allowed: string
}

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
  for (const { reads, check } of RULES) {
    if (reads.some((path) => broken.some((bad) => covers(bad, path)) || !isThere(scenario, path))) continue
    faults.push(...check(scenario as Scenario).map((fault) => ({ ...fault, path: written(fault.path) })))
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, scenario: scenario as Scenario }
}

/** The input with defaults filled in, and its faults against a schema. */
function hold(schema: Type.TSchema, input: unknown): { filled: unknown; faults: Fault[] } {
  const { value: filled, sound, tooMuch } = fill(schema, input)
  if (sound) return { filled, faults: [] }
  return { filled, faults: [...schemaFaults(schema, filled).map(withNewPlace), ...tooMuch] }
}

/** A key that version 1 had where version 2 does not have it is told where it went. */
function withNewPlace(fault: Fault): Fault {
  const now = pathNow(fault.path)
  const moved = now !== fault.path && fault.given === UNKNOWN
  return moved ? { ...fault, allowed: `${now}, where version 2 has it` } : fault
}

/** One line for a fault, as the command line and the page print it. */
export const faultLine = (fault: Fault) => `${fault.path || 'the file'}: given ${fault.given}, allowed ${fault.allowed}`

/** Thrown where what is asked cannot be done with the scenario. */
export class Refusal extends RangeError {
  readonly fault: Fault

  constructor(fault: Fault) {
    super(faultLine(fault))
    this.fault = fault
  }
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

const UNKNOWN = 'an unknown key'

const PASSING = new Set(['additionalProperties', 'anyOf'])

/** Every fault of a value against a schema, one a path. A schema may say in `allowed` what it allows. */
export function schemaFaults(schema: Type.TSchema, value: unknown): Fault[] {
  const faults = new Map<string, Fault>()
  for (const error of Errors(schema, value)[1]) {
    if (PASSING.has(error.keyword)) continue // said again, and better, by the error of the key itself
    const keys = error.instancePath.split('/').slice(1).map(unescapePointer)
    const path = keys.reduce((text, key) => (/^\d+$/.test(key) ? `${text}[${key}]` : text ? `${text}.${key}` : key), '')
    if (faults.has(path)) continue
    const { at, parent } = locate(schema, keys)
    const found = read(value, keys)
    if (at?.anyOf && isRecord(found) && concrete(at).type === 'object') continue // its own keys say what is wrong
    const given = error.keyword === 'boolean' ? UNKNOWN : show(found)
    faults.set(path, { path, given, allowed: at ? describe(at) : `one of ${Object.keys(parent).join(', ')}` })
  }
  return [...faults.values()]
}

type Node = Record<string, unknown>

/** The schema at a path, or, for an unknown key, the properties known beside it. */
function locate(schema: unknown, keys: string[]): { at: Node | null; parent: Node } {
  let at = schema as Node
  for (const key of keys) {
    const object = concrete(at)
    const properties = (object.properties ?? {}) as Record<string, Node>
    const next = object.type === 'array' ? (object.items as Node) : properties[key]
    if (!next || !(object.type === 'array' || Object.hasOwn(properties, key))) return { at: null, parent: properties }
    at = next
  }
  return { at, parent: {} }
}

/** Of "null or something", the something. */
function concrete(node: Node): Node {
  const options = node.anyOf as Node[] | undefined
  return options?.find((option) => option.type !== 'null' && option.const === undefined) ?? node
}

function describe(node: Node): string {
  if (typeof node.allowed === 'string') return node.allowed
  const options = node.anyOf as Node[] | undefined
  if (options) return options.map(describe).join(' or ')
  if (node.const !== undefined) return show(node.const)
  if (Array.isArray(node.enum)) return node.enum.map(show).join(', ')
  if (node.type === 'null') return 'null'
  if (node.type === 'boolean') return 'true or false'
  if (node.type === 'number' || node.type === 'integer') {
    const kind = node.type === 'integer' ? 'a whole number' : 'a number'
    return `${kind} from ${node.minimum} to ${node.maximum}${node.unit ? ` ${node.unit}` : ''}`
  }
  const size = (least: unknown, most: unknown) => (least ? `${least} to ${most}` : `at most ${most}`)
  if (node.type === 'string') return `a text of ${size(node.minLength, node.maxLength)} characters`
  if (node.type === 'array') return `a list of ${size(node.minItems, node.maxItems)} entries`
  return `an object with ${Object.keys((node.properties ?? {}) as object).join(', ')}`
}

function read(value: unknown, keys: string[]): unknown {
  let at = value
  for (const key of keys) at = isRecord(at) || Array.isArray(at) ? (at as Record<string, unknown>)[key] : undefined
  return at
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const unescapePointer = (key: string) => key.replaceAll('~1', '/').replaceAll('~0', '~')

const isKeyOf = <T extends object>(object: T, key: unknown): key is keyof T =>
  typeof key === 'string' && Object.hasOwn(object, key)

const quote = (text: string) => `"${text}"`

/** A value as a person would read it in a message, cut to a length that fits one. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  if (Array.isArray(value)) return `a list of ${value.length}`
  const text = JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 57)}…` : text
}
