/**
 * What would save it: for every parameter that an engineer can change alone, the smallest change that turns the verdict into
 * `held`, found on the real simulator by bracketing away from the present value on both sides and bisection on values of three
 * digits. For a held part the same search finds how far each parameter may drift before it is lost.
 */

import type { Verdict } from '../job/grip/result.ts'
import { type Edit, editScenario, readPath, type Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { type Parameter, rescueParameters, type Side, schemaAt } from './rescue-parameters.ts'
import { type Runner, runHere } from './runner.ts'

export interface Rescue {
  path: string
  label: string
  /** Value on the bench; value that turns the verdict (null: none that was tried does); their ratio less 1 (null from 0, too). */
  from: number
  value: number | null
  change: number | null
  /** Verdict at `value`. */
  becomes: Verdict | null
  /** Nearest value tried short of `value`, where the verdict is not turned yet. */
  until: number | null
  /** What the rules ask to be changed along with it. */
  along: Edit[]
  /** Lowest and highest value tried. */
  tried: [number, number]
}

export interface RescueProgress {
  rescue: Rescue
  done: number
  of: number
}

/** The boundary is known when the values on its two sides are this near [ratio]. */
const NEAR = 1.01

/** One answer a parameter, as it is found; for a part that is held the search is for what loses it. */
export function* rescues(scenario: Scenario, strategy: StrategyId, runner = runHere): Generator<RescueProgress> {
  const held = runner(scenario, strategy, { untilLost: true }).result.verdict === 'held'
  const parameters = rescueParameters(scenario, strategy, held)
  for (const [n, parameter] of parameters.entries()) {
    const search = (each: Parameter) => new Search(scenario, strategy, each, !held, runner).run()
    const found = search(parameter)
    const otherwise = found.value === null && parameter.otherwise ? search(parameter.otherwise) : found
    yield { rescue: otherwise.value === null ? found : otherwise, done: n + 1, of: parameters.length }
  }
}

/** By how little must change, what does not help last. */
export const sortRescues = (found: Rescue[]): Rescue[] =>
  [...found].sort((a, b) => size(a) - size(b) || a.path.localeCompare(b.path))

/** Changes to or from 0 have no ratio: they come after those that have one. */
const NO_RATIO = 1e6

function size({ value, change }: Rescue): number {
  if (value === null) return Number.POSITIVE_INFINITY
  return change === null || change <= -1 ? NO_RATIO : Math.abs(Math.log(1 + change))
}

/** A value that turns the verdict and the last one before it that does not. */
interface Boundary {
  hit: number
  miss: number
}

class Search {
  private readonly runner: Runner
  private readonly tried: number[] = []
  private readonly scenario: Scenario
  private readonly strategy: StrategyId
  private readonly parameter: Parameter
  /** Whether a held part is what turns the verdict. */
  private readonly wanted: boolean
  private readonly from: number

  constructor(scenario: Scenario, strategy: StrategyId, parameter: Parameter, wanted: boolean, runner: Runner) {
    this.runner = runner
    this.scenario = scenario
    this.strategy = strategy
    this.parameter = parameter
    this.wanted = wanted
    this.from = readPath(scenario, parameter.path) as number
  }

  run(): Rescue {
    const { scenario, strategy, parameter, from } = this
    const { path } = parameter
    const found = this.nearest()
    const value = found?.hit ?? null
    const edits = value === null ? null : this.editsFor(value)
    const ratio = value === null || from === 0 ? null : value / from - 1
    const checked = edits && editScenario(scenario, edits)
    return {
      path,
      label: schemaAt(scenario, path).title,
      from,
      value,
      change: ratio,
      becomes: !checked?.ok ? null : this.wanted ? 'held' : this.runner(checked.scenario, strategy).result.verdict,
      until: found?.miss ?? null,
      along: edits?.filter((edit) => edit.path !== path) ?? [],
      tried: [Math.min(from, ...this.tried), Math.max(from, ...this.tried)],
    }
  }

  /** Both sides in turn, so that neither is searched further than where the other has hit. */
  private nearest(): Boundary | null {
    const { sides } = this.parameter
    const before = sides.map(() => this.from)
    const open = sides.map(() => true)
    const rungs = Math.max(0, ...sides.map(({ values }) => values.length))
    for (let rung = 0; rung < rungs; rung++) {
      const found: Boundary[] = []
      for (const [n, side] of sides.entries()) {
        const value = side.values[rung]
        if (value === undefined || !open[n]) continue
        const told = this.try(value)
        if (told === 'hit') found.push(this.bisect(side, before[n]!, value))
        else if (told === 'refused') open[n] = false
        before[n] = value
      }
      if (found.length > 0) return found.sort((a, b) => this.distance(a.hit) - this.distance(b.hit))[0]!
    }
    return null
  }

  private bisect(side: Side, miss: number, hit: number): Boundary {
    let [near, far] = [miss, hit]
    while (!(Math.max(near / far, far / near) <= NEAR)) {
      const value = side.between(near, far)
      if (value === near || value === far) break
      if (this.try(value) === 'hit') far = value
      else near = value
    }
    return { hit: far, miss: near }
  }

  private distance(value: number): number {
    return value === 0 || this.from === 0 ? NO_RATIO : Math.abs(Math.log(value / this.from))
  }

  /** Whether a value turns the verdict. */
  private try(value: number): 'hit' | 'miss' | 'refused' {
    const edits = this.editsFor(value)
    const checked = edits && editScenario(this.scenario, edits)
    if (!checked?.ok) return 'refused'
    this.tried.push(value)
    try {
      const { verdict } = this.runner(checked.scenario, this.strategy, { untilLost: true }).result
      return (verdict === 'held') === this.wanted ? 'hit' : 'miss'
    } catch (error) {
      if (error instanceof RangeError) return 'refused' // more steps than a run may take
      throw error
    }
  }

  /** The value by itself, or, where the rules refuse that, with what they ask for along with it. */
  private editsFor(value: number): Edit[] | null {
    const { path, along, together: needed } = this.parameter
    const alone = [{ path, value }]
    if (!needed && editScenario(this.scenario, alone).ok) return alone
    const together = along && [...alone, ...along(this.scenario, value)]
    return together && editScenario(this.scenario, together).ok ? together : null
  }
}
