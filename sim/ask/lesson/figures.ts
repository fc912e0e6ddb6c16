/**
 * Figures of a lesson by name: `slow.peakForce`, `slow.verdict`, `slow.scenario.approach.speed`, `slow.setting.expected`,
 * `slow.parts.held`, `scenario.part.mass`, `window.least`, `gravity`, a bound of a condition by its path, `question.goal[0].below`, or the id of a
 * figure that the lesson makes of others.
 */

import { GRAVITY } from '../../axis/arm.ts'
import type { GripEvents, GripResult } from '../../job/grip/result.ts'
import { jobOf } from '../../job/index.ts'
import { exponentOf } from '../../scenario/exponent.ts'
import { quantityAt, readPath, type Scenario } from '../../scenario/index.ts'
import { strategyOf } from '../../strategy/index.ts'
import type { ShareOf } from '../spread/answer.ts'
import type { DerivedFigure, Lesson } from './format.ts'

/** A figure with what it takes to write it: SI unit, unit in which people read it, exponent of the contact law. */
export interface LessonFigure {
  label: string
  /** A word for a verdict; null where the run has no such figure. */
  value: number | string | null
  unit: string
  shown?: string
  exponent?: number
  /** Finest step worth reading [SI]. */
  grain?: number
  /** Given by the scenario, so that all of its digits count. */
  exact: boolean
}

/** What a figure needs of a run. */
export interface Ran {
  scenario: Scenario
  result: GripResult
  /** Effort when the run ends, of a grip the force at the driven contact [N], [N·m]. */
  finalForce: number
  /** Of many parts, those that are held as required; null: only the one was gripped. */
  parts: ShareOf | null
}

/** A name that is understood: which runs it needs, and how its value is read from them. */
export interface Source extends Omit<LessonFigure, 'value'> {
  needs: string[]
  /** A word, not a number. */
  word?: true
  read(runs: ReadonlyMap<string, Ran>): LessonFigure['value']
}

const EVENTS: Record<keyof GripEvents, string> = {
  lift: 'Lift',
  engaged: 'Takes over',
  crack: 'Cracks',
  met: 'Jaws meet',
  mark: 'Marked',
  slip: 'Slides',
  loose: 'Comes loose',
  drop: 'Drops',
  release: 'Released',
  unstable: 'Off its rails',
}

const SETTING = { expected: 'Force that the setting means', least: 'Least that it means', most: 'Most that it means' }
const WINDOW = { least: 'Least force that holds', most: 'Most that the part takes' }
const OTHER_WINDOW = { least: 'Least that is needed', most: 'Most that is allowed' }

const has = <O extends object>(object: O, key: string): key is Extract<keyof O, string> => Object.hasOwn(object, key)

/** Null for a name that means nothing. `scenarios` holds the scenario of each run and, under '', that of the lesson. */
export function sourceOf(name: string, lesson: Lesson, scenarios: ReadonlyMap<string, Scenario>): Source | null {
  const made = lesson.figures.find((figure) => figure.id === name)
  if (made) return derivedSource(made, lesson, scenarios)
  const [head = '', ...rest] = name.split('.')
  const base = scenarios.get('')
  const tail = rest.join('.')
  if (!base) return null
  if (name === 'gravity') return { label: 'Gravity', unit: 'm/s²', exact: false, needs: [], read: () => GRAVITY }
  if (head === 'question') return boundSource(tail, lesson, scenarios)
  if (head === 'scenario') return parameter(base, tail)
  if (head === 'window') return fixed(base, tail)
  const run = lesson.runs.find((each) => each.id === head)
  const scenario = scenarios.get(head)
  if (!run || !scenario) return null
  if (tail.startsWith('scenario.')) return parameter(scenario, tail.slice('scenario.'.length))
  if (tail.startsWith('window.')) return fixed(scenario, tail.slice('window.'.length))
  if (tail.startsWith('setting.')) {
    const key = tail.slice('setting.'.length)
    if (!has(SETTING, key)) return null
    const value = strategyOf(run.strategy).forceOf(scenario)[key]
    return { label: SETTING[key], unit: jobOf(scenario).output.effort, exact: false, needs: [], read: () => value }
  }
  if (tail.startsWith('parts.')) return partsSource(head, tail.slice('parts.'.length), run.parts)
  return runSource(head, tail, scenario)
}

/** Of the parts that a run grips besides: how many, the share that is held as required, and its 95 % limits. */
const PARTS: Record<string, { label: string; read(held: ShareOf): number }> = {
  held: { label: 'Parts that are held as required', read: ({ share }) => share },
  failed: { label: 'Parts that are not', read: ({ share }) => 1 - share },
  low: { label: 'Least share that is likely', read: ({ low }) => low },
  high: { label: 'Largest share that is likely', read: ({ high }) => high },
}

