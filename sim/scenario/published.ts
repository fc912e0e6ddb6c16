import { SCENARIO_SCHEMA } from './schema/index.ts'

type Node = { [key: string]: unknown }

/**
 * The format as JSON Schema for others: keys that have a default may be left out, as in the files that the bench reads. Only the
 * kind of an actuator other than the default screw must be named.
 */
export const publishedSchema = () => optional(structuredClone(SCENARIO_SCHEMA) as unknown) as Node

function optional(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(optional)
  if (typeof node !== 'object' || node === null) return node
  const copy = Object.fromEntries(Object.entries(node).map(([key, value]) => [key, optional(value)])) as Node
  const { properties, required } = copy as { properties?: Record<string, Node>; required?: unknown }
  if (!properties || !Array.isArray(required)) return copy
  const needed = required.filter(
    (key: string) => properties[key]?.default === undefined || isOtherKind(key, properties),
  )
  if (needed.length > 0) copy.required = needed
  else delete copy.required
  return copy
}

const isOtherKind = (key: string, { kind }: Record<string, Node>) =>
  key === 'kind' && kind?.const !== undefined && kind.const !== 'screw'
