/** Scenarios that differ from one in a few quantities, made without checking the whole file for each. */

import type { Fault } from './fault.ts'
import { FOLLOWS } from './follows.ts'
import { holds, type Key, keysOf, readPath } from './path.ts'
import type { QuantitySchema } from './quantity.ts'
import { quantityAt } from './quantity-at.ts'
import { rulesOf } from './rules.ts'
import type { Scenario } from './schema/index.ts'

export interface Variation {
  scenario: Scenario
  /** Values as they stand in it: cut at the ends of their ranges and by each other, whole where they must be. */
  values: number[]
  /** Which of them were cut. */
  cut: boolean[]
  /** Rules between keys that the values break; the scenario is of no use then. */
  faults: Fault[]
}

/**
 * `scenario` keeps the rules of the format, `paths` are those of quantities in it. The scenarios made share with it whatever they do
 * not change; where static friction falls below the sliding one, or Coulomb friction grows above break-away, these follow. Throws a RangeError for a path without a quantity.
 */
export function varying(scenario: Scenario, paths: string[]): (values: ArrayLike<number>) => Variation {
  const places = paths.map((path) => {
    const schema = quantityAt(scenario, path)
    const keys = keysOf(path)
    if (!schema || !keys || typeof readPath(scenario, path) !== 'number') throw new RangeError(`no quantity at ${path}`)
    return { schema, keys }
  })
  // The file of each job has keys of its own, and rules for them.
  const rules = rulesOf(scenario.job).filter(({ reads }) =>
    reads.every((path) => readPath(scenario, path) !== undefined),
  )
  return (given) => {
    const made = new Set<object>()
    const copy = own(scenario, made)
    const values = places.map(({ schema }, at) => allowed(schema, given[at]!))
    for (const [at, { keys }] of places.entries()) put(copy as unknown as Record<Key, unknown>, keys, values[at]!, made)
    follow(copy, made)
    const stands = places.map(({ keys }) => valueAt(copy, keys))
    const cut = stands.map((value, at) => value !== (places[at]!.schema.type === 'integer' ? values[at] : given[at]))
    return { scenario: copy, values: stands, cut, faults: rules.flatMap(({ check }) => check(copy)) }
  }
}

/** The keys have been looked up in the scenario that the copy is made of. */
const valueAt = (root: Scenario, keys: Key[]) =>
  keys.reduce<unknown>((at, key) => (at as Record<Key, unknown>)[key], root) as number

/** What moves does not hold better than what rests: sliding friction goes no higher than static, break-away no lower than Coulomb. */
function follow(scenario: Scenario, made: Set<object>): void {
  const { actuator } = scenario
  const transmission: { coulomb: number; breakaway: number } = actuator.transmission
  // Only what has been copied can have changed.
  FOLLOWS[scenario.job](scenario, (group) => made.has(group))
  if (made.has(transmission)) transmission.breakaway = Math.max(transmission.breakaway, transmission.coulomb)
}

function allowed({ minimum, maximum, type }: QuantitySchema, value: number): number {
  const inside = Math.min(maximum, Math.max(minimum, value))
  return type === 'integer' ? Math.round(inside) : inside
}

function own<T extends object>(object: T, made: Set<object>): T {
  if (made.has(object)) return object
  const copy = (Array.isArray(object) ? [...object] : { ...object }) as T
  made.add(copy)
  return copy
}

function put(root: Record<Key, unknown>, keys: Key[], value: number, made: Set<object>): void {
  let at = root
  for (const key of keys.slice(0, -1)) {
    const inner = holds(at, key) ? at[key] : undefined
    at[key] = own(inner as object, made)
    at = at[key] as Record<Key, unknown>
  }
  at[keys.at(-1)!] = value
}
