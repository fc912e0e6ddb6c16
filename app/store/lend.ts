/** What a part of a study has of its own, to be lent to the bench. */
import { readPath, type Scenario } from '../../sim/index.ts'
import type { Lent } from './lent.ts'

/** What `part` has of its own. */
export const lentOf = (name: string, part: Scenario, of: Scenario): Lent => ({
  name,
  of,
  edits: differences(part, of).map((path) => ({ path, value: readPath(part, path) })),
})

/** Paths of the single values in which two scenarios differ; where only one has a list or an object, its path. */
function differences(a: unknown, b: unknown, path = ''): string[] {
  if (Object.is(a, b)) return []
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return [path]
  const list = Array.isArray(a)
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])]
  return keys.flatMap((key) =>
    differences(
      (a as Record<string, unknown>)[key],
      (b as Record<string, unknown>)[key],
      list ? `${path}[${key}]` : path ? `${path}.${key}` : key,
    ),
  )
}
