/** The fixed integration step: a whole part of the current loop's period, small enough for the stiffest mode. */
import { axisOf, contactsOf, jawMassOf } from '../plant/axis.ts'
import { lawOf } from '../plant/contact/law.ts'
import { stopStiffness } from '../plant/endstops.ts'
import { LOAD_DAMPING, LOAD_REACH } from '../plant/friction.ts'
import { shearStiffness } from '../plant/slip.ts'
import { Refusal, type Scenario } from '../scenario/index.ts'

export const LONGEST_STEP = 1e-5
/** Stiffest mode times step; semi-implicit Euler is stable up to 2. */
export const MODE_PER_STEP = 0.1
const MOST_STEPS = 2e8

/** Plant steps in one period of the current loop. Throws a Refusal where the run would need more than 2e8 steps. */
export function substepsOf(scenario: Scenario): number {
  const period = 1 / scenario.drive.currentRate
  const { step, duration } = scenario.run
  const wanted = step ?? Math.min(LONGEST_STEP, MODE_PER_STEP / stiffestMode(scenario))
  const substeps = step ? Math.round(period / step) : Math.ceil(period / wanted - 1e-9)
  const steps = (duration / period) * substeps
  if (steps > MOST_STEPS)
    throw new Refusal({
      path: 'run.duration',
      given: `${duration} s, which takes ${steps.toExponential(1)} steps of ${(period / substeps).toExponential(1)} s for the stiffest mode`,
      allowed: `at most ${((duration * MOST_STEPS) / steps).toPrecision(3)} s with these masses and stiffnesses`,
    })
  return substeps
}

/** Fastest rate in the plant [rad/s], from every spring and damper and the masses at its ends. */
export function stiffestMode(scenario: Scenario): number {
  const { part, jaws } = scenario
  const t = scenario.actuator.transmission
  const axis = axisOf(scenario.actuator)
  const contacts = contactsOf(scenario)
  const jaw = jawMassOf(scenario)
  const side = contactStiffness(scenario)
  const between = 1 / axis.mass + 1 / jaw
  const loaded = (Math.max(axis.raise, axis.lower) * highestForce(scenario)) / (LOAD_REACH * axis.mass)
  const springs = [
    t.stiffness * between,
    t.bristleStiffness / axis.mass,
    loaded,
    (axis.coggingForce * 2 * Math.PI) / (axis.coggingPeriod * axis.mass),
    (axis.forceConstant * axis.forceConstant) / (scenario.actuator.motor.inductance * axis.mass), // motor against its own inductance
    (2 * side) / part.mass,
    contacts * side * (1 / jaw + 1 / part.mass),
    stopStiffness(t.stiffness) / jaw,
    shearStiffness(jaws.padStiffness) / part.mass,
  ]
  const dampers = [t.damping * between, t.viscous / axis.mass, loaded * LOAD_DAMPING]
  return Math.max(...springs.map(Math.sqrt), ...dampers)
}

/** Upper estimate of the force in the axis [N]: peak current and cogging, and an impact twice that on top. */
function highestForce({ actuator }: Scenario): number {
  const axis = axisOf(actuator)
  return (axis.forceConstant * actuator.motor.peakCurrent + axis.coggingForce) * 3
}

/** Upper estimate of one contact's stiffness [N/m]: pad and half the part in series, at the highest force of the drive. */
function contactStiffness(scenario: Scenario): number {
  const { part, jaws } = scenario
  const law = lawOf(part.exponent)
  const force = Math.min(highestForce(scenario), part.crackForce ?? Number.POSITIVE_INFINITY)
  const half = 2 * part.stiffness * law.slope(law.inverse(force / part.stiffness))
  return (half * jaws.padStiffness) / (half + jaws.padStiffness)
}
