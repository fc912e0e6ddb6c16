/**
 * A job that is asked for from a blank sheet: the questions without which there is no such job, those that may be left, and the scenario that
 * comes of the answers. One file a job, and one line in `index.ts`.
 */
import type { Edit, QuantitySchema, Scenario } from '../../scenario/index.ts'

/** What has been told so far. Nothing in it stems from anywhere else. */
export interface Answers {
  name: string
  /** By question, SI; null: nothing was given. */
  figures: Record<string, number | null | undefined>
  choices: Record<string, string | undefined>
  /** Id of a generic axis; null: not chosen yet. */
  axis: string | null
  /** Wanted effort [N or N·m]; null: what the window suggests. */
  effort: number | null
}

export const BLANK: Answers = { name: '', figures: {}, choices: {}, axis: null, effort: null }

/** A quantity of the format, by its path. */
export interface AskFigure {
  id: string
  path: string
  /** There is no such job without it. */
  needed?: true
  /** In place of the words of the schema. */
  label?: string
  note?: string
  /** Asked only where a choice was answered so. */
  when?: { choice: string; is: string }
}

export interface AskChoice {
  id: string
  legend: string
  options: readonly { value: string; label: string }[]
}

/** A step is told where its choices are answered, its needed figures are given, and one of `some` where there are any. */
export interface AskStep {
  title: string
  choices?: readonly AskChoice[]
  figures: readonly AskFigure[]
  /** One of the figures that are asked under this choice has to be given. */
  some?: { choice: string; is: string }
  /** Stands below its questions. */
  note?: { when: { choice: string; is: string }; text: string }
}

/** Edges of the effort that was asked for [N or N·m]; null: none, or not known yet. */
export interface Edges {
  least: number | null
  most: number | null
}

export interface NewJob {
  /** In the words of the trade: what is to be done. */
  label: string
  steps: readonly AskStep[]
  effort: QuantitySchema
  /** What the answers make of the format's defaults, without an axis. */
  edits(answers: Answers): Edit[]
  /** What follows from the answers once the rest stands, such as a band from the force that a joint takes. */
  follows?(scenario: Scenario, answers: Answers): Edit[]
  /** The window as far as the answers make one. */
  edges(scenario: Scenario, answers: Answers): Edges
  /** Whether the whole window of the scenario stems from what was told, not only edges of the effort. */
  whole(answers: Answers): boolean
  /** Said before there is a window. */
  windowComes: string
  /** How its edges are told. */
  window: Record<'title' | 'unit' | 'below' | 'above' | 'noLeast' | 'noMost' | 'empty', string>
  /** What an axis makes of it: where its profile ends, and gains that only it knows. */
  onAxis?(scenario: Scenario, effort: number | null): Edit[]
  /** Gains of the force loop by their names, where the job has a closed form of them. */
  forceGains?(scenario: Scenario): Record<'kp' | 'ki' | 'kd', number>
  /** How long a run has to last [s], with all gains in place. */
  lasts?(scenario: Scenario, effort: number | null): number
  /** Speed that the output has to reach [m/s or rad/s], where a drive has to be chosen for it. */
  fastest?(scenario: Scenario): number
  /** Paths that nobody was asked about, or nobody answered, and that are told. */
  assumed(answers: Answers): readonly string[]
}

export const given = ({ figures }: Answers, id: string): number | undefined => figures[id] ?? undefined

/** So that a reckoned figure reads well. */
export const rounded = (value: number, digits = 4): number => Number(value.toPrecision(digits))

/** Answered figures at their own paths. */
export const asGiven = (answers: Answers, paths: readonly string[]): Edit[] =>
  paths.flatMap((path) => {
    const value = given(answers, path)
    return value === undefined ? [] : [{ path, value }]
  })

/** Figures that are asked for by the path at which they stand in the file. */
export const figuresAt = (needed: readonly string[], left: readonly string[]): AskFigure[] => [
  ...needed.map((path) => ({ id: path, path, needed: true as const })),
  ...left.map((path) => ({ id: path, path })),
]

/** Of paths that may be left, those that were. */
export const leftOut = (answers: Answers, paths: readonly string[]): string[] =>
  paths.filter((path) => given(answers, path) === undefined)
