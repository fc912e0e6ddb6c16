/** Faults of a lesson, which the library of its schema finds. */
import type Type from 'typebox'
import { Errors } from 'typebox/schema'
import { Settings } from 'typebox/system'
import { allowedBy, type Fault, type Node, show, UNKNOWN } from '../../scenario/fault.ts'

// Every fault at once: the library stops at eight unless told otherwise.
Settings.Set({ maxErrors: 1000 })

const PASSING = new Set(['additionalProperties', 'anyOf'])

/** Every fault of a value against a schema, one a path. */
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
    faults.set(path, { path, given, allowed: at ? allowedBy(at) : `one of ${Object.keys(parent).join(', ')}` })
  }
  return [...faults.values()]
}

/** The schema at a path, or, for an unknown key, the properties known beside it. */
function locate(schema: unknown, keys: string[]): { at: Node | null; parent: Node } {
  let at = schema as Node
  for (const key of keys) {
    const object = concrete(at)
    const properties = object.properties ?? {}
    const next = object.type === 'array' ? object.items : properties[key]
    if (!next || !(object.type === 'array' || Object.hasOwn(properties, key))) return { at: null, parent: properties }
    at = next
  }
  return { at, parent: {} }
}

/** Of "null or something", the something. */
function concrete(node: Node): Node {
  return node.anyOf?.find((option) => option.type !== 'null' && option.const === undefined) ?? node
}

const unescapePointer = (key: string) => key.replaceAll('~1', '/').replaceAll('~0', '~')

function read(value: unknown, keys: string[]): unknown {
  let at = value
  for (const key of keys) at = typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined
  return at
}

const isRecord = (value: unknown) => typeof value === 'object' && value !== null && !Array.isArray(value)
