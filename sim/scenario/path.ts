/** Reading one key of a scenario by its path, e.g. `servo.kp` or `arm.moves[0].start`. */
import { pathNow } from './migrate.ts'
import type { Scenario } from './schema/index.ts'

export type Key = string | number

/** A name, then names after dots and indices in brackets. */
const PATH = /^[A-Za-z_]\w*(?:\.[A-Za-z_]\w*|\[\d{1,9}\])*$/

/** The keys on a path, an index as a number; null: no path. */
export function keysOf(path: string): Key[] | null {
  if (!PATH.test(path)) return null
  return [...path.matchAll(/\w+/g)].map(([key], at) => (at > 0 && /^\d/.test(key) ? Number(key) : key))
}

/** Whether an object has a key, or a list an entry; `length` and whatever is inherited is neither. */
export const holds = (at: unknown, key: Key): at is Record<Key, unknown> =>
  typeof at === 'object' && at !== null && Array.isArray(at) === (typeof key === 'number') && Object.hasOwn(at, key)

/** The value at a path, also at one of version 1, or undefined. */
export function readPath(scenario: Scenario, path: string): unknown {
  const keys = keysOf(pathNow(path))
  if (!keys) return undefined
  let at: unknown = scenario
  for (const key of keys) at = holds(at, key) ? at[key] : undefined
  return at
}
