/** What the counter-runs of `explain` take away, cause by cause; told in the order of CAUSES. */
import { axisOf } from '../axis/reflect.ts'
import { contactsOf, jawMassOf, travelToContact } from '../job/grip/geometry.ts'
import { jawStiffness, springsAt } from '../job/grip/statics.ts'
import { type Actuator, type Edit, editScenario, type Scenario } from '../scenario/index.ts'
import { approachCourse } from '../strategy/follow.ts'
import { strategyOf } from '../strategy/index.ts'
import { FAR, set } from '../strategy/position.ts'
import type { OwnCauses, StrategyId } from '../strategy/strategy.ts'

/**
 * A cause: what it is called, how its counter-run takes it away, and the edits that do; none where it cannot act. A cause is one cause:
 * its edits leave alone what another takes away, or what nobody asks about. What several take away must not depend on who comes first,
 * so edits are made in stages, each seeing those before.
 */
interface Removable {
  cause: string
  label: string
  without: string
  /** 0 unless the edits are worked out from values that others change. */
  stage?: 1 | 2
  edits(scenario: Scenario, strategy: StrategyId): Edit[]
}

const own = (cause: keyof OwnCauses) => (scenario: Scenario, strategy: StrategyId) =>
  strategyOf(strategy).causes[cause](scenario)

/** Every cause that can be taken away, in the order in which they are told. */
const REMOVABLE = [
  {
    cause: 'power',
    label: 'Loss of power',
    without: 'the supply stays',
    edits: () => [set('events.powerLoss', null)],
  },
  {
    cause: 'detection',
    label: 'Delay of the detection',
    without: 'contact is seen at once, so the jaws do not drive on into the part at approach speed',
    edits: own('detection'),
  },
  { cause: 'windup', label: 'Integral wind-up', without: 'integral gain 0', edits: own('windup') },
  {
    cause: 'momentum',
    label: 'Momentum of the approach',
    without: 'the part is touched so slowly that next to none is left',
    stage: 2,
    edits: slowContact,
  },
  {
    cause: 'relaxation',
    label: 'Relaxation of the part',
    without: 'a part that does not relax',
    edits: () => [set('part.relaxation.fraction', 0)],
  },
  {
    cause: 'stopping',
    label: 'Position held after the stop',
    without: 'the axis presses with the threshold instead of holding the position at which it was stopped',
    edits: own('stopping'),
  },
  {
    cause: 'travel',
    label: 'End of the move',
    without: 'the profile goes on to the end of the stroke',
    edits: own('travel'),
  },
  {
    cause: 'friction',
    label: 'Friction in the axis',
    without: 'no friction, the setting for the same newtons',
    stage: 1,
    edits: withoutFriction,
  },
  { cause: 'deadband', label: 'Dead band', without: 'dead band 0', edits: own('deadband') },
  {
    cause: 'arm',
    label: 'Acceleration of the arm',
    without: 'the arm stands still',
    edits: ({ arm }) => (arm.moves.length > 0 ? [set('arm.moves', [])] : []),
  },
  {
    cause: 'weight',
    label: 'Weight along the grip',
    without: 'no gravity',
    edits: ({ arm }) => (arm.gravity === 'along' ? [set('arm.gravity', 'none')] : []),
  },
  {
    cause: 'heat',
    label: 'Warm magnets',
    without: 'magnets that do not weaken, a single grip from cold',
    edits: () => [set('actuator.motor.thermal.magnetCoefficient', 0), set('run.cycle', null)],
  },
  {
    cause: 'measuring',
    label: 'Errors of measuring',
    without: 'no noise, offset, drift or steps in what is measured',
    edits: exactMeasuring,
  },
] as const satisfies readonly Removable[]

/** What is told before and after the causes that can be taken away. */
const ENDS = {
  setting: { label: 'Force that the setting means', without: 'threshold, limit or target turned into newtons' },
  rest: {
    label: 'Overshoot of the loop, and what is left',
    without: 'what no counter-run takes away, and causes too small to tell',
  },
}

export type CauseId = (typeof REMOVABLE)[number]['cause'] | keyof typeof ENDS

export interface Removal extends Removable {
  cause: CauseId
}

export const REMOVALS: readonly Removal[] = REMOVABLE

