/** Random scenarios drawn from the schema's own ranges. */
import fc from 'fast-check'
import type { GripKind } from '../../sim/index.ts'
import { SCHEMAS } from '../../sim/index.ts'
import { isChoice, isQuantity, type Node } from './schema-walk.ts'

/** A number of a range, of every order of magnitude alike where the range starts at or above 0; both ends come up. */
export function spread(minimum: number, maximum: number): fc.Arbitrary<number> {
  if (minimum < 0) return fc.double({ min: minimum, max: maximum, noNaN: true })
  const low = Math.log(minimum > 0 ? minimum : maximum * 1e-9)
  const inside = fc
    .double({ min: low, max: Math.log(maximum), noNaN: true })
    .map((value) => Math.min(maximum, Math.max(minimum, Math.exp(value))))
  return fc.oneof({ weight: 8, arbitrary: inside }, fc.constantFrom(minimum, maximum))
}

/** Any value that a schema by itself allows; keys with a default are left out now and then. */
export function valuesOf(node: Node, mayOmit = true): fc.Arbitrary<unknown> {
  const { minimum, maximum } = node as { minimum: number; maximum: number }
  if (Array.isArray(node.anyOf)) return fc.oneof(...(node.anyOf as Node[]).map((option) => valuesOf(option, mayOmit)))
  if (node.const !== undefined) return fc.constant(node.const)
  if (isChoice(node)) return fc.constantFrom(...node.enum)
  if (node.type === 'null') return fc.constant(null)
  if (node.type === 'boolean') return fc.boolean()
  if (node.type === 'integer') return fc.maxSafeNat().map((n) => Math.max(minimum, n % (maximum + 1)))
  if (isQuantity(node)) return spread(minimum, maximum)
  if (node.type === 'string') return fc.string({ maxLength: Math.min(50, node.maxLength as number) })
  if (node.type === 'array') return fc.array(valuesOf(node.items as Node, mayOmit), { maxLength: 3 })
  const properties = node.properties as Record<string, Node>
  const entries = Object.entries(properties).map(([key, child]) => [key, valuesOf(child, mayOmit)] as const)
  const needed = Object.keys(properties).filter((key) => !mayOmit || key === 'kind')
  return fc.record(Object.fromEntries(entries), { requiredKeys: needed })
}

/** Inputs sound by the schema, one grip and nothing of studies; the rules between keys may still refuse them. */
export function soundInput(kind: GripKind, mayOmit = true) {
  const { requirements: _, spread: __, ...properties } = SCHEMAS[kind].properties
  return valuesOf({ type: 'object', properties }, mayOmit) as fc.Arbitrary<Record<string, unknown>>
}
