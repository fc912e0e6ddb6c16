/** Which keys two or more scenarios set differently. */
import { readPath, type Scenario } from '../../../sim/index.ts'

/** Paths at which the scenarios differ, in the order of the file. A list counts as one value. */
export function differingPaths(scenarios: Scenario[]): string[] {
  const paths = new Set(scenarios.flatMap((scenario) => leaves(scenario)))
  const values = (path: string) => scenarios.map((scenario) => JSON.stringify(readPath(scenario, path)))
  return [...paths].filter((path) => path !== 'notes' && new Set(values(path)).size > 1)
}

function leaves(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [path]
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, path ? `${path}.${key}` : key))
}
