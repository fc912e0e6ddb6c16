/**
 * What would save it: for every parameter that an engineer can change alone, the values that hold the part, found on the real
 * simulator by a wide search on both sides of the present value and bisection of every border. What is proposed lies well inside,
 * holds with every one of a dozen seeds of the noise, and leaves the loops their margins; a border that noise decides is no rescue.
 * For a held part the same search finds how far each parameter may drift before it is lost.
 */
import { JOBS, jobOf } from '../job/index.ts'
import type { Edit, JobId, Scenario } from '../scenario/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import type { LoopMargins } from './loop-margins.ts'
import { type Flaw, flawOf, marginsOf, type Question, seedsOf } from './rescue-judge.ts'
import { COSTS, type Cost, type Parameter, rescueParameters, type Side, schemaAt } from './rescue-parameters.ts'
import { type Interval, type Outcome, TriedValues } from './rescue-values.ts'
import { type AnyRunner, runHere } from './runner.ts'

export interface Rescue {
  path: string
  label: string
  cost: Cost
  /** Value on the bench. */
  from: number
  /** A value well inside those that hold; for a held part the nearest that loses it. Null: none; and its ratio to `from` less 1 (null from 0). */
  value: number | null
  change: number | null
  /** Verdict there. */
  becomes: string | null
  /** The values around it that hold, for a held part around the present value; null: none. */
  interval: Interval | null
  /** Other values that hold, apart from those. */
  islands: Interval[]
  /** Margins of the strategy's loops at `value`, for a held part on the bench; null: none to look at. */
  margins: LoopMargins | null
  /** Seeds of the noise with which it is held at `value`, for a held part on the bench. */
  seeds: { held: number; of: number } | null
  /** Why what holds is not proposed. */
  flaw: Flaw | null
  /** What the rules ask to be changed along with it. */
  along: Edit[]
  /** Everything that was tried, the present value included, by value. */
  tried: Outcome[]
}

export interface RescueProgress {
  rescue: Rescue
  done: number
  of: number
}

/** Values that hold must reach over such a ratio, so that what is set in practice stays among them; common practice, no source. */
const WIDE = 1.2
/** What is proposed lies at most so far inside the nearer border [ratio, squared]. */
const INSIDE = 2.5
/** Which parameters a search is to try where several share them: every `of`th, from the `n`th on. */
export interface Share {
  n: number
  of: number
}

/** One answer a parameter, as it is found; for a part that is held the search is for what loses it. */
export function* rescues(
  scenario: Scenario,
  strategy: StrategyId,
  run: AnyRunner = runHere,
  share: Share = { n: 0, of: 1 },
): Generator<RescueProgress, void, undefined> {
  const question = { scenario, strategy, run, margins: marginsOf(scenario, strategy) }
  const { verdict } = run(scenario, strategy).result
  const held = verdict === jobOf(scenario).well
  const parameters = rescueParameters(scenario, strategy, held).filter((_, n) => n % share.of === share.n)
  const seeds = held ? seedsOf(question, scenario, held) : null
  const search = (parameter: Parameter): Rescue => {
    const found = new Search(question, parameter, verdict)
    return seeds ? found.drift(seeds) : found.rescue()
  }
  for (const [n, parameter] of parameters.entries()) {
    const found = search(parameter)
    const otherwise = found.value === null && parameter.otherwise ? search(parameter.otherwise) : found
    yield { rescue: otherwise.value === null ? found : otherwise, done: n + 1, of: parameters.length }
  }
}

/** Rescues by what they cost, then by how little must change; drifts by how little that is. What does not help comes last. */
export const sortRescues = (job: JobId, found: Rescue[]): Rescue[] =>
  [...found].sort((a, b) => rank(job, a) - rank(job, b) || size(a) - size(b) || a.path.localeCompare(b.path))

function rank(job: JobId, { value, becomes, cost, interval }: Rescue): number {
  if (value === null) return interval === null ? COSTS.length + 1 : COSTS.length
  return becomes === JOBS[job].well ? COSTS.indexOf(cost) : 0
}

/** Changes to or from 0 have no ratio: they come after those that have one. */
const NO_RATIO = 1e6

const size = ({ change }: Rescue) => (change === null || change <= -1 ? NO_RATIO : Math.abs(Math.log(1 + change)))

