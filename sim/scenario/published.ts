import Type from 'typebox'
import { FIRST_JOB, JOBS, type JobId, SCENARIO_SCHEMA } from './schema/index.ts'

type Node = { [key: string]: unknown }

/**
 * The format as JSON Schema for others: keys that have a default may be left out, as in the files that the bench reads. Only the
 * kind of an actuator must be named that is not the job's first, and a job other than gripping.
 */
export const publishedSchema = (job: JobId = FIRST_JOB): Node =>
  optional(structuredClone(schemaOf(job)), Object.keys(JOBS[job])[0]!) as Node

/** Of any of the kinds of actuator that the job has. */
function schemaOf(job: JobId): unknown {
  if (job === FIRST_JOB) return SCENARIO_SCHEMA
  const kinds = Object.values(JOBS[job])
  const { properties, ...schema } = kinds[0]!
  const actuators = kinds.map((kind) => kind.properties.actuator as Type.TSchema)
  const { job: named, ...others } = properties
  const { default: _, ...bare } = named as { default?: unknown }
  const actuator = Type.Union(actuators, { title: 'Actuator', default: {} })
  return { ...schema, properties: { ...others, job: bare, actuator } }
}

/** `first` is the kind of actuator that a file has which names none. */
function optional(node: unknown, first: string): unknown {
  if (Array.isArray(node)) return node.map((each) => optional(each, first))
  if (typeof node !== 'object' || node === null) return node
  const copy = Object.fromEntries(Object.entries(node).map(([key, value]) => [key, optional(value, first)])) as Node
  const { properties, required } = copy as { properties?: Record<string, Node>; required?: unknown }
  if (!properties || !Array.isArray(required)) return copy
  const needed = required.filter(
    (key: string) => properties[key]?.default === undefined || isOtherKind(key, properties, first),
  )
  if (needed.length > 0) copy.required = needed
  else delete copy.required
  return copy
}

const isOtherKind = (key: string, { kind }: Record<string, Node>, first: string) =>
  key === 'kind' && kind?.const !== undefined && kind.const !== first
