/**
 * Why the force became what it was: counter-runs of the same simulator in which causes are taken away, by themselves and together, and
 * each gets its Shapley value of what all of them make. So the parts add up to the figure and no order decides who bears what causes
 * make together; how far that could shift is told beside each. The work is taken as such that it cannot be lost: a part neither breaks,
 * dents nor slides out, since a lost part hides how far the force would have gone.
 */

import type { GripJudgement } from '../job/grip/result.ts'
import { jobOf } from '../job/index.ts'
import type { JobResult, RunResult, WhyFigure } from '../job/job.ts'
import { type Edit, editScenario, type JobId, readPath, type Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import { approachEnd } from '../strategy/approach.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId, StrategyKind } from '../strategy/strategy.ts'
import { approachTime, asMeant, ENDS, type Removal, removalsOf } from './counter-runs.ts'
import { type Runner, runHere } from './runner.ts'
import { type Shares, shapley, walk } from './shapley.ts'

export interface Cause {
  /** `setting`, `rest`, or the name of one that can be taken away. */
  cause: string
  label: string
  /** How its counter-run takes it away. */
  without: string
  /** What it adds to the figure at one contact [N], and over the figure; no share of a grip that is left with nothing. */
  force: number
  share: number | null
  /**
   * What its removal changes if nothing else is taken away, and if all others are gone before [N]; null: such a run gives no figure,
   * or the entry is none that can be taken away.
   */
  alone: number | null
  last: number | null
  /** Standard error of `force` where orders were drawn [N]; null: every order was taken. */
  error: number | null
}

export interface Why<R extends JobResult = GripJudgement> {
  job: JobId
  verdict: R['verdict']
  /** Which of the job's figures is taken apart; of a grip its `peak`, or, for a part that slid, the least force of its `hold`. */
  figure: string
  /** That figure of work that cannot be lost [N]; null: no contact, or a run off its rails, so there is nothing to take apart. */
  force: number | null
  /** For a peak the least damage limit, for a hold the force needed at the worst instant [N]; null: there is none. */
  bound: number | null
  causes: Cause[]
  /** Causes that could not be taken away, as their counter-run gave no figure; what they add is in what is left. */
  untold: { cause: string; label: string; verdict: R['verdict'] | null }[]
  /** Orders of removal that were counted, and whether they were drawn at random as there are too many. */
  orders: { counted: number; drawn: boolean }
  /** The run on the bench; null where there was a force to take apart. */
  run: MissedRun<R> | null
}

/** A run without a force that could be taken apart. */
export interface MissedRun<R extends JobResult = GripJudgement> {
  metrics: R['metrics']
  events: R['events']
  cause: RunResult['cause']
  /** What the strategy takes for contact. */
  feels: StrategyKind['feels']
  /** Travels of the output to first touch and to the end of its profile, when the profile is there, and when the support goes [s]. */
  way: { contact: number; end: number; arrival: number; lift: number }
}

type AnyWhy = Why<JobResult>
type AnyRunner = Runner<JobResult>

const NONE: Why['orders'] = { counted: 0, drawn: false }

/** Causes below this share of the figure are less than a step of the simulation resolves. */
const RESOLVED = 0.001

/** `verdict` of the run on the bench decides which figure is taken apart. Throws a RangeError where the run itself takes too many steps. */
export function explain<R extends JobResult = GripJudgement>(
  scenario: Scenario,
  strategy: StrategyId,
  verdict: R['verdict'],
  run: Runner<R> = runHere as unknown as Runner<R>,
  removals?: readonly Removal[],
): Why<R> {
  return explained(scenario, strategy, verdict, run, removals ?? removalsOf(jobOf(scenario))) as Why<R>
}

function explained(
  scenario: Scenario,
  strategy: StrategyId,
  verdict: string,
  run: AnyRunner,
  removals: readonly Removal[],
): AnyWhy {
  const job = jobOf(scenario)
  const { why } = job
  const figure = why.figures.find(({ tells }) => tells(verdict))!
  const of = { job: scenario.job, verdict, figure: figure.id }
  const first = edited(scenario, [...why.unlosable, ...fixedLift(scenario)])
  const counter = first && new CounterRuns(first, strategy, figure, removals, run)
  const grip = () => run(scenario, strategy)
  const whole = why.forceless.has(verdict) ? null : (counter?.force(0) ?? null)
  if (!counter || whole === null) {
    const { metrics, events, cause } = grip().result
    const missed = { metrics, events, cause, feels: strategyOf(strategy).feels, way: wayOf(scenario) }
    return { ...of, force: null, bound: null, causes: [], untold: [], orders: NONE, run: missed }
  }
  const wanted = strategyOf(strategy).forceOf(asMeant(scenario)).expected
  const bound = figure.bound(scenario, grip)
  const order = removalsOf(job).map(({ cause }) => cause)
  const told = tell(counter, whole, wanted, order)
  return { ...of, force: whole, bound: bound === Number.POSITIVE_INFINITY ? null : bound, ...told, run: null }
}

/** `order` names the causes in the order in which they are told. */
function tell(
  counter: CounterRuns,
  whole: number,
  wanted: number,
  order: readonly string[],
): Pick<AnyWhy, 'causes' | 'untold' | 'orders'> {
  const { removable, failed } = counter.removable()
  const acting = counter.acting(removable, RESOLVED * Math.max(whole, wanted))
  const { shares, errors, orders } = counter.shares(acting)
  const bare = maskOf(acting)
  const entry = (cause: string, { label, without }: Words, force: number, more: Partial<Cause> = {}): Cause => {
    const share = whole > 0 ? force / whole : null
    return { cause, label, without, force, share, alone: null, last: null, error: null, ...more }
  }
  const told = acting.map((player, n) => {
    const { cause, ...words } = counter.players[player]!
    return entry(cause, words, shares[n]!, {
      alone: counter.change(0, player),
      last: counter.change(bare & ~(1 << player), player),
      error: errors?.[n] ?? null,
    })
  })
  told.sort((a, b) => order.indexOf(a.cause) - order.indexOf(b.cause))
  const listed = [entry('setting', ENDS.setting, wanted), ...told]
  const left = listed.reduce((left, { force }) => left - force, whole)
  listed.push(entry('rest', ENDS.rest, left))
  return { causes: listed, untold: failed, orders: { counted: orders, drawn: errors !== null } }
}

type Words = Pick<Removal, 'label' | 'without'>

/** The counter-runs of one grip, each made once. Players are the causes whose removal changes anything, by their names. */
class CounterRuns {
  readonly players: readonly Removal[]
  private readonly first: Scenario
  private readonly strategy: StrategyId
  private readonly figure: WhyFigure
  private readonly run: AnyRunner
  private readonly known = new Map<number, { force: number | null; verdict: string | null }>()

  constructor(first: Scenario, strategy: StrategyId, figure: WhyFigure, removals: readonly Removal[], run: AnyRunner) {
    this.first = first
    this.strategy = strategy
    this.figure = figure
    this.run = run
    this.players = [...removals]
      .sort((a, b) => (a.cause < b.cause ? -1 : 1))
      .filter((removal) => changesOf(first, strategy, removal).length > 0)
  }

  /** The figure with the players of a bit mask taken away [N]; null: there is none. */
  force(taken: number): number | null {
    return this.measured(taken).force
  }

  /** What it changes that a player goes after those taken [N]; null: one of the two has no figure. */
  change(taken: number, player: number): number | null {
    const [before, after] = [this.force(taken), this.force(taken | (1 << player))]
    return before === null || after === null ? null : before - after
  }

  /**
   * Players that can be gone all together, and those that must stay for a run to have a figure: the one that alone changes least, where
   * one is enough; else those that cannot follow when one after another is taken, the largest first.
   */
  removable(): { removable: number[]; failed: AnyWhy['untold'] } {
    const all = this.players.map((_, player) => player)
    if (this.force(maskOf(all)) !== null) return { removable: all, failed: [] }
    const size = (player: number) => Math.abs(this.change(0, player) ?? 0)
    const largest = [...all].sort((a, b) => size(b) - size(a))
    const [least] = all
      .filter((player) => this.force(maskOf(all) & ~(1 << player)) !== null)
      .sort((a, b) => size(a) - size(b))
    let taken = least === undefined ? 0 : maskOf(all) & ~(1 << least)
    const take = (player: number) => {
      const goes = this.force(taken | (1 << player)) !== null
      if (goes) taken |= 1 << player
      return !goes
    }
    const failed = least === undefined ? largest.filter(take).filter(take) : [least]
    return {
      removable: all.filter((player) => (taken >> player) & 1),
      failed: failed.map((player) => {
        const { cause, label } = this.players[player]!
        return { cause, label, verdict: this.measured(taken | (1 << player)).verdict }
      }),
    }
  }

  /** Those of `players` that change the figure by `least` [N] alone or last, or of which that cannot be told. */
  acting(players: number[], least: number): number[] {
    const all = maskOf(players)
    const counts = (change: number | null) => change === null || Math.abs(change) >= least
    const found = players.filter(
      (player) => counts(this.change(0, player)) || counts(this.change(all & ~(1 << player), player)),
    )
    return this.force(maskOf(found)) === null ? players : found
  }

  /** By every order, or by drawn ones; where none of them gives a figure at each step, by the one in which they were found removable. */
  shares(players: number[]): Shares {
    const value = (taken: number) => this.force(maskOf(players.filter((_, n) => (taken >> n) & 1)))
    const found = shapley(players.length, value)
    if (found) return found
    const order = players.map((_, n) => n)
    return { shares: walk(order, value) ?? order.map(() => 0), errors: null, orders: 1 }
  }

  /** Null force: the run left its rails, never touched the part, the part never hung in the jaws, or it takes too many steps. */
  private measured(taken: number) {
    const known = this.known.get(taken)
    if (known) return known
    const scenario = this.without(taken)
    const found = scenario ? this.measure(scenario) : { force: null, verdict: null }
    this.known.set(taken, found)
    return found
  }

  private measure(scenario: Scenario) {
    try {
      const ran = this.run(scenario, this.strategy)
      return { verdict: ran.result.verdict, force: this.figure.take(ran) }
    } catch (error) {
      if (error instanceof RangeError) return { verdict: null, force: null }
      throw error
    }
  }

  private without(taken: number): Scenario | null {
    let at: Scenario | null = this.first
    for (const stage of [0, 1, 2]) {
      const now: Scenario | null = at
      if (!now) return null
      const edits = this.players
        .filter((removal, player) => (taken >> player) & 1 && (removal.stage ?? 0) === stage)
        .flatMap((removal) => changesOf(now, this.strategy, removal))
      if (edits.length > 0) at = edited(now, edits)
    }
    return at
  }
}

const maskOf = (players: readonly number[]) => players.reduce((mask, player) => mask | (1 << player), 0)

const changesOf = (scenario: Scenario, strategy: StrategyId, removal: Removal) =>
  removal.edits(scenario, strategy).filter(({ path, value }) => !same(readPath(scenario, path), value))

function wayOf(scenario: Scenario): MissedRun['way'] {
  const contact = jobOf(scenario).workOf(scenario).touch
  const end = approachEnd(scenario)
  return { contact, end, arrival: approachTime(scenario, contact), lift: liftTime(scenario) }
}

/** Null where the rules refuse the edits. */
function edited(scenario: Scenario, edits: Edit[]): Scenario | null {
  const checked = editScenario(scenario, edits)
  return checked.ok ? checked.scenario : null
}

const same = (a: unknown, b: unknown) =>
  Object.is(a, b) || (Array.isArray(a) && Array.isArray(b) && a.length + b.length === 0)

/** Without moves the support would go at another time; it goes when it did. */
function fixedLift({ arm }: Scenario): Edit[] {
  const start = Math.min(...arm.moves.map((move) => move.start))
  return arm.lift === null && Number.isFinite(start) ? [{ path: 'arm.lift', value: start }] : []
}
