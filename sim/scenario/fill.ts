/** Fills in the defaults of a schema and sees on the way whether the outcome is sound, which takes a tenth of asking for its faults. */
import type Type from 'typebox'
import type { Fault } from './validate.ts'

export interface Filled {
  /** A copy with the defaults filled in; where it is sound it shares no object with the input. */
  value: unknown
  /** It meets the schema for certain. False: it may have faults, so they must be asked for. */
  sound: boolean
  /** What there is too much of: the copy has lists without entries, and of unknown keys the first few, so that it stays small. */
  tooMuch: Fault[]
}

/** Keywords of JSON Schema that are looked at here. A scenario's schema uses no others that constrain a value. */
interface Node {
  type?: string
  const?: unknown
  enum?: unknown[]
  anyOf?: Node[]
  default?: unknown
  minimum?: number
  maximum?: number
  maxLength?: number
  maxItems?: number
  items?: Node
  properties?: Record<string, Node>
  required?: string[]
}

/** `input` is a JSON value; it is left untouched. */
export function fill(schema: Type.TSchema, input: unknown): Filled {
  const filled: Filled = { value: undefined, sound: true, tooMuch: [] }
  filled.value = fillNode(schema as Node, input, '', filled)
  return filled
}

function fillNode(node: Node, given: unknown, path: string, outcome: Filled): unknown {
  const value = given === undefined ? node.default : given
  const options = node.anyOf
  if (options) return fillNode(optionFor(options, value), value, path, outcome)
  if (node.type === 'object' && isObject(value)) return fillObject(node, value, path, outcome)
  if (node.type === 'array' && Array.isArray(value)) return fillList(node, value, path, outcome)
  if (isSound(node, value)) return value
  outcome.sound = false
  return Array.isArray(value) ? new Array(value.length) : value // of a list in a wrong place only the length is told
}

/** Of "one of these", or of "null or something", the one that a value is meant for. */
const optionFor = (options: Node[], value: unknown): Node =>
  options.find(({ const: only }) => only !== undefined && only === value) ??
  options.find(({ type }) => (type === 'null') === (value === null)) ??
  options[0]!

function fillObject(node: Node, value: Record<string, unknown>, path: string, outcome: Filled): unknown {
  const copy: Record<string, unknown> = {}
  const known = node.properties ?? {}
  for (const key in known) {
    const inner = known[key]!
    const given = Object.hasOwn(value, key) ? value[key] : undefined
    if (given !== undefined || inner.default !== undefined)
      copy[key] = fillNode(inner, given, path ? `${path}.${key}` : key, outcome)
    else if (node.required?.includes(key)) outcome.sound = false
  }
  const stray = Object.keys(value).filter((key) => !Object.hasOwn(known, key) && value[key] !== undefined)
  if (stray.length > 0) outcome.sound = false
  if (stray.length > MOST_STRAY)
    outcome.tooMuch.push({
      path,
      given: `${stray.length} unknown keys, of which ${MOST_STRAY} are named`,
      allowed: `one of ${Object.keys(known).join(', ')}`,
    })
  for (const key of stray.slice(0, MOST_STRAY)) {
    const name = key.length > LONGEST_KEY ? `${key.slice(0, LONGEST_KEY)}…` : key
    // Defined, not assigned: the key may be __proto__. What it holds does not matter.
    Object.defineProperty(copy, name, { value: null, enumerable: true, writable: true, configurable: true })
  }
  return copy
}

/** Unknown keys of one object that are named, and how much of a long name. */
const MOST_STRAY = 20
const LONGEST_KEY = 60

function fillList({ items, maxItems }: Node, value: unknown[], path: string, outcome: Filled): unknown[] {
  const most = maxItems ?? Number.POSITIVE_INFINITY
  if (value.length > most) {
    outcome.sound = false
    outcome.tooMuch.push({ path, given: `a list of ${value.length}`, allowed: `a list of at most ${most} entries` })
    return []
  }
  return value.map((entry, index) => fillNode(items ?? {}, entry, `${path}[${index}]`, outcome))
}

/** Of a value that is neither object nor list, whether it surely meets its schema. */
function isSound(node: Node, value: unknown): boolean {
  if (node.const !== undefined) return value === node.const
  if (node.enum) return node.enum.includes(value)
  switch (node.type) {
    case 'number':
    case 'integer': {
      const whole = node.type === 'number' || Number.isInteger(value)
      return whole && typeof value === 'number' && value >= node.minimum! && value <= node.maximum!
    }
    case 'string':
      return typeof value === 'string' && value.length <= node.maxLength!
    case 'boolean':
      return typeof value === 'boolean'
    case 'null':
      return value === null
    default:
      return false
  }
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
