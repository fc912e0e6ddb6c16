/** Reads the scenario's schema into what the panel shows, so that a new key appears by itself. Knows no React. */
import { type ActuatorKind, JOB_SCHEMAS, type JobId, type QuantitySchema } from '../../../sim/index.ts'

export type Field =
  | { kind: 'quantity'; path: string; schema: QuantitySchema; absent: Absent }
  | {
      kind: 'choice'
      path: string
      title: string
      note: string
      options: { value: string | boolean; label: string }[]
    }
  | { kind: 'text'; path: string; title: string; longest: number }
  | { kind: 'group'; path: string; title: string; fields: Field[]; absent: Absent }
  | { kind: 'list'; path: string; title: string; item: string; longest: number; fieldsAt(index: number): Field[] }

/** What stands in the scenario when the key is not set; 'never': it is always set. `words` are what a person reads. */
export type Absent = 'never' | { value: null | undefined; words: string; note: string }

/** Keys for which the simulator takes a value of its own when they are not set; with the others there is none then. */
const AUTOMATIC = new Set([
  'arm.lift',
  'run.step',
  'part.gyration',
  'jaws.padRadius',
  'actuator.transmission.coulombBack',
  'actuator.transmission.viscousBack',
])

/** The parts of a JSON Schema node that the panel reads. */
interface Node {
  type?: string
  title?: string
  description?: string
  unit?: string
  symbol?: string
  const?: unknown
  enum?: string[]
  labels?: string[]
  anyOf?: Node[]
  items?: Node
  properties?: Record<string, Node>
  required?: string[]
  maxLength?: number
  maxItems?: number
}

const root = (kind: ActuatorKind, job: JobId) => JOB_SCHEMAS[job][kind] as unknown as Node

/** Keys at the top of a scenario that a person sets. */
export const topKeys = (kind: ActuatorKind, job: JobId = 'grip') =>
  Object.entries(root(kind, job).properties ?? {}).flatMap(([key, node]) => (node.const === undefined ? [key] : []))

/** Fields that were read before: the schema does not change, and the panel asks for the same ones at every step of a drag. */
const known = new Map<string, Field | undefined>()

/** The field at a path such as `servo.kp` or `actuator.motor`; undefined if the kind of actuator has none. Of a grip, unless another job is named. */
export function fieldAt(kind: ActuatorKind, path: string, job: JobId = 'grip'): Field | undefined {
  const key = `${job} ${kind} ${path}`
  if (!known.has(key)) known.set(key, readField(kind, path, job))
  return known.get(key)
}

function readField(kind: ActuatorKind, path: string, job: JobId): Field | undefined {
  let node: Node | undefined = root(kind, job)
  let required = true
  for (const key of path.split(/[.[\]]+/).filter(Boolean)) {
    const object: Node = concrete(node)
    required = object.required?.includes(key) ?? true
    node = object.type === 'array' ? object.items : object.properties?.[key]
    if (!node) return undefined
  }
  return fieldOf(path, node, required)
}

function fieldOf(path: string, node: Node, required: boolean): Field | undefined {
  const title = node.title ?? path
  if (node.const !== undefined) return undefined
  if (node.enum) {
    const values = node.enum.map((value, index) => ({ value, label: node.labels?.[index] ?? value }))
    return { kind: 'choice', path, title, note: node.description ?? '', options: values }
  }
  if (node.type === 'boolean') {
    const options = [
      { value: false, label: 'Off' },
      { value: true, label: 'On' },
    ]
    return { kind: 'choice', path, title, note: node.description ?? '', options }
  }
  const inner = concrete(node)
  const left = { words: AUTOMATIC.has(path) ? 'automatic' : 'none', note: node.description ?? '' }
  const absent: Absent = inner !== node ? { value: null, ...left } : required ? 'never' : { value: undefined, ...left }
  if (inner.type === 'number' || inner.type === 'integer')
    return { kind: 'quantity', path, schema: { ...inner, title: inner.title ?? title } as QuantitySchema, absent }
  if (inner.type === 'string') return { kind: 'text', path, title, longest: inner.maxLength ?? 200 }
  if (inner.type === 'object') return { kind: 'group', path, title, fields: fieldsOf(path, inner), absent }
  if (inner.type === 'array' && inner.items) {
    const item = inner.items
    return {
      kind: 'list',
      path,
      title,
      item: item.title ?? title,
      longest: inner.maxItems ?? 100,
      fieldsAt: (index) => fieldsOf(`${path}[${index}]`, item),
    }
  }
  return undefined
}

function fieldsOf(path: string, node: Node): Field[] {
  const entries = Object.entries(node.properties ?? {})
  return entries.flatMap(([key, inner]) => fieldOf(`${path}.${key}`, inner, node.required?.includes(key) ?? true) ?? [])
}

/** Of "null or something", the something. */
const concrete = (node: Node): Node =>
  node.anyOf?.some((option) => option.type === 'null') ? node.anyOf.find((option) => option.type !== 'null')! : node

/** How many keys differ, counted at the leaves. */
export function differences(a: unknown, b: unknown): number {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b) ? 0 : 1
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>]
  const keys = new Set([...Object.keys(left), ...Object.keys(right)])
  return [...keys].reduce((sum, key) => sum + differences(left[key], right[key]), 0)
}
