/** What a command of the command line is, and what several of them need to read their arguments. */
import { parseArgs } from 'node:util'
import { jobOf } from '../job/index.ts'
import type { Core } from '../run/core.ts'
import { jobWords } from '../say/jobs.ts'
import type { Scenario } from '../scenario/index.ts'
import { STRATEGIES, strategiesOn } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'

export interface Command {
  id: string
  /** What follows its name in the usage text; '' for nothing. */
  takes: string
  /** What it prints, in one phrase. */
  does: string
  /**
   * The exit code: 0 ran, 3 the simulation left the range of finite numbers. Throws a Refused for what it cannot take. `core` carries
   * out its runs.
   */
  run(args: string[], core: Core): number | Promise<number>
}

/** An input that is refused, or a place that cannot be written to; each line goes to stderr. */
export class Refused extends Error {
  readonly lines: string[]
  /** Whether the usage text is said after them. */
  readonly usage: boolean
  constructor(lines: string[], usage = false) {
    super(lines.join('\n'))
    this.lines = lines
    this.usage = usage
  }
}

type Options = NonNullable<NonNullable<Parameters<typeof parseArgs>[0]>['options']>

/** The options and at most `most` other arguments. */
export function optionsOf<const O extends Options>(args: string[], known: O, most: number) {
  try {
    const parsed = parseArgs({ args, options: known, allowPositionals: true, strict: true })
    const extra = parsed.positionals[most]
    if (extra !== undefined) throw new Error(`unexpected argument "${extra}"`)
    return parsed
  } catch (error) {
    throw new Refused([error instanceof Error ? error.message : String(error)], true)
  }
}

/** Options of every command that reads a scenario. */
export const SCENARIO_OPTIONS = {
  set: { type: 'string', multiple: true, default: [] as string[] },
  format: { type: 'string', default: 'table' },
} as const

/** How the same options stand in the usage text. */
export const SCENARIO_USAGE = '[--set PATH=VALUE …] [--format table|json]'

/** What a question about one strategy takes. */
export const QUESTION_USAGE = `FILE --strategy ID ${SCENARIO_USAGE}`

export function isJson(format: string): boolean {
  if (format !== 'table' && format !== 'json') throw new Refused([`--format: given "${format}", allowed table, json`])
  return format === 'json'
}

export function strategyNamed(given: string): StrategyId {
  const ids = STRATEGIES.map(({ id }) => id)
  const strategy = ids.find((id) => id === given)
  if (!strategy) throw new Refused([`--strategy: given "${given}", allowed ${ids.join(', ')}`])
  return strategy
}

/** The strategies of `--strategy`, all that make sense on the job, or the one that is named. */
export function strategiesNamed(given: string, scenario: Pick<Scenario, 'job'>): StrategyId[] {
  if (given === 'all') return strategiesOn(jobOf(scenario)).map(({ id }) => id)
  const strategy = strategyNamed(given)
  const refused = jobWords(scenario).refuses?.[strategy]
  if (refused !== undefined) throw new Refused([`--strategy: ${refused}`])
  return [strategy]
}

/** A RangeError of the simulator is an input that it refuses. */
export function refusing<T>(compute: () => T): T {
  try {
    return compute()
  } catch (error) {
    if (error instanceof RangeError) throw new Refused([error.message])
    throw error
  }
}

/** The number that an option was given; undefined where it was not. */
export function numberOf(option: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  const value = text.trim() === '' ? Number.NaN : Number(text)
  if (!Number.isFinite(value)) throw new Refused([`${option}: given "${text}", allowed a number`])
  return value
}

/** A figure in a table; a dash where there is none. */
export const figureText = (value: number | null, digits = 4) =>
  value === null ? '—' : String(Number(value.toPrecision(digits)))

/** One of a few words. */
export function oneOf<const T extends string>(option: string, given: string, allowed: readonly T[]): T {
  const found = allowed.find((each) => each === given)
  if (!found) throw new Refused([`${option}: given "${given}", allowed ${allowed.join(', ')}`])
  return found
}

/** The whole number that an option was given; undefined where it was not. */
export function wholeOf(option: string, given: string | undefined, least: number, most: number): number | undefined {
  const value = numberOf(option, given)
  if (value !== undefined && !(Number.isInteger(value) && value >= least && value <= most))
    throw new Refused([`${option}: given "${given}", allowed a whole number from ${least} to ${most}`])
  return value
}
