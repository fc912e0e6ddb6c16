/**
 * Fills in the defaults of a schema and finds its faults on the way. The library of the format finds the same ones in a second walk, and
 * the page would have to carry it; the tests hold the two against each other.
 */
import type Type from 'typebox'
import { allowedBy, type Fault, type Node, show, UNKNOWN } from './fault.ts'

export interface Filled {
  /** A copy with the defaults filled in; where there is no fault it shares no object with the input. */
  value: unknown
  /**
   * Every fault, one a path, up to a thousand. Of what there is too much of the copy has little: lists without entries, and of unknown
   * keys the first few.
   */
  faults: Fault[]
}

/** `input` is a JSON value; it is left untouched. */
export function fill(schema: Type.TSchema, input: unknown): Filled {
  const faults: Fault[] = []
  return { value: fillNode(schema as Node, input, '', faults), faults }
}

/** `whole` is the node with all its options where this is one of them. */
function fillNode(node: Node, given: unknown, path: string, faults: Fault[], whole = node): unknown {
  const value = given === undefined ? node.default : given
  const options = node.anyOf
  if (options) return fillNode(optionFor(options, value), value, path, faults, whole)
  if (node.type === 'object' && isObject(value)) return fillObject(node, value, path, faults)
  if (node.type === 'array' && Array.isArray(value)) return fillList(node, value, path, faults)
  if (isSound(node, value)) return value
  tell(faults, { path, given: show(value), allowed: allowedBy(whole) })
  return Array.isArray(value) ? new Array(value.length) : value // of a list in a wrong place only the length is told
}

/** Faults that are told; nobody reads more. */
const MOST_FAULTS = 1000

function tell(faults: Fault[], fault: Fault): void {
  if (faults.length < MOST_FAULTS) faults.push(fault)
}

/** Of "one of these", or of "null or something", the one that a value is meant for. */
const optionFor = (options: Node[], value: unknown): Node =>
  options.find(({ const: only }) => only !== undefined && only === value) ??
  options.find(({ type }) => (type === 'null') === (value === null)) ??
  options[0]!

function fillObject(node: Node, value: Record<string, unknown>, path: string, faults: Fault[]): unknown {
  const copy: Record<string, unknown> = {}
  const known = node.properties ?? {}
  const under = (key: string) => (/^\d+$/.test(key) ? `${path}[${key}]` : path ? `${path}.${key}` : key)
  for (const key in known) {
    const inner = known[key]!
    const given = Object.hasOwn(value, key) ? value[key] : undefined
    if (given !== undefined || inner.default !== undefined) copy[key] = fillNode(inner, given, under(key), faults)
  }
  const stray = Object.keys(value).filter((key) => !Object.hasOwn(known, key) && value[key] !== undefined)
  if (stray.length === 0) return copy
  const allowed = `one of ${Object.keys(known).join(', ')}`
  for (const key of stray.slice(0, MOST_STRAY)) {
    const name = key.length > LONGEST_KEY ? `${key.slice(0, LONGEST_KEY)}…` : key
    // Defined, not assigned: the key may be __proto__. What it holds does not matter.
    Object.defineProperty(copy, name, { value: null, enumerable: true, writable: true, configurable: true })
    tell(faults, { path: under(name), given: UNKNOWN, allowed })
  }
  if (stray.length > MOST_STRAY)
    tell(faults, { path, given: `${stray.length} unknown keys, of which ${MOST_STRAY} are named`, allowed })
  return copy
}

/** Unknown keys of one object that are named, and how much of a long name. */
const MOST_STRAY = 20
const LONGEST_KEY = 60

function fillList({ items, maxItems }: Node, value: unknown[], path: string, faults: Fault[]): unknown[] {
  const most = maxItems ?? Number.POSITIVE_INFINITY
  if (value.length > most) {
    tell(faults, { path, given: show(value), allowed: `a list of at most ${most} entries` })
    return []
  }
  return value.map((entry, index) => fillNode(items ?? {}, entry, `${path}[${index}]`, faults))
}

/** Of a value that is neither object nor list, whether it meets its schema. */
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
