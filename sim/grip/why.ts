/**
 * Why the force became what it was: counter-runs of the same simulator in which one cause after another is taken away, each on top
 * of those before. A cause's force is what its removal changes. So the parts add up to the figure, and the order, which is stated,
 * matters where causes act together. The part is taken as one that neither breaks, dents nor slides out, since a lost part hides
 * how far the force would have gone.
 */
import { travelToContact } from '../plant/axis.ts'
import { type Edit, editScenario, readPath, type Scenario } from '../scenario/index.ts'
import { liftTime } from '../scenario/lift.ts'
import { approachProfile } from '../strategy/follow.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import { approachTime, CAUSES, type CauseId, REMOVALS, type Removal } from './counter-runs.ts'
import type { GripResult, Verdict } from './result.ts'
import { simulateGrip } from './simulate.ts'
import { damageLimit } from './window.ts'

export interface Cause {
  cause: CauseId
  label: string
  /** How its counter-run takes it away. */
  without: string
  /** What it adds to the figure at one contact [N], and over the figure; no share of a grip that is left with nothing. */
  force: number
  share: number | null
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
  rule: string
  /** The run on the bench; null where there was a force to take apart. */
  run: MissedRun | null
}

/** A run without a force that could be taken apart. */
export interface MissedRun extends Pick<GripResult, 'metrics' | 'events' | 'cause'> {
  /** Travel of a jaw at the end of the run [m]. */
  travel: number
  /** Travels of a jaw to the part and to the end of its profile [m], when the profile is at the part, and when the support goes [s]. */
  way: { contact: number; end: number; arrival: number; lift: number }
}

/** Causes below this share of the figure are less than a step of the simulation resolves. */
const RESOLVED = 0.001

export const WHY_RULE =
  'Causes are taken away in this order, each on top of those before, and the grip is simulated again; a cause counts with what its ' +
  'removal changes, and one below 0.1 % of it counts with what is left. Where causes act together the order decides which of them bears the common part.'

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

/** `verdict` of the run on the bench decides which figure is taken apart. Throws a RangeError where the run itself takes too many steps. */
export function explain(scenario: Scenario, strategy: StrategyId, verdict: Verdict): Why {
  const figure = verdict === 'slipped' || verdict === 'dropped' ? 'hold' : 'peak'
  const common = { verdict, figure, rule: WHY_RULE } as const
  const first = edited(scenario, [...UNLOSABLE, ...fixedLift(scenario)])
  const start = verdict === 'unstable' || verdict === 'missed' || !first ? null : measure(first, strategy, figure)
  if (!first || !start || start.force === null) {
    const { result, traces } = simulateGrip(scenario, strategy)
    const { metrics, events, cause } = result
    const run = { metrics, events, cause, travel: traces.travel.at(-1) ?? 0, way: wayOf(scenario) }
    return { ...common, force: null, bound: null, causes: [], untold: [], run }
  }
  const whole = start.force
  const { told, untold } = countDown(first, strategy, figure, whole)
  const wanted = strategyOf(strategy).forceOf(withoutGaugeErrors(scenario)).expected
  const least = RESOLVED * Math.max(whole, wanted)
  const listed: [CauseId, number][] = [['setting', wanted], ...told.filter(([, force]) => Math.abs(force) >= least)]
  const rest = listed.reduce((left, [, force]) => left - force, whole)
  listed.push(['rest', rest])
  const causes = listed.map(([cause, force]): Cause => {
    return { cause, ...CAUSES[cause], force, share: whole > 0 ? force / whole : null }
  })
  const bound =
    figure === 'peak' ? damageLimit(scenario) : simulateGrip(scenario, strategy).result.metrics.requiredForce
  return {
    ...common,
    force: whole,
    bound: bound === Number.POSITIVE_INFINITY ? null : bound,
    causes,
    untold,
    run: null,
  }
}

function wayOf(scenario: Scenario): MissedRun['way'] {
  const contact = travelToContact(scenario)
  const { end } = approachProfile(scenario).way
  return { contact, end, arrival: approachTime(scenario, contact), lift: liftTime(scenario) }
}

/** What the person set, before the gauge errs. */
function withoutGaugeErrors({ strategies, ...scenario }: Scenario): Scenario {
  const { sensedForce } = strategies
  const sensor = { ...sensedForce.sensor, gainError: 0, offset: 0 }
  return { ...scenario, strategies: { ...strategies, sensedForce: { ...sensedForce, sensor } } }
}

/**
 * Takes one cause after another away. A counter-run without a figure leaves its cause where it is; it is taken away after all the
 * others if it then can be: without errors of measuring, say, a stop that is not delayed no longer trips on noise.
 */
function countDown(first: Scenario, strategy: StrategyId, figure: Why['figure'], whole: number) {
  const told: [CauseId, number][] = []
  let at = first
  let before = whole
  const take = (removals: Removal[]) => {
    const failed: { removal: Removal; verdict: Verdict | null }[] = []
    for (const removal of removals) {
      const changes = removal.edits(at, strategy).filter(({ path, value }) => !same(readPath(at, path), value))
      if (changes.length === 0) continue
      const without = edited(at, changes)
      const after = without ? measure(without, strategy, figure) : { force: null, verdict: null }
      if (!without || after.force === null) failed.push({ removal, verdict: after.verdict })
      else {
        told.push([removal.cause, before - after.force])
        before = after.force
        at = without
      }
    }
    return failed
  }
  const untold = take(take(REMOVALS).map(({ removal }) => removal)).map(({ removal: { cause }, verdict }) => {
    return { cause, label: CAUSES[cause].label, verdict }
  })
  return { told, untold }
}

/** Null force: the run left its rails, never touched the part, the part never hung in the jaws, or it takes too many steps. */
function measure(scenario: Scenario, strategy: StrategyId, figure: Why['figure']) {
  try {
    const { result, weakest } = simulateGrip(scenario, strategy)
    const { verdict, metrics } = result
    const force = figure === 'peak' ? metrics.peakForce : weakest
    return { verdict, force: verdict === 'unstable' || verdict === 'missed' ? null : force }
  } catch (error) {
    if (error instanceof RangeError) return { verdict: null, force: null }
    throw error
  }
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
