/** Walks the scenario's schema, so that the tests below cover every key without listing them by hand. */
import type { ActuatorKind, ChoiceSchema, GripKind, QuantitySchema } from '../../sim/index.ts'
import { SCHEMAS } from '../../sim/index.ts'

export type Node = Record<string, unknown>

export interface Leaf {
  /** Path as a fault writes it; a move stands as `arm.moves[0]`. */
  path: string
  schema: Node
  /** The key may be null instead. */
  nullable: boolean
}

export const KINDS = Object.keys(SCHEMAS) as GripKind[]

export const isQuantity = (node: Node): node is Node & QuantitySchema =>
  (node.type === 'number' || node.type === 'integer') && node.const === undefined

export const isChoice = (node: Node): node is Node & ChoiceSchema => Array.isArray(node.enum)

/** What is asked of grips and what differs between them has tests of its own (`studies.test.ts`), as it describes no hardware. */
const isOfTheGrip = ({ path }: { path: string }) => !/^(requirements|spread)\b/.test(path)

/** Every value of a schema that is no object and no list. */
export const leavesIn = (schema: Node): Leaf[] => [...walk(schema, '')]

/** Every value of a scenario of one kind that is no object and no list. */
export const leavesOf = (kind: ActuatorKind): Leaf[] =>
  [...walk(SCHEMAS[kind as GripKind] as unknown as Node, '')].filter(isOfTheGrip)

/** Every object of a scenario of one kind: its path and the keys it knows. */
export const objectsOf = (kind: ActuatorKind): { path: string; keys: string[] }[] => [
  ...[...objects(SCHEMAS[kind as GripKind] as unknown as Node, '')].filter(isOfTheGrip),
]

export const quantitiesOf = (kind: ActuatorKind) =>
  leavesOf(kind).filter((leaf): leaf is Leaf & { schema: QuantitySchema } => isQuantity(leaf.schema))

const join = (path: string, key: string) => (path ? `${path}.${key}` : key)

/** Of "null or something", the something. */
export function unwrap(node: Node): { node: Node; nullable: boolean } {
  const options = node.anyOf as Node[] | undefined
  if (!options || options.every((option) => option.const !== undefined)) return { node, nullable: false }
  return { node: options.find((option) => option.type !== 'null')!, nullable: true }
}

function* walk(outer: Node, path: string): Generator<Leaf> {
  const { node, nullable } = unwrap(outer)
  if (node.type === 'object') {
    for (const [key, child] of Object.entries(node.properties as Record<string, Node>))
      yield* walk(child, join(path, key))
  } else if (node.type === 'array') yield* walk(node.items as Node, `${path}[0]`)
  else yield { path, schema: node, nullable }
}

function* objects(outer: Node, path: string): Generator<{ path: string; keys: string[] }> {
  const { node } = unwrap(outer)
  if (node.type === 'array') yield* objects(node.items as Node, `${path}[0]`)
  if (node.type !== 'object') return
  const properties = node.properties as Record<string, Node>
  yield { path, keys: Object.keys(properties) }
  for (const [key, child] of Object.entries(properties)) yield* objects(child, join(path, key))
}

/** Input of one kind in which every optional object is there. */
export const full = (kind: string) => ({
  actuator: { kind },
  arm: { moves: [{}] },
  events: { powerLoss: {}, release: {} },
})