/** What each is called, and how its counter-run takes it away; in the order in which they are told. */
export const CAUSES = Object.fromEntries([
  ['setting', ENDS.setting],
  ...REMOVALS.map(({ cause, label, without }) => [cause, { label, without }] as const),
  ['rest', ENDS.rest],
]) as Record<CauseId, { label: string; without: string }>

/** Where the slow counter-run starts to creep before contact [m of jaw travel], its bounds [m/s], and the longest it may press [s]. */
const BEFORE = 1e-4
const SLOWEST = 3e-4
const FASTEST = 2e-3
const LONGEST = 2
/** Share of the meant force that momentum may still add in the slow counter-run. */
const LEFT = 0.005

/** The same grip touched slowly: a creep zone just before contact, and everything after it later by what that takes. */
function slowContact(scenario: Scenario, strategy: StrategyId): Edit[] {
  const { approach, part, run, arm, events } = scenario
  const { speed, travel } = slowTouch(scenario, strategy)
  if (approach.speed <= speed) return []
  const creep = [
    set('approach.creepSpeed', Math.min(speed, approach.creepSpeed)),
    set('approach.creepFrom', part.width + contactsOf(scenario) * BEFORE),
  ]
  const slow = editScenario(scenario, [...creep, set('approach.overtravel', FAR)])
  if (!slow.ok) return creep
  const pressing = Math.min(LONGEST, travel / speed)
  const delay =
    approachTime(slow.scenario, travelToContact(scenario)) +
    pressing -
    approachTime(scenario, travelToContact(scenario))
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

/** Speed at which next to no momentum is left, v·√(k·m) of the axis on the part, and the travel that it then takes to press [m]. */
function slowTouch(scenario: Scenario, strategy: StrategyId): { speed: number; travel: number } {
  const { actuator, servo } = scenario
  const kind = strategyOf(strategy)
  const contacts = contactsOf(scenario)
  const force = Math.max(kind.forceOf(scenario).expected, 1e-3)
  const springs = springsAt(scenario, force)
  const axis = axisOf(actuator)
  const impedance = Math.sqrt(jawStiffness(scenario, springs) * (axis.mass + jawMassOf(scenario)))
  const squeeze = springs.squeeze * (contacts === 2 ? 1 : 2)
  const lag = kind.sensed || servo.kp === 0 ? 0 : (contacts * force * (1 + axis.raise)) / axis.forcePerAmpere / servo.kp
  const speed = Math.min(FASTEST, Math.max(SLOWEST, (LEFT * contacts * force) / impedance))
  return { speed, travel: 1.5 * (squeeze + lag) }
}

/** When the profile reaches a travel of a jaw [s]; its end where it never does. */
export function approachTime(scenario: Scenario, travel: number): number {
  const { profile } = approachCourse(scenario)
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
  const checked = editScenario(scenario, bare)
  if (!checked.ok || kindOf.sensed) return bare
  const current = kindOf.settingFor(asMeant(checked.scenario), kindOf.forceOf(asMeant(scenario)).expected)
  return [...bare, ...kindOf.set(current)]
}

/** What the person set: before gauge and current measurement err, and with magnets that do not weaken. */
export function asMeant({ sensors, drive, actuator, run, ...scenario }: Scenario): Scenario {
  const { motor } = actuator
  return {
    ...scenario,
    sensors: { ...sensors, gauge: { ...sensors.gauge, gainError: 0, offset: 0 } },
    drive: { ...drive, currentOffset: 0 },
    actuator: { ...actuator, motor: { ...motor, thermal: { ...motor.thermal, magnetCoefficient: 0 } } } as Actuator,
    run: { ...run, cycle: null },
  }
}

function exactMeasuring({ sensors }: Scenario, strategy: StrategyId): Edit[] {
  const gauge = strategyOf(strategy).sensed ? Object.keys(sensors.gauge) : []
  return [
    ...['currentNoise', 'currentOffset', 'currentResolution'].map((key) => set(`drive.${key}`, 0)),
    set('sensors.encoder.resolution', 0),
    ...gauge.filter((key) => key !== 'bandwidth').map((key) => set(`sensors.gauge.${key}`, 0)),
  ]
}
