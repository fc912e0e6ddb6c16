/** The scenarios of a lesson: its preset, what the lesson sets, what a run sets, and what the reader has set. */
import {
  type Checked,
  type Edit,
  editScenario,
  PRESETS,
  type QuantitySchema,
  SCHEMAS,
  type Scenario,
} from '../../scenario/index.ts'
import type { Lesson, LessonRunSpec } from './format.ts'

export const editsOf = (set: Record<string, unknown>): Edit[] =>
  Object.entries(set).map(([path, value]) => ({ path, value }))

/** The lesson's own scenario, before a run changes it. */
export function lessonScenario(lesson: Pick<Lesson, 'preset' | 'set' | 'title'>): Checked {
  const { scenario } = PRESETS.find((preset) => preset.id === lesson.preset)!
  return editScenario({ ...scenario, name: `Lesson: ${lesson.title}` }, editsOf(lesson.set))
}

/** The scenario of one run. `slider` is the reader's edit, which a given run does not take. */
export function runScenario(base: Scenario, { set, given }: LessonRunSpec, slider: Edit[] = []): Checked {
  return editScenario(base, [...editsOf(set), ...(given ? [] : slider)])
}

interface Node {
  properties?: Record<string, Node>
  items?: Node
  anyOf?: Node[]
  type?: string
}

/** Schema of the quantity at a path; null where there is none. */
export function quantityAt(scenario: Scenario, path: string): QuantitySchema | null {
  let at: Node | undefined = SCHEMAS[scenario.actuator.kind] as Node
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
