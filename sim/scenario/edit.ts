/** Reading and changing one key of a scenario by its path, e.g. `servo.kp` or `arm.moves[0].start`. */
import type { Scenario } from './schema/index.ts'
import { type Checked, checkScenario } from './validate.ts'

export interface Edit {
  path: string
  /** Any JSON value; `undefined` takes the key, or the entry of a list, away. */
  value: unknown
}

const keysOf = (path: string) => path.split(/[.[\]]+/).filter((key) => key !== '')

const isIndex = (key: string) => /^\d+$/.test(key)

const refuse = (path: string, given: string): Checked => ({
  ok: false,
  faults: [{ path, given, allowed: 'a path such as servo.kp' }],
})

/** The value at a path, or undefined. */
export function readPath(scenario: Scenario, path: string): unknown {
  let at: unknown = scenario
  for (const key of keysOf(path))
    at = typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined
  return at
}

/** A copy of `input` with the edits made, checked anew. Missing objects and lists on the way are made, so that null can be replaced. */
export function editScenario(input: object, edits: Edit[]): Checked {
  const copy = structuredClone(input) as Record<string, unknown>
  for (const edit of edits) {
    const keys = keysOf(edit.path)
    const last = keys.pop()
    if (last === undefined) return refuse(edit.path, 'an empty path')
    if (last === '__proto__' || keys.includes('__proto__')) return refuse(edit.path, 'a path through __proto__')
    let at: Record<string, unknown> = copy
    for (const [index, key] of keys.entries()) {
      const next = at[key]
      if (typeof next !== 'object' || next === null) at[key] = isIndex(keys[index + 1] ?? last) ? [] : {}
      at = at[key] as Record<string, unknown>
    }
    if (edit.value !== undefined) at[last] = edit.value
    else if (Array.isArray(at) && isIndex(last)) at.splice(Number(last), 1)
    else delete at[last]
  }
  return checkScenario(copy)
}
