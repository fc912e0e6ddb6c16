/** What the counter-runs of `explain` take away, cause by cause. */
import { axisOf } from '../axis/reflect.ts'
import { jobOf } from '../job/index.ts'
import type { Job, JobCause } from '../job/job.ts'
import { type Actuator, type Edit, editScenario, type Scenario } from '../scenario/index.ts'
import { approachCourse } from '../strategy/approach.ts'
import { strategyOf } from '../strategy/index.ts'
import { farOf, set } from '../strategy/position.ts'
import type { OwnCauses, StrategyId } from '../strategy/strategy.ts'

/**
 * A cause is one cause: its edits leave alone what another takes away, or what nobody asks about. What several take away must not
 * depend on who comes first, so edits are made in stages, each seeing those before.
 */
export interface Removal extends Omit<JobCause, 'edits'> {
  /** 0 unless the edits are worked out from values that others change. */
  stage?: 1 | 2
  edits(scenario: Scenario, strategy: StrategyId): Edit[]
}

const own = (cause: keyof OwnCauses) => (scenario: Scenario, strategy: StrategyId) =>
  strategyOf(strategy).causes[cause](scenario)

/** Every cause that can be taken away whatever the axis works on, in the order in which they are told. */
const REMOVABLE: readonly Removal[] = [
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
]

/** Those of a job, in the order in which they are told: its own follow the touch. */
export const removalsOf = ({ why }: Job): Removal[] =>
  REMOVABLE.flatMap((removal) => (removal.cause === 'momentum' ? [removal, ...why.causes] : [removal]))

/** What is told before and after the causes that can be taken away. */
export const ENDS = {
  setting: { label: 'Force that the setting means', without: 'threshold, limit or target turned into newtons' },
  rest: {
    label: 'Overshoot of the loop, and what is left',
    without: 'what no counter-run takes away, and causes too small to tell',
  },
}

/**
 * Where the slow counter-run starts to creep before contact [m of jaw travel], its bounds [m/s], and the longest it may press [s]; where the
 * output turns in rad and rad/s, as the liner of a closure takes a good part of a turn.
 */
const SLOW = {
  m: { before: 1e-4, slowest: 3e-4, fastest: 2e-3, longest: 2 },
  rad: { before: 0.005, slowest: 0.015, fastest: 1, longest: 8 },
}
/** Share of the meant force that momentum may still add in the slow counter-run. */
const LEFT = 0.005

/** The same grip touched slowly: a creep zone just before contact, and everything after it later by what that takes. */
function slowContact(scenario: Scenario, strategy: StrategyId): Edit[] {
  const { approach, run, arm, events } = scenario
  const job = jobOf(scenario)
  const { meets } = job.workOf(scenario)
  const { speed, travel } = slowTouch(scenario, strategy)
  if (approach.speed <= speed) return []
  const creep = [
    set('approach.creepSpeed', Math.min(speed, approach.creepSpeed)),
    job.why.creepBefore(scenario, SLOW[job.output.travel].before),
  ]
  const slow = editScenario(scenario, [...creep, set('approach.overtravel', farOf(scenario))])
  if (!slow.ok) return creep
  const pressing = Math.min(SLOW[job.output.travel].longest, travel / speed)
  const delay = approachTime(slow.scenario, meets) + pressing - approachTime(scenario, meets)
  return [
    ...creep,
    set('run.duration', run.duration + delay),
    ...(run.cycle === null ? [] : [set('run.cycle', run.cycle + delay)]),
    ...(arm.lift === null ? [] : [set('arm.lift', arm.lift + delay)]),
    ...arm.moves.map((move, n) => set(`arm.moves[${n}].start`, move.start + delay)),
    ...(events.powerLoss ? [set('events.powerLoss.time', events.powerLoss.time + delay)] : []),
    ...(events.release ? [set('events.release.time', events.release.time + delay)] : []),
    ...(job.why.later?.(scenario, delay) ?? []),
  ]
}

/** Speed at which next to no momentum is left, v·√(k·m) of the axis on its work, and the travel that it then takes to press [m]. */
function slowTouch(scenario: Scenario, strategy: StrategyId): { speed: number; travel: number } {
  const { actuator, servo } = scenario
  const kind = strategyOf(strategy)
  const job = jobOf(scenario)
  const { perEffort } = job.workOf(scenario)
  const effort = Math.max(kind.forceOf(scenario).expected, 1e-3)
  const pressed = job.why.pressed(scenario, effort)
  const axis = axisOf(actuator)
  const impedance = Math.sqrt(pressed.stiffness * (axis.mass + job.outputOf(scenario).mass))
  const sensed = kind.sensed || servo.kp === 0
  const lag = sensed ? 0 : (perEffort * effort * (1 + axis.raise)) / axis.forcePerAmpere / servo.kp
  const { slowest, fastest } = SLOW[job.output.travel]
  const speed = Math.min(fastest, Math.max(slowest, (LEFT * perEffort * effort) / impedance))
  return { speed, travel: 1.5 * (pressed.travel + lag) }
}

/** When the profile reaches a travel of the output [s]; its end where it never does. */
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
    ...(kind === 'rack' || kind === 'spindle' ? [set('actuator.transmission.efficiency', 1)] : []),
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
    set('sensors.encoder.offset', 0),
    ...gauge.filter((key) => key !== 'bandwidth').map((key) => set(`sensors.gauge.${key}`, 0)),
  ]
}
