/**
 * Why the force became what it was: counter-runs of the same simulator in which one cause after another is taken away, each on top
 * of those before. A cause's force is what its removal changes; what is left is the force that the setting means and the stopping
 * distance. So the parts add up to the figure. The order matters and is stated; the part is taken as unbreakable throughout,
 * since a broken one hides how far the force would have gone.
 */
import { travelToContact } from '../plant/axis.ts'
import { type Edit, editScenario, type Scenario } from '../scenario/index.ts'
import { approachProfile } from '../strategy/follow.ts'
import { strategyOf } from '../strategy/index.ts'
import type { StrategyId } from '../strategy/strategy.ts'
import type { Metrics, Verdict } from './result.ts'
import { simulateGrip } from './simulate.ts'

export type CauseId =
  | 'setting'
  | 'momentum'
  | 'detection'
  | 'windup'
  | 'friction'
  | 'arm'
  | 'relaxation'
  | 'heat'
  | 'measuring'
  | 'stopping'

export interface Cause {
  cause: CauseId
  label: string
  /** What it adds to the figure at one contact [N], and over the figure. */
  force: number
  share: number
}

export interface Why {
  /** What is taken apart: the peak force, or, for a part that slid, the least force that friction had to work with. */
  figure: 'peak' | 'hold'
  /** That figure on an unbreakable part [N]; null: no contact, or a run off its rails, so there is nothing to take apart. */
  force: number | null
  causes: Cause[]
  /** One sentence that a customer understands. */
  sentence: string
  rule: string
}

export const RULE =
  'Causes are taken away one after another in this order, each on top of those before; a cause counts with what its removal changes.'

const LABELS: Record<CauseId, string> = {
  setting: 'Force that the setting means',
  momentum: 'Momentum of the approach',
  detection: 'Delay of the detection',
  windup: 'Integral wind-up',
  friction: 'Friction in the axis',
  arm: 'Acceleration of the arm',
  relaxation: 'Relaxation of the part',
  heat: 'Warm magnets',
  measuring: 'Errors of measuring',
  stopping: 'Stopping distance on a stiff part',
}

/** Speed of the counter-run without momentum [m/s], where it begins before contact [m], and time it is given on top [s]. */
const SLOW = 0.002
const BEFORE = 0.0003
const EXTRA = 0.3

interface Removal {
  cause: CauseId
  edits(scenario: Scenario, strategy: StrategyId): Edit[]
}

const REMOVALS: Removal[] = [
  { cause: 'momentum', edits: slowContact },
  {
    cause: 'detection',
    edits: (_, strategy) =>
      strategy === 'threshold-stop'
        ? [set('strategies.thresholdStop.confirmTime', 0), set('strategies.thresholdStop.filter', 0)]
        : [],
  },
  { cause: 'windup', edits: () => [set('servo.ki', 0), set('strategies.sensedForce.ki', 0)] },
  { cause: 'friction', edits: withoutFriction },
  { cause: 'arm', edits: ({ arm }) => (arm.moves.length > 0 ? [set('arm.moves', [])] : []) },
  { cause: 'relaxation', edits: () => [set('part.relaxation.fraction', 0)] },
  {
    cause: 'heat',
    edits: () => [set('actuator.motor.thermal.magnetCoefficient', 0), set('run.cycle', null)],
  },
  {
    cause: 'measuring',
    edits: ({ strategies }, strategy) => [
      ...['currentNoise', 'currentOffset', 'currentResolution'].map((key) => set(`drive.${key}`, 0)),
      set('servo.encoderResolution', 0),
      ...(strategy === 'sensed-force'
        ? Object.keys(strategies.sensedForce.sensor)
            .filter((key) => key !== 'bandwidth' && key !== 'fingerMass')
            .map((key) => set(`strategies.sensedForce.sensor.${key}`, 0))
        : []),
    ],
  },
]

const set = (path: string, value: unknown): Edit => ({ path, value })

/** `verdict` of the run on the bench decides which figure is taken apart. Throws where a counter-run cannot be simulated. */
export function explain(scenario: Scenario, strategy: StrategyId, verdict: Verdict): Why {
  const figure = verdict === 'slipped' || verdict === 'dropped' ? 'hold' : 'peak'
  const read = (at: Scenario) => readFigure(simulateGrip(at, strategy).result.metrics, figure)
  const wanted = strategyOf(strategy).forceOf(scenario).expected
  let at = edited(scenario, [
    set('part.crackForce', undefined),
    set('part.yieldForce', undefined),
    ...fixedLift(scenario),
  ])
  const whole = read(at)
  const none: Why = { figure, force: null, causes: [], rule: RULE, sentence: 'There is no force to take apart.' }
  if (whole === null || verdict === 'unstable' || verdict === 'missed') return none
  const causes: Cause[] = []
  let before = whole
  for (const { cause, edits } of REMOVALS) {
    at = edited(at, edits(at, strategy))
    const after = read(at) ?? before
    causes.push({ cause, label: LABELS[cause], force: before - after, share: (before - after) / whole })
    before = after
  }
  const rest = before - wanted
  causes.push({ cause: 'stopping', label: LABELS.stopping, force: rest, share: rest / whole })
  causes.unshift({ cause: 'setting', label: LABELS.setting, force: wanted, share: wanted / whole })
  const told = causes.filter(({ cause, force }) => cause === 'setting' || Math.abs(force) > 1e-9 * whole)
  return { figure, force: whole, causes: told, rule: RULE, sentence: sentenceOf(figure, whole, told) }
}