function partsSource(run: string, key: string, parts: number | undefined): Source | null {
  if (parts === undefined) return null
  if (key === 'count') return { label: 'Parts', unit: '', exact: true, needs: [], read: () => parts }
  if (!has(PARTS, key)) return null
  const { label, read } = PARTS[key]!
  return { label, unit: '', shown: '%', exact: false, needs: [run], read: (runs) => read(runs.get(run)!.parts!) }
}

function runSource(run: string, key: string, scenario: Scenario): Source | null {
  const common = { exact: false, needs: [run] }
  const { figures, output } = jobOf(scenario)
  const metric = figures.find(({ id }) => id === key)
  if (metric && key !== 'stepError') {
    const { label, unit, shown, grain } = metric
    return { label, unit, shown: shown ?? unit, grain, ...common, read: (runs) => metric.value(runs.get(run)!.result) }
  }
  if (scenario.job === 'grip' && has(EVENTS, key))
    return { label: EVENTS[key], unit: 's', ...common, read: (runs) => runs.get(run)!.result.events[key] }
  if (key === 'verdict')
    return { label: 'Verdict', unit: '', word: true, ...common, read: (runs) => runs.get(run)!.result.verdict }
  if (key === 'finalForce')
    return { label: 'Force at the end', unit: output.effort, ...common, read: (runs) => runs.get(run)!.finalForce }
  return null
}

/** A bound that the question names, so that its words need not repeat the number. */
function boundSource(path: string, lesson: Lesson, scenarios: ReadonlyMap<string, Scenario>): Source | null {
  const { question } = lesson
  const [, goal, choice, when, side] =
    /^(?:goal\[(\d+)\]|choices\[(\d+)\]\.when\[(\d+)\])\.(above|below)$/.exec(path) ?? []
  const condition =
    question.kind === 'slider' && goal !== undefined
      ? question.goal[Number(goal)]
      : question.kind === 'choice' && when !== undefined
        ? question.choices[Number(choice)]?.when[Number(when)]
        : undefined
  const value = condition?.[side as 'above' | 'below']
  const of = condition && sourceOf(condition.figure, lesson, scenarios)
  return of && typeof value === 'number' ? { ...of, exact: true, needs: [], read: () => value } : null
}

function parameter(scenario: Scenario, path: string): Source | null {
  const schema = quantityAt(scenario, path)
  const value = readPath(scenario, path)
  if (!schema || typeof value !== 'number') return null
  const { title, unit, shown } = schema
  const exponent = exponentOf(scenario)
  return { label: title, unit, shown: shown ?? unit, exponent, exact: true, needs: [], read: () => value }
}

function fixed(scenario: Scenario, key: string): Source | null {
  if (!has(WINDOW, key)) return null
  const { output, study } = jobOf(scenario)
  const value = study.window(scenario)[key]
  const label = (scenario.job === 'grip' ? WINDOW : OTHER_WINDOW)[key]
  return { label, unit: output.effort, exact: key === 'most', needs: [], read: () => value }
}

function derivedSource(
  { id, label, take, of, shown }: DerivedFigure,
  lesson: Lesson,
  scenarios: ReadonlyMap<string, Scenario>,
): Source | null {
  const others = {
    ...lesson,
    figures: lesson.figures.slice(
      0,
      lesson.figures.findIndex((figure) => figure.id === id),
    ),
  }
  const sources = of.map((name) => sourceOf(name, others, scenarios))
  if (!sources.every((source) => source !== null)) return null
  const first = sources[0]!
  return {
    label,
    unit: take === 'ratio' ? '' : first.unit,
    shown: shown ?? (take === 'ratio' ? '' : (first.shown ?? first.unit)),
    exact: sources.every((source) => source.exact),
    needs: [...new Set(sources.flatMap((source) => source.needs))],
    read(runs) {
      const values = sources.map((source) => source.read(runs))
      if (!values.every((value) => typeof value === 'number')) return null
      const value = TAKE[take](values)
      return Number.isFinite(value) ? value : null
    },
  }
}

const TAKE: Record<DerivedFigure['take'], (values: number[]) => number> = {
  ratio: ([a, b]) => a! / b!,
  difference: ([a, b]) => a! - b!,
  range: (values) => Math.max(...values) - Math.min(...values),
  largest: (values) => Math.max(...values),
  least: (values) => Math.min(...values),
  mean: (values) => values.reduce((sum, value) => sum + value, 0) / values.length,
}

export function figureOf(
  { needs: _, word: __, read, ...written }: Source,
  runs: ReadonlyMap<string, Ran>,
): LessonFigure {
  return { ...written, value: read(runs) }
}

/** Names of the placeholders in a text, `{slow.peakForce}`. */
export const placeholdersOf = (text: string): string[] => [...text.matchAll(/\{([^{}]*)\}/g)].map(([, name]) => name!)
