/** What keys of a scenario demand of each other. A rule is only asked when every key it reads is there and sound by itself. */
import { liftTime } from './lift.ts'
import { divides, nearestDivisor, type Rule, rule } from './rule.ts'
import { type JobId, SCENARIO_SCHEMA, type Scenario } from './schema/index.ts'
import { STRATEGY_RULES } from './schema/strategies.ts'
import { requirementFaults, spreadFaults } from './study-rules.ts'

/** Most plant steps in one run; more would keep the machine busy for minutes. */
const MOST_STEPS = 2e8

const SERVO = SCENARIO_SCHEMA.properties.servo

const RULES: Rule[] = [
  rule(
    ['jaws.opening', 'part.width'],
    (s) => s.jaws.opening > s.part.width,
    (s) => `${s.jaws.opening} m`,
    (s) => `more than the part's width of ${s.part.width} m`,
  ),
  rule(
    ['servo.rate', 'drive.currentRate'],
    (s) => divides(s.servo.rate, s.drive.currentRate),
    (s) => `${s.servo.rate} 1/s`,
    (s) =>
      `a rate that divides the current loop's ${s.drive.currentRate} 1/s, such as ${nearestDivisor(s.servo.rate, s.drive.currentRate, SERVO.properties.rate)} 1/s`,
  ),
  rule(
    ['run.step', 'drive.currentRate'],
    (s) => s.run.step === null || divides(s.run.step, 1 / s.drive.currentRate),
    (s) => `${s.run.step} s`,
    (s) => `null, or a step that divides the current loop's period of ${1 / s.drive.currentRate} s`,
  ),
  rule(
    ['run.step', 'run.duration'],
    (s) => s.run.step === null || s.run.duration / s.run.step <= MOST_STEPS,
    (s) => `${s.run.step} s`,
    (s) => `null, or at least ${s.run.duration / MOST_STEPS} s, so that the run has at most ${MOST_STEPS} steps`,
  ),
  rule(
    ['actuator.motor.peakCurrent', 'actuator.motor.continuousCurrent'],
    (s) => s.actuator.motor.peakCurrent >= s.actuator.motor.continuousCurrent,
    (s) => `${s.actuator.motor.peakCurrent} A`,
    (s) => `at least the continuous current of ${s.actuator.motor.continuousCurrent} A`,
  ),
  rule(
    ['servo.currentLimit', 'actuator.motor.peakCurrent'],
    (s) => s.servo.currentLimit <= s.actuator.motor.peakCurrent,
    (s) => `${s.servo.currentLimit} A`,
    (s) => `at most the motor's peak current of ${s.actuator.motor.peakCurrent} A`,
  ),
  rule(
    ['actuator.transmission.breakaway', 'actuator.transmission.coulomb'],
    (s) => s.actuator.transmission.breakaway >= s.actuator.transmission.coulomb,
    (s) => `${s.actuator.transmission.breakaway} ${effortOf(s)}`,
    (s) => `at least the Coulomb friction of ${s.actuator.transmission.coulomb} ${effortOf(s)}`,
  ),
  rule(
    ['jaws.friction.sliding', 'jaws.friction.static'],
    (s) => s.jaws.friction.sliding <= s.jaws.friction.static,
    (s) => String(s.jaws.friction.sliding),
    (s) => `at most the static friction of ${s.jaws.friction.static}`,
  ),
  rule(
    ['approach.creepSpeed', 'approach.speed', 'approach.creepFrom', 'part.width'],
    (s) => s.approach.creepSpeed <= s.approach.speed || s.approach.creepFrom <= s.part.width,
    (s) => `${s.approach.creepSpeed} m/s`,
    (s) => `at most the approach speed of ${s.approach.speed} m/s`,
  ),
  rule(
    ['actuator.transmission.threadFriction', 'actuator'],
    (s) => s.actuator.kind !== 'screw' || canRaise(s.actuator.transmission),
    (s) => (s.actuator.kind === 'screw' ? String(s.actuator.transmission.threadFriction) : ''),
    () => 'less than what jams the thread: friction · lead < π · pitch diameter · cos(flank half-angle)',
  ),
  rule(
    ['arm.lift', 'arm.moves'],
    (s) => s.arm.lift === null || s.arm.moves.every((move) => s.arm.lift === null || move.start >= s.arm.lift),
    (s) => `${s.arm.lift} s`,
    () => 'null, or a time no later than the first move',
  ),
  rule(
    ['arm.lift', 'run.duration'],
    (s) => s.arm.lift === null || s.arm.lift < s.run.duration,
    (s) => `${s.arm.lift} s`,
    (s) => `null, or a time within the run of ${s.run.duration} s`,
  ),
  {
    reads: ['arm.moves', 'run.duration'],
    check: (s) =>
      s.arm.moves.flatMap((move, index) =>
        move.start < s.run.duration
          ? []
          : [
              {
                path: `arm.moves[${index}].start`,
                given: `${move.start} s`,
                allowed: `a time within the run of ${s.run.duration} s`,
              },
            ],
      ),
  },
  rule(
    ['events.release', 'run.duration'],
    (s) => s.events.release === null || s.events.release.time < s.run.duration,
    (s) => `${s.events.release?.time} s`,
    (s) => `null, or a time within the run of ${s.run.duration} s`,
  ),
  rule(
    ['events.release', 'arm', 'run.duration', 'part.width'],
    (s) => s.events.release === null || s.events.release.time > liftTime(s),
    (s) => `${s.events.release?.time} s`,
    (s) => `null, or a time after the support is taken away at ${Number(liftTime(s).toPrecision(4))} s`,
  ),
  rule(
    ['run.cycle', 'run.duration'],
    (s) => s.run.cycle === null || s.run.cycle >= s.run.duration,
    (s) => `${s.run.cycle} s`,
    (s) => `null, or at least the run's ${s.run.duration} s`,
  ),
  rule(
    ['actuator.motor.openLoop', 'actuator.family'],
    ({ actuator: a }) => a.kind === 'direct' || !a.motor.openLoop || /^step-/.test(a.family),
    () => 'true',
    ({ actuator: a }) => `false, unless the family is "${a.kind === 'spindle' ? 'step-spindle' : 'step-screw'}"`,
  ),
  rule(
    ['events.powerLoss', 'run.duration'],
    (s) => s.events.powerLoss === null || s.events.powerLoss.time < s.run.duration,
    (s) => `${s.events.powerLoss?.time} s`,
    (s) => `null, or a time within the run of ${s.run.duration} s`,
  ),
  ...STRATEGY_RULES,
]

const STUDY_RULES: Rule[] = [
  { reads: ['requirements'], check: requirementFaults },
  { reads: ['spread', 'actuator'], check: spreadFaults },
]

/** What keys of one job alone demand of each other; `others.ts` enrols those of the others. */
export const JOB_RULES: Partial<Record<JobId, Rule[]>> = {}

export const rulesOf = (job: JobId): Rule[] => [...RULES, ...(JOB_RULES[job] ?? []), ...STUDY_RULES]

/** In what the effort of an axis is told. */
const effortOf = ({ actuator }: Scenario) => (actuator.kind === 'spindle' ? 'N·m' : 'N')

const canRaise = (t: { lead: number; pitchDiameter: number; threadFriction: number; flankAngle: number }) =>
  t.threadFriction * t.lead < Math.PI * t.pitchDiameter * Math.cos(t.flankAngle)