function readFigure(metrics: Metrics, figure: Why['figure']): number | null {
  if (figure === 'peak') return metrics.peakForce
  return metrics.holdMargin === null || metrics.requiredForce === null
    ? null
    : (1 + metrics.holdMargin) * metrics.requiredForce
}

/** The edits made; one that the rules refuse is left out, since a cause that cannot be taken away has no share. */
function edited(scenario: Scenario, edits: Edit[]): Scenario {
  const checked = edits.length > 0 ? editScenario(scenario, edits) : { ok: true as const, scenario }
  return checked.ok ? checked.scenario : scenario
}

/** Without moves the support would go at another time; it goes when it did. */
function fixedLift({ arm }: Scenario): Edit[] {
  const first = Math.min(...arm.moves.map(({ start }) => start))
  return arm.lift === null && Number.isFinite(first) ? [set('arm.lift', first)] : []
}

/** The same grip touched slowly: a creep zone just before contact, and everything after it later by what that takes. */
function slowContact(scenario: Scenario): Edit[] {
  const { approach, part, run, arm, events } = scenario
  if (approach.speed <= SLOW) return []
  const creep = [
    set('approach.creepSpeed', Math.min(SLOW, approach.speed)),
    set('approach.creepFrom', part.width + 2 * BEFORE),
  ]
  const slow = edited(scenario, creep)
  const delay = timeToContact(slow) - timeToContact(scenario) + EXTRA
  return [
    ...creep,
    set('run.duration', run.duration + delay),
    ...(run.cycle === null ? [] : [set('run.cycle', run.cycle + delay)]),
    ...(arm.lift === null ? [] : [set('arm.lift', arm.lift + delay)]),
    ...arm.moves.map((move, n) => set(`arm.moves[${n}].start`, move.start + delay)),
    ...(events.powerLoss ? [set('events.powerLoss.time', events.powerLoss.time + delay)] : []),
    ...(events.release ? [set('events.release.time', events.release.time + delay)] : []),
  ]
}

/** When the profile reaches the nominal part [s]. */
function timeToContact(scenario: Scenario): number {
  const profile = approachProfile(scenario)
  const travel = travelToContact(scenario)
  let low = 0
  let high = profile.duration
  for (let n = 0; n < 50; n++) {
    const middle = (low + high) / 2
    profile.at(middle)
    if (profile.position < travel) low = middle
    else high = middle
  }
  return high
}

/** An axis without friction, its setting turned into the same newtons anew. */
function withoutFriction(scenario: Scenario, strategy: StrategyId): Edit[] {
  const { kind } = scenario.actuator
  const kindOf = strategyOf(strategy)
  const bare = [
    set('actuator.transmission.coulomb', 0),
    set('actuator.transmission.breakaway', 0),
    ...(kind === 'screw' ? [set('actuator.transmission.threadFriction', 0)] : []),
    ...(kind === 'rack' ? [set('actuator.transmission.efficiency', 1)] : []),
  ]
  const wanted = kindOf.forceOf(scenario).expected
  return [...bare, set(kindOf.setting.path, kindOf.settingFor(edited(scenario, bare), wanted))]
}

function sentenceOf(figure: Why['figure'], whole: number, causes: Cause[]): string {
  const newtons = (force: number) => `${Number(Math.abs(force).toPrecision(2))} N`
  const setting = causes[0]!.force
  const others = causes.slice(1).sort((a, b) => Math.abs(b.force) - Math.abs(a.force))
  const worst = others[0]
  const what = figure === 'peak' ? 'The part sees' : 'The grip is left with'
  if (!worst || Math.abs(worst.force) < 0.03 * whole) return `${what} ${newtons(whole)}, about what the setting means.`
  const how = worst.force > 0 ? 'adds' : 'takes away'
  return `${what} ${newtons(whole)} where the setting means ${newtons(setting)}: ${lower(worst.label)} ${how} ${newtons(worst.force)}.`
}

const lower = (label: string) => label.charAt(0).toLowerCase() + label.slice(1)
