/**
 * One parameter's values, tried on the real simulator: every value of a wide search on both sides of the present one, and by bisection
 * the border between what holds and what does not.
 */
import { jobOf } from '../job/index.ts'
import { type Edit, editScenario, readPath, type Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import { approachTime } from './counter-runs.ts'
import type { Question } from './rescue-judge.ts'
import type { Parameter, Side } from './rescue-parameters.ts'

/** Values that hold, each end run with the seed on the bench; `open` ends are those of what was tried. */
export interface Interval {
  from: number
  to: number
  open: { from: boolean; to: boolean }
}

export interface Outcome {
  value: number
  verdict: string
  /** The output arrives when the support has gone. */
  late: boolean
}

/** A border is known when the values on its two sides are this near [ratio]. */
const NEAR = 1.03
/** Halvings that look for values that hold between two that fail in different ways. */
const PROBES = 3

/** What became of each value that was tried. */
export class TriedValues {
  readonly from: number
  private readonly known = new Map<number, Outcome>()
  private readonly question: Question
  private readonly parameter: Parameter
  /** The verdict that is looked for. */
  private readonly well: string

  /** Tries them all; `verdict` is that of the present value. */
  constructor(question: Question, parameter: Parameter, verdict: string) {
    this.question = question
    this.parameter = parameter
    this.well = jobOf(question.scenario).well
    this.from = readPath(question.scenario, parameter.path) as number
    this.known.set(this.from, { value: this.from, verdict, late: isLate(question.scenario) })
    for (const side of parameter.sides) this.explore(side)
  }

  /** By value. */
  sorted(): Outcome[] {
    return [...this.known.values()].sort((a, b) => a.value - b.value)
  }

  /** Those that hold, neighbours together, by value. */
  intervals(): Interval[] {
    const tried = this.sorted()
    const found: Interval[] = []
    tried.forEach(({ value, verdict }, n) => {
      if (verdict !== this.well) return
      const last = n === tried.length - 1
      const before = tried[n - 1]
      if (before?.verdict === this.well) Object.assign(found.at(-1)!, { to: value })
      else found.push({ from: value, to: value, open: { from: before === undefined, to: false } })
      if (last) found.at(-1)!.open.to = true
    })
    return found
  }

  holds(value: number): boolean {
    return this.outcome(value)?.verdict === this.well
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

  /** Of the whole run: what has gone a little wrong may yet go worse. */
  private verdictOf(scenario: Scenario): string {
    const { run, strategy } = this.question
    const { verdict } = run(scenario, strategy, { untilLost: true }).result
    return jobOf(scenario).rescue.worsens.has(verdict) ? run(scenario, strategy).result.verdict : verdict
  }

  /** Null where the rules refuse it. */
  edited(value: number): Scenario | null {
    const edits = this.editsFor(value)
    const checked = edits && editScenario(this.question.scenario, edits)
    return checked?.ok ? checked.scenario : null
  }

  /** The value by itself, or, where the rules refuse that, with what they ask for along with it. */
  editsFor(value: number): Edit[] | null {
    const { scenario } = this.question
    const { path, along, together: needed } = this.parameter
    const alone = [{ path, value }]
    if (!needed && editScenario(scenario, alone).ok) return alone
    const together = along && [...alone, ...along(scenario, value)]
    return together && editScenario(scenario, together).ok ? together : null
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
    if (!a || !b || this.ways(a.verdict) === this.ways(b.verdict)) return
    if (a.verdict === this.well || b.verdict === this.well) {
      this.bisect(side, near, far)
      return
    }
    const value = side.between(near, far)
    if (probes === 0 || value === near || value === far || !this.outcome(value)) return
    this.between(side, near, value, probes - 1)
    this.between(side, value, far, probes - 1)
  }

  /** What a verdict came of: two that came of the like have no border between them. */
  private ways(verdict: string): string {
    return jobOf(this.question.scenario).rescue.alike[verdict] ?? verdict
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
}

function isLate(scenario: Scenario): boolean {
  const job = jobOf(scenario)
  return job.rescue.supported && approachTime(scenario, job.workOf(scenario).touch) >= liftTime(scenario)
}
