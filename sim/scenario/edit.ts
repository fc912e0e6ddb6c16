/** Reading and changing one key of a scenario by its path, e.g. `servo.kp` or `arm.moves[0].start`. */
import type { Scenario } from './schema.ts'
import { type Checked, checkScenario } from './validate.ts'

export interface Edit {
  path: string
  /** Any JSON value; `undefined` takes an optional key away. */
  value: unknown
}

const keysOf = (path: string) => path.split(/[.[\]]+/).filter((key) => key !== '')

/** The value at a path, or undefined. */
export function readPath(scenario: Scenario, path: string): unknown {
  let at: unknown = scenario
  for (const key of keysOf(path))
    at = typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined
  return at
}

/** A copy of `input` with the edits made, checked anew. Missing objects on the way are made, so that null can be replaced. */
export function editScenario(input: object, edits: Edit[]): Checked {
  const copy = structuredClone(input) as Record<string, unknown>
  for (const edit of edits) {
    const keys = keysOf(edit.path)
    const last = keys.pop()
    if (last === undefined || [...keys, last].some((key) => key === '__proto__')) {
      return { ok: false, faults: [{ path: edit.path, given: 'an empty path', allowed: 'a path such as servo.kp' }] }
    }
    let at: Record<string, unknown> = copy
    for (const key of keys) {
      const next = at[key]
      if (typeof next !== 'object' || next === null) at[key] = {}
      at = at[key] as Record<string, unknown>
    }
    if (edit.value === undefined) delete at[last]
    else at[last] = edit.value
  }
  return checkScenario(copy)
}
