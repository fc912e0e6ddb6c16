/** Looks a quantity up in the schema. */
import type { QuantitySchema } from './quantity.ts'
import { type ActuatorKind, FIRST_JOB, JOBS, type JobId } from './schema/index.ts'

interface Node {
  properties?: Record<string, Node>
  items?: Node
  anyOf?: Node[]
  type?: string
}

/** Schema of the quantity at a path, of a grip where no job is named; null where there is none. */
export function quantityAt(
  { actuator, job = FIRST_JOB }: { actuator: { kind: ActuatorKind }; job?: JobId },
  path: string,
): QuantitySchema | null {
  let at: Node | undefined = JOBS[job][actuator.kind] as Node | undefined
  for (const key of path.split(/[.[\]]+/).filter((each) => each !== '')) {
    const inner: Node = at?.anyOf?.find((option) => option.type !== 'null') ?? at!
    at = /^\d+$/.test(key)
      ? inner.items
      : Object.hasOwn(inner.properties ?? {}, key)
        ? inner.properties![key]
        : undefined
    if (!at) return null
  }
  const found = at?.anyOf?.find((option) => option.type !== 'null') ?? at
  return found?.type === 'number' || found?.type === 'integer' ? (found as unknown as QuantitySchema) : null
}