class Search {
  /** The verdict that is looked for. */
  private readonly well: string
  private readonly values: TriedValues
  private readonly question: Question
  private readonly parameter: Parameter

  constructor(question: Question, parameter: Parameter, verdict: string) {
    this.question = question
    this.parameter = parameter
    this.well = jobOf(question.scenario).well
    this.values = new TriedValues(question, parameter, verdict)
  }

  /** For a part that is lost. */
  rescue(): Rescue {
    const intervals = this.values
      .intervals()
      .sort((a, b) => this.distance(nearEnd(a, this.values.from)) - this.distance(nearEnd(b, this.values.from)))
    let failed: Partial<Rescue> | null = null
    for (const interval of intervals) {
      const islands = intervals.filter((other) => other !== interval)
      for (const value of this.inside(interval)) {
        const { flaw, ...found } = this.judge(value, interval)
        if (!flaw) return this.answer({ ...found, value, becomes: this.well, interval, islands })
        failed ??= { flaw, interval, islands }
      }
    }
    return this.answer(failed ?? {})
  }

  /** For a part that is held with so many seeds. */
  drift(seeds: { held: number; of: number }): Rescue {
    const intervals = this.values.intervals()
    const interval = intervals.find(({ from, to }) => from <= this.values.from && this.values.from <= to) ?? null
    const lost = this.values.sorted().filter(({ verdict }) => verdict !== this.well)
    const [nearest] = lost.map(({ value }) => value).sort((a, b) => this.distance(a) - this.distance(b))
    const scenario = nearest === undefined ? null : this.values.edited(nearest)
    return this.answer({
      value: nearest ?? null,
      becomes: scenario && this.question.run(scenario, this.question.strategy).result.verdict,
      interval,
      islands: intervals.filter((other) => other !== interval),
      margins: this.question.margins,
      seeds,
    })
  }

  private answer(found: Partial<Rescue>): Rescue {
    const { path, cost } = this.parameter
    const { from } = this.values
    const value = found.value ?? null
    return {
      path,
      label: schemaAt(this.question.scenario, path).title,
      cost,
      from,
      value,
      change: value === null || from === 0 ? null : value / from - 1,
      becomes: null,
      interval: null,
      islands: [],
      margins: null,
      seeds: null,
      flaw: null,
      along: value === null ? [] : (this.values.editsFor(value)?.filter((edit) => edit.path !== path) ?? []),
      tried: this.values.sorted(),
      ...found,
    }
  }

  /** Values to propose: some way in from the nearer border, and the middle. */
  private inside(interval: Interval): number[] {
    const near = nearEnd(interval, this.values.from)
    const far = near === interval.from ? interval.to : interval.from
    const side = this.sideOf(near)
    const reach = far > near ? Math.min(far, near * INSIDE) : Math.max(far, near / INSIDE)
    return [...new Set([side.between(near, reach), side.between(near, far)])]
  }

  private sideOf(value: number): Side {
    const { sides } = this.parameter
    return (
      sides.find(({ values }) => values.some((each) => each > this.values.from === value > this.values.from)) ??
      sides[0]!
    )
  }

  private judge(value: number, { from, to }: Interval): Pick<Rescue, 'flaw' | 'margins' | 'seeds'> {
    const none = { margins: null, seeds: null }
    const whole = from === 0 && to === 0 // off is off
    if (!whole && this.sideOf(value).ratio(from, to) < WIDE) return { ...none, flaw: { kind: 'narrow' } }
    const scenario = this.values.edited(value)
    if (!scenario) return { ...none, flaw: { kind: 'narrow' } }
    const margins = marginsOf(scenario, this.question.strategy)
    const flaw = margins && flawOf(margins, this.question.margins)
    if (flaw) return { ...none, flaw }
    const seeds = seedsOf(this.question, scenario, this.values.holds(value))
    return { margins, seeds, flaw: seeds.held < seeds.of ? { kind: 'noise', ...seeds } : null }
  }

  private distance(value: number): number {
    if (value === this.values.from) return 0
    return value === 0 || this.values.from === 0 ? NO_RATIO : Math.abs(Math.log(value / this.values.from))
  }
}

const nearEnd = ({ from, to }: Interval, present: number) => (from > present ? from : to)
