/** The scenarios of a lesson: its preset, what the lesson sets, what a run sets, and what the reader has set. */
import { ALL_PRESETS, type Checked, type Edit, editScenario, type Scenario } from '../../scenario/index.ts'
import type { Lesson, LessonRunSpec } from './format.ts'

export const editsOf = (set: Record<string, unknown>): Edit[] =>
  Object.entries(set).map(([path, value]) => ({ path, value }))

/** The lesson's own scenario, before a run changes it. */
export function lessonScenario(lesson: Pick<Lesson, 'preset' | 'set' | 'title'>): Checked {
  const { scenario } = ALL_PRESETS.find((preset) => preset.id === lesson.preset)!
  return editScenario({ ...scenario, name: `Lesson: ${lesson.title}` }, editsOf(lesson.set))
}

/** The scenario of one run. `slider` is the reader's edit, which a given run does not take. */
export function runScenario(base: Scenario, { set, given }: LessonRunSpec, slider: Edit[] = []): Checked {
  return editScenario(base, [...editsOf(set), ...(given ? [] : slider)])
}
