/**
 * What would save it: for every parameter that an engineer can change alone, the values that hold the part, found on the real
 * simulator by a wide search on both sides of the present value and bisection of every border. What is proposed lies well inside,
 * holds with every one of a dozen seeds of the noise, and leaves the loops their margins; a border that noise decides is no rescue.
 * For a held part the same search finds how far each parameter may drift before it is lost.
 */
import { travelToContact } from '../job/grip/geometry.ts'
import type { Verdict } from '../job/grip/result.ts'
import { type Edit, editScenario, readPath, type Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { approachTime } from './counter-runs.ts'
import { type LoopMargins, loopMargins } from './loop-margins.ts'
import { COSTS, type Cost, type Parameter, rescueParameters, type Side, schemaAt } from './rescue-parameters.ts'
import { type Runner, runHere } from './runner.ts'

/** Values that hold, each end run with the seed on the bench; `open` ends are those of what was tried. */
export interface Interval {
  from: number
  to: number
  open: { from: boolean; to: boolean }
}

export interface Outcome {
  value: number
  verdict: Verdict
  /** The jaws arrive when the support has gone. */
  late: boolean
}

/** Why values that hold are no rescue: they lie too close together, or what is proposed leaves too little. */
export type Flaw =
  | { kind: 'narrow' }
  | { kind: 'unstable loop' }
  | { kind: 'phase margin' | 'gain margin'; value: number }
  | { kind: 'noise'; held: number; of: number }

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
  becomes: Verdict | null
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

/** A border is known when the values on its two sides are this near [ratio]. */
const NEAR = 1.03
/** Values that hold must reach over such a ratio, so that what is set in practice stays among them; common practice, no source. */
const WIDE = 1.2
/** What is proposed lies at most so far inside the nearer border [ratio, squared]. */
const INSIDE = 2.5
/** Halvings that look for values that hold between two that fail in different ways. */
const PROBES = 3
/** Least margins that a change may leave: 30° and a factor of 2 (Åström and Murray, Feedback Systems, 2008, from memory). */
const LEAST_PHASE = 30
const LEAST_GAIN = 20 * Math.log10(2)
const SEEDS = 12

/** Which parameters a search is to try where several share them: every `of`th, from the `n`th on. */
export interface Share {
  n: number
  of: number
}

/** One answer a parameter, as it is found; for a part that is held the search is for what loses it. */
export function* rescues(
  scenario: Scenario,
  strategy: StrategyId,
  run: Runner = runHere,
  share: Share = { n: 0, of: 1 },
): Generator<RescueProgress, void, undefined> {
  const question = { scenario, strategy, run, margins: marginsOf(scenario, strategy) }
  const { verdict } = run(scenario, strategy).result
  const held = verdict === 'held'
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
export const sortRescues = (found: Rescue[]): Rescue[] =>
  [...found].sort((a, b) => rank(a) - rank(b) || size(a) - size(b) || a.path.localeCompare(b.path))

function rank({ value, becomes, cost, interval }: Rescue): number {
  if (value === null) return interval === null ? COSTS.length + 1 : COSTS.length
  return becomes === 'held' ? COSTS.indexOf(cost) : 0
}

/** Changes to or from 0 have no ratio: they come after those that have one. */
const NO_RATIO = 1e6

const size = ({ change }: Rescue) => (change === null || change <= -1 ? NO_RATIO : Math.abs(Math.log(1 + change)))

interface Question {
  scenario: Scenario
  strategy: StrategyId
  run: Runner
  /** On the bench. */
  margins: LoopMargins | null
}

function marginsOf(scenario: Scenario, strategy: StrategyId): LoopMargins | null {
  try {
    return loopMargins(scenario, strategy)
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

/** With how many of a dozen seeds it is held, which it is (`held`) with its own; without noise they are all the same run. */
function seedsOf({ strategy, run }: Question, scenario: Scenario, held: boolean): { held: number; of: number } {
  const { drive, sensors } = scenario
  const holds = (seed: number) => {
    const again = { ...scenario, run: { ...scenario.run, seed } }
    return run(again, strategy, { untilLost: true }).result.verdict === 'held'
  }
  const { seed } = scenario.run
  if (drive.currentNoise === 0 && !(strategyOf(strategy).sensed && sensors.gauge.noise > 0))
    return { held: held ? SEEDS : 0, of: SEEDS }
  const step = seed + SEEDS > schemaAt(scenario, 'run.seed').maximum ? -1 : 1
  const others = Array.from({ length: SEEDS - 1 }, (_, n) => seed + (n + 1) * step)
  return { held: others.filter(holds).length + (held ? 1 : 0), of: SEEDS }
}

class Search {
  private readonly known = new Map<number, Outcome>()
  private readonly question: Question
  private readonly parameter: Parameter
  private readonly from: number
  private readonly held: boolean

  constructor(question: Question, parameter: Parameter, verdict: Verdict) {
    this.question = question
    this.parameter = parameter
    this.from = readPath(question.scenario, parameter.path) as number
    this.held = verdict === 'held'
    this.known.set(this.from, { value: this.from, verdict, late: isLate(question.scenario) })
    for (const side of parameter.sides) this.explore(side)
  }

  /** For a part that is lost. */
  rescue(): Rescue {
    const intervals = this.intervals().sort(
      (a, b) => this.distance(nearEnd(a, this.from)) - this.distance(nearEnd(b, this.from)),
    )
    let failed: Partial<Rescue> | null = null
    for (const interval of intervals) {
      const islands = intervals.filter((other) => other !== interval)
      for (const value of this.inside(interval)) {
        const { flaw, ...found } = this.judge(value, interval)
        if (!flaw) return this.answer({ ...found, value, becomes: 'held', interval, islands })
        failed ??= { flaw, interval, islands }
      }
    }
    return this.answer(failed ?? {})
  }

  /** For a part that is held with so many seeds. */
  drift(seeds: { held: number; of: number }): Rescue {
    const intervals = this.intervals()
    const interval = intervals.find(({ from, to }) => from <= this.from && this.from <= to) ?? null
    const lost = [...this.known.values()].filter(({ verdict }) => verdict !== 'held')
    const [nearest] = lost.map(({ value }) => value).sort((a, b) => this.distance(a) - this.distance(b))
    const scenario = nearest === undefined ? null : this.edited(nearest)
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
    const { from } = this
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
      along: value === null ? [] : (this.editsFor(value)?.filter((edit) => edit.path !== path) ?? []),
      tried: this.sorted(),
      ...found,
    }
  }

  /** Every value of a side, then what lies between two that differ: the border, or values that hold between too much and too little. */
  private explore(side: Side): void {
    const line = [this.from]
    for (const value of side.values) {
      if (!this.outcome(value)) break
      line.push(value)
    }
    for (let n = 1; n < line.length; n++) this.between(side, line[n - 1]!, line[n]!, PROBES)
  }

  private between(side: Side, near: number, far: number, probes: number): void {
    const [a, b] = [this.outcome(near), this.outcome(far)]
    if (!a || !b || ways(a.verdict) === ways(b.verdict)) return
    if (a.verdict === 'held' || b.verdict === 'held') {
      this.bisect(side, near, far)
      return
    }
    const value = side.between(near, far)
    if (probes === 0 || value === near || value === far || !this.outcome(value)) return
    this.between(side, near, value, probes - 1)
    this.between(side, value, far, probes - 1)
  }

  private bisect(side: Side, near: number, far: number): void {
    const held = this.holds(near)
    let [a, b] = [near, far]
    while (side.ratio(a, b) > NEAR) {
      const value = side.between(a, b)
      if (value === a || value === b || !this.outcome(value)) return
      if (this.holds(value) === held) a = value
      else b = value
    }
  }

  private holds(value: number): boolean {
    return this.outcome(value)?.verdict === 'held'
  }

  private sorted(): Outcome[] {
    return [...this.known.values()].sort((a, b) => a.value - b.value)
  }

  private intervals(): Interval[] {
    const tried = this.sorted()
    const found: Interval[] = []
    tried.forEach(({ value, verdict }, n) => {
      if (verdict !== 'held') return
      const last = n === tried.length - 1
      const before = tried[n - 1]
      if (before?.verdict === 'held') Object.assign(found.at(-1)!, { to: value })
      else found.push({ from: value, to: value, open: { from: before === undefined, to: false } })
      if (last) found.at(-1)!.open.to = true
    })
    return found
  }

  /** Values to propose: some way in from the nearer border, and the middle. */
  private inside(interval: Interval): number[] {
    const near = nearEnd(interval, this.from)
    const far = near === interval.from ? interval.to : interval.from
    const side = this.sideOf(near)
    const reach = far > near ? Math.min(far, near * INSIDE) : Math.max(far, near / INSIDE)
    return [...new Set([side.between(near, reach), side.between(near, far)])]
  }

  private sideOf(value: number): Side {
    const { sides } = this.parameter
    return sides.find(({ values }) => values.some((each) => each > this.from === value > this.from)) ?? sides[0]!
  }

  private judge(value: number, { from, to }: Interval): Pick<Rescue, 'flaw' | 'margins' | 'seeds'> {
    const none = { margins: null, seeds: null }
    const whole = from === 0 && to === 0 // off is off
    if (!whole && this.sideOf(value).ratio(from, to) < WIDE) return { ...none, flaw: { kind: 'narrow' } }
    const scenario = this.edited(value)
    if (!scenario) return { ...none, flaw: { kind: 'narrow' } }
    const margins = marginsOf(scenario, this.question.strategy)
    const flaw = margins && flawOf(margins, this.question.margins)
    if (flaw) return { ...none, flaw }
    const seeds = seedsOf(this.question, scenario, this.holds(value))
    return { margins, seeds, flaw: seeds.held < seeds.of ? { kind: 'noise', ...seeds } : null }
  }

  private distance(value: number): number {
    if (value === this.from) return 0
    return value === 0 || this.from === 0 ? NO_RATIO : Math.abs(Math.log(value / this.from))
  }

  /** Undefined where the rules refuse the value, or where it takes more steps than a run may. */
  private outcome(value: number): Outcome | undefined {
    const known = this.known.get(value)
    if (known) return known
    const scenario = this.edited(value)
    if (!scenario) return undefined
    try {
      const outcome = { value, verdict: this.verdictOf(scenario), late: isLate(scenario) }
      this.known.set(value, outcome)
      return outcome
    } catch (error) {
      if (error instanceof RangeError) return undefined
      throw error
    }
  }

  /** Of the whole run: a part that is marked, loose or slides may yet break or slide out. */
  private verdictOf(scenario: Scenario): Verdict {
    const { run, strategy } = this.question
    const { verdict } = run(scenario, strategy, { untilLost: true }).result
    return WORSENS.has(verdict) ? run(scenario, strategy).result.verdict : verdict
  }

  private edited(value: number): Scenario | null {
    const edits = this.editsFor(value)
    const checked = edits && editScenario(this.question.scenario, edits)
    return checked?.ok ? checked.scenario : null
  }

  /** The value by itself, or, where the rules refuse that, with what they ask for along with it. */
  private editsFor(value: number): Edit[] | null {
    const { scenario } = this.question
    const { path, along, together: needed } = this.parameter
    const alone = [{ path, value }]
    if (!needed && editScenario(scenario, alone).ok) return alone
    const together = along && [...alone, ...along(scenario, value)]
    return together && editScenario(scenario, together).ok ? together : null
  }
}

/** Verdicts of parts that were lost alike, by too much or too little force. */
const ALIKE: Partial<Record<Verdict, string>> = {
  slipped: 'too little',
  loose: 'too little',
  dropped: 'too little',
  marked: 'too much',
  crushed: 'too much',
}
/** Verdicts that may become worse until the run ends. */
const WORSENS = new Set<Verdict>(['slipped', 'loose', 'marked'])

const ways = (verdict: Verdict) => ALIKE[verdict] ?? verdict

const nearEnd = ({ from, to }: Interval, present: number) => (from > present ? from : to)

const isLate = (scenario: Scenario) => approachTime(scenario, travelToContact(scenario)) >= liftTime(scenario)

/** What the margins fall short of, unless they were no better before. */
function flawOf(now: LoopMargins, before: LoopMargins | null): Flaw | null {
  if (!now.stable) return before && !before.stable ? null : { kind: 'unstable loop' }
  const short = (
    kind: 'phase margin' | 'gain margin',
    value: number | null,
    least: number,
    was: number | null | undefined,
  ): Flaw | null =>
    value !== null && value < least && !(typeof was === 'number' && was <= value) ? { kind, value } : null
  return (
    short('phase margin', now.phaseMargin, LEAST_PHASE, before?.phaseMargin) ??
    short('gain margin', now.gainMargin, LEAST_GAIN, before?.gainMargin)
  )
}
