/**
 * Why the force became what it was: counter-runs of the same simulator in which causes are taken away, by themselves and together, and
 * each gets its Shapley value of what all of them make. So the parts add up to the figure and no order decides who bears what causes
 * make together; how far that could shift is told beside each. The part is taken as one that neither breaks, dents nor slides out,
 * since a lost part hides how far the force would have gone.
 */

import { travelToContact } from '../job/grip/geometry.ts'
import type { GripResult, Verdict } from '../job/grip/result.ts'
import { damageLimit } from '../job/grip/window.ts'
import { type Edit, editScenario, readPath, type Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import { approachEnd } from '../strategy/follow.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId, StrategyKind } from '../strategy/strategy.ts'
import { approachTime, asMeant, CAUSES, type CauseId, REMOVALS, type Removal } from './counter-runs.ts'
import { type Runner, runHere } from './runner.ts'
import { type Shares, shapley, walk } from './shapley.ts'

export interface Cause {
  cause: CauseId
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

export interface Why {
  verdict: Verdict
  /** What is taken apart: the peak force, or, for a part that slid, the least force while it hung in the jaws. */
  figure: 'peak' | 'hold'
  /** That figure on a part that cannot be lost [N]; null: no contact, or a run off its rails, so there is nothing to take apart. */
  force: number | null
  /** For a peak the least damage limit, for a hold the force needed at the worst instant [N]; null: there is none. */
  bound: number | null
  causes: Cause[]
  /** Causes that could not be taken away, as their counter-run gave no figure; what they add is in what is left. */
  untold: { cause: CauseId; label: string; verdict: Verdict | null }[]
  /** Orders of removal that were counted, and whether they were drawn at random as there are too many. */
  orders: { counted: number; drawn: boolean }
  /** The run on the bench; null where there was a force to take apart. */
  run: MissedRun | null
}

/** A run without a force that could be taken apart. */
export interface MissedRun extends Pick<GripResult, 'metrics' | 'events' | 'cause'> {
  /** Where a jaw stood when the settled window ended [m]; 0 where the run ended before. */
  travel: number
  /** What the strategy takes for contact. */
  feels: StrategyKind['feels']
  /** Travels of a jaw to the part and to the end of its profile [m], when the profile is at the part, and when the support goes [s]. */
  way: { contact: number; end: number; arrival: number; lift: number }
}

const NONE: Why['orders'] = { counted: 0, drawn: false }

/** Causes below this share of the figure are less than a step of the simulation resolves. */
const RESOLVED = 0.001

/** Damage limits and a slide would end the force that is to be taken apart: the longest pad, the highest friction. */
const UNLOSABLE: Edit[] = [
  { path: 'part.markForce', value: undefined },
  { path: 'part.crackForce', value: undefined },
  { path: 'part.yieldForce', value: undefined },
  { path: 'jaws.padLength', value: 1 },
  { path: 'jaws.friction.static', value: 3 },
  { path: 'jaws.friction.sliding', value: 3 },
  { path: 'jaws.friction.loadExponent', value: 1 },
]

/** Verdicts on too little force: what is asked then is why the grip is so weak. */
const LOST: ReadonlySet<Verdict> = new Set(['slipped', 'loose', 'dropped'])

/** `verdict` of the run on the bench decides which figure is taken apart. Throws a RangeError where the run itself takes too many steps. */
export function explain(
  scenario: Scenario,
  strategy: StrategyId,
  verdict: Verdict,
  run: Runner = runHere,
  removals: readonly Removal[] = REMOVALS,
): Why {
  const figure = LOST.has(verdict) ? 'hold' : 'peak'
  const first = edited(scenario, [...UNLOSABLE, ...fixedLift(scenario)])
  const counter = first && new CounterRuns(first, strategy, figure, removals, run)
  const whole = verdict === 'unstable' || verdict === 'missed' ? null : (counter?.force(0) ?? null)
  if (!counter || whole === null) {
    const { metrics, events, cause } = run(scenario, strategy).result
    const { feels } = strategyOf(strategy)
    const missed = { metrics, events, cause, feels, travel: metrics.jawTravel ?? 0, way: wayOf(scenario) }
    return { verdict, figure, force: null, bound: null, causes: [], untold: [], orders: NONE, run: missed }
  }
  const wanted = strategyOf(strategy).forceOf(asMeant(scenario)).expected
  const bound = figure === 'peak' ? damageLimit(scenario) : run(scenario, strategy).result.metrics.requiredForce
  const { causes, untold, orders } = tell(counter, whole, wanted)
  return {
    verdict,
    figure,
    force: whole,
    bound: bound === Number.POSITIVE_INFINITY ? null : bound,
    causes,
    untold,
    orders,
    run: null,
  }
}

function tell(counter: CounterRuns, whole: number, wanted: number): Pick<Why, 'causes' | 'untold' | 'orders'> {
  const { removable, failed } = counter.removable()
  const acting = counter.acting(removable, RESOLVED * Math.max(whole, wanted))
  const { shares, errors, orders } = counter.shares(acting)
  const bare = maskOf(acting)
  const entry = (cause: CauseId, force: number, more: Partial<Cause> = {}): Cause => {
    const share = whole > 0 ? force / whole : null
    return { cause, ...CAUSES[cause], force, share, alone: null, last: null, error: null, ...more }
  }
  const told = acting.map((player, n) =>
    entry(counter.players[player]!.cause, shares[n]!, {
      alone: counter.change(0, player),
      last: counter.change(bare & ~(1 << player), player),
      error: errors?.[n] ?? null,
    }),
  )
  const ids = Object.keys(CAUSES)
  told.sort((a, b) => ids.indexOf(a.cause) - ids.indexOf(b.cause))
  const listed = [entry('setting', wanted), ...told]
  listed.push(
    entry(
      'rest',
      listed.reduce((left, { force }) => left - force, whole),
    ),
  )
  return { causes: listed, untold: failed, orders: { counted: orders, drawn: errors !== null } }
}

/** The counter-runs of one grip, each made once. Players are the causes whose removal changes anything, by their names. */
class CounterRuns {
  readonly players: readonly Removal[]
  private readonly first: Scenario
  private readonly strategy: StrategyId
  private readonly figure: Why['figure']
  private readonly run: Runner
  private readonly known = new Map<number, { force: number | null; verdict: Verdict | null }>()

  constructor(first: Scenario, strategy: StrategyId, figure: Why['figure'], removals: readonly Removal[], run: Runner) {
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
  removable(): { removable: number[]; failed: Why['untold'] } {
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
        const { cause } = this.players[player]!
        return { cause, label: CAUSES[cause].label, verdict: this.measured(taken | (1 << player)).verdict }
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
      const { result, weakest } = this.run(scenario, this.strategy)
      const { verdict, metrics } = result
      const force = this.figure === 'peak' ? metrics.peakForce : weakest
      return { verdict, force: verdict === 'unstable' || verdict === 'missed' ? null : force }
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
  const contact = travelToContact(scenario)
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
