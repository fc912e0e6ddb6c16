/** A key of the scenario in words: its label, and its value with unit. */
import { type ActuatorKind, exponentOf, JOB_SCHEMAS, type JobId, type Scenario } from '../../../sim/index.ts'
import { formatPlain, NO_FIGURE, withUnit } from '../../ui/format.ts'
import { shownUnit, type UnitSystem } from '../units.ts'

interface Node {
  type?: string
  title?: string
  unit?: string
  shown?: string
  enum?: string[]
  labels?: string[]
  anyOf?: Node[]
  items?: Node
  properties?: Record<string, Node>
}

/** `Part, width`: the titles on the way to a key, of a grip unless another job is named. */
export function settingLabel(kind: ActuatorKind, path: string, job: JobId = 'grip'): string {
  const titles = nodesOn(kind, path, job).flatMap((node) => node.title ?? [])
  return titles.slice(-2).join(', ') || path
}

export function settingText(scenario: Scenario, path: string, value: unknown, units: UnitSystem): string {
  if (value === undefined || value === null) return NO_FIGURE
  const node = nodesOn(scenario.actuator.kind, path, scenario.job).at(-1) ?? {}
  const quantity = node.anyOf?.find((option) => option.unit !== undefined) ?? node
  if (typeof value === 'number') {
    const { symbol, toShown } = shownUnit({ unit: '', ...quantity }, units, exponentOf(scenario))
    return withUnit(formatPlain(toShown(value)), symbol)
  }
  if (Array.isArray(value)) return `${value.length} set`
  return node.labels?.[node.enum?.indexOf(String(value)) ?? -1] ?? String(value)
}

/** Schema nodes from the outermost group down to a key; shorter where the key is of another kind of actuator. */
function nodesOn(kind: ActuatorKind, path: string, job: JobId): Node[] {
  const nodes: Node[] = []
  let at: Node | undefined = (JOB_SCHEMAS[job] as Partial<Record<ActuatorKind, unknown>>)[kind] as Node | undefined
  for (const key of path.split(/[.[\]]+/).filter(Boolean)) {
    const object: Node | undefined = at?.anyOf?.find((option) => option.properties) ?? at
    at = object?.items ?? object?.properties?.[key]
    if (!at) break
    nodes.push(at)
  }
  return nodes
}
